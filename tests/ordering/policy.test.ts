/** Reorder points and holdings: the smallest that keep the par, checked by the losses themselves and by drawing. */
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import poissonCdf from '@stdlib/stats-base-dists-poisson-cdf';
import fc from 'fast-check';
import seedrandom from 'seedrandom';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween, isDate } from '../../src/ordering/dates.js';
import { chanceParHolds, smallestHolding } from '../../src/ordering/holding-target.js';
import { leadTimes, longestLeadDays, meanLeadDays } from '../../src/ordering/lead-time.js';
import type { LossRates } from '../../src/ordering/losses.js';
import { ordersForPar, type PolicyInput } from '../../src/ordering/policy.js';
import { DAY_MS } from './supply-samples.js';

const cup: PolicyInput = {
  ware: 'cup',
  par: 70,
  rates: { usesADay: 400, perThousandUses: 0.3, walkOffPerYear: 0, retirementPerYear: 0 },
  leadTime: { law: 'constant', ms: 14 * DAY_MS },
  reviewDays: 28,
  coverDays: 182,
  confidence: 0.95,
  repeat: 'assured',
  horizonDays: 730,
  date: '2026-03-02',
};

describe('lead times', () => {
  test('gamma and lognormal are cut into days as @stdlib has them', () => {
    const gamma = leadTimes({ law: 'gamma', meanMs: 14 * DAY_MS, sdMs: 5 * DAY_MS });
    const lognormal = leadTimes({ law: 'lognormal', meanMs: 14 * DAY_MS, sdMs: 5 * DAY_MS });
    const spread = Math.log1p((5 / 14) ** 2);
    for (const day of [5, 10, 14, 20, 30]) {
      const upTo = (times: typeof gamma): number =>
        times.filter(({ days }) => days <= day).reduce((sum, { weight }) => sum + weight, 0);
      expect(upTo(gamma)).toBeCloseTo(gammaCdf(day, (14 / 5) ** 2, 14 / 25), 7);
      expect(upTo(lognormal)).toBeCloseTo(
        lognormalCdf(day, Math.log(14) - spread / 2, Math.sqrt(spread)),
        7,
      );
    }
    expect(gamma.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  test('measured times keep their frequencies; an exponential has its own tail', () => {
    const law = { law: 'measured', valuesMs: [7, 7, 9, 30].map((days) => days * DAY_MS) } as const;
    expect(leadTimes(law)).toEqual([
      { days: 7, weight: 0.5 },
      { days: 9, weight: 0.25 },
      { days: 30, weight: 0.25 },
    ]);
    expect(meanLeadDays(law)).toBeCloseTo(13.25, 12);
    expect(longestLeadDays(law)).toBe(30);
    // 99 % of an exponential lie below mean · ln 100.
    expect(longestLeadDays({ law: 'exponential', meanMs: 10 * DAY_MS })).toBe(
      Math.ceil(10 * Math.log(100)),
    );
  });
});

describe('dates', () => {
  test('days are added over months, leap years and clock changes', () => {
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2026-03-28', 2)).toBe('2026-03-30');
    expect(daysBetween('2026-03-02', addDays('2026-03-02', 730))).toBe(730);
    expect(['2026-02-30', '2026-2-3', 'soon', '2026-02-28'].map(isDate)).toEqual([
      false,
      false,
      false,
      true,
    ]);
  });
});

describe('orders for a par', () => {
  test('with breakage alone the holding is the par plus a Poisson quantile (@stdlib)', () => {
    const policy = ordersForPar(cup);
    const mean = (400 * 0.3 * (182 + 14)) / 1000;
    expect(poissonCdf(policy.orderUpTo - 70, mean)).toBeGreaterThanOrEqual(0.95);
    expect(poissonCdf(policy.orderUpTo - 71, mean)).toBeLessThan(0.95);
    const toNext = (400 * 0.3 * (28 + 14)) / 1000;
    expect(poissonCdf(policy.reorderPoint! - 70, toNext)).toBeGreaterThanOrEqual(0.95);
    expect(poissonCdf(policy.reorderPoint! - 71, toNext)).toBeLessThan(0.95);
    expect(policy.spares.besideMachine + policy.spares.inStore).toBe(policy.orderUpTo - 70);
  });

  test('no losses: nothing spare, nothing to order', () => {
    const policy = ordersForPar({ ...cup, rates: { ...cup.rates, perThousandUses: 0 } });
    expect(policy).toMatchObject({
      orderUpTo: 70,
      reorderPoint: 70,
      spares: { total: 0 },
      nextOrder: null,
    });
  });

  const ratesArb: fc.Arbitrary<LossRates> = fc.record({
    usesADay: fc.nat(600),
    perThousandUses: fc.double({ min: 0, max: 1.5, noNaN: true }),
    walkOffPerYear: fc.double({ min: 0, max: 0.7, noNaN: true }),
    retirementPerYear: fc.double({ min: 0, max: 0.2, noNaN: true }),
  });

  test('the holding is enough, and one piece fewer is not', () => {
    fc.assert(
      fc.property(
        ratesArb,
        fc.nat(120),
        fc.integer({ min: 1, max: 300 }),
        fc.constantFrom(0.8, 0.95, 0.99),
        (rates, par, days, confidence) => {
          const spells = [
            { days, weight: 0.6 },
            { days: days + 30, weight: 0.4 },
          ];
          const held = smallestHolding(par, rates, spells, confidence);
          expect(held).toBeGreaterThanOrEqual(par);
          expect(chanceParHolds(par, held, rates, spells)).toBeGreaterThanOrEqual(confidence);
          if (held > par)
            expect(chanceParHolds(par, held - 1, rates, spells)).toBeLessThan(confidence);
        },
      ),
      { seed: 20, numRuns: 150 },
    );
  });

  test('more confidence, longer cover or more breakage never holds fewer', () => {
    const hold = (more: Partial<PolicyInput>): number =>
      ordersForPar({ ...cup, ...more }).orderUpTo;
    expect(hold({ confidence: 0.99 })).toBeGreaterThan(hold({}));
    expect(hold({ coverDays: 365 })).toBeGreaterThan(hold({}));
    expect(hold({ rates: { ...cup.rates, perThousandUses: 0.8 } })).toBeGreaterThan(hold({}));
    expect(
      hold({ leadTime: { law: 'gamma', meanMs: 14 * DAY_MS, sdMs: 10 * DAY_MS } }),
    ).toBeGreaterThanOrEqual(hold({}));
  });

  /** Plays the rules out day by day: the share of deliveries at which the par stood, the mean day of the order, and all those days in order. */
  function played(input: PolicyInput): {
    readonly kept: number;
    readonly orderDay: number;
    readonly days: readonly number[];
  } {
    const policy = ordersForPar(input);
    const random = seedrandom.alea('20');
    const [breakages, leaving] = [
      (input.rates.usesADay * input.rates.perThousandUses) / 1000,
      1 - (1 - input.rates.walkOffPerYear) ** (1 / 365),
    ];
    let [kept, orderDays] = [0, 0];
    const days: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      let [pieces, ordered] = [policy.orderUpTo, 0];
      for (let day = 1; ordered === 0 || day <= ordered + 14; day++) {
        let gone = 0;
        if (leaving > 0)
          for (let piece = 0; piece < pieces; piece++) if (random.double() < leaving) gone++;
        // Poisson by counting exponential gaps.
        for (
          let gap = -Math.log(1 - random.double());
          gap < breakages;
          gap -= Math.log(1 - random.double())
        )
          gone++;
        pieces -= gone;
        if (ordered === 0 && day % 28 === 0 && pieces < policy.reorderPoint!) ordered = day;
      }
      orderDays += ordered;
      days.push(ordered);
      if (pieces >= input.par) kept++;
    }
    return { kept: kept / RUNS, orderDay: orderDays / RUNS, days: days.toSorted((a, b) => a - b) };
  }
  const RUNS = 3000;
  // The promise is a lower bound, since most reviews find pieces to spare.
  const promised = 0.95 - 4 * Math.sqrt((0.95 * 0.05) / RUNS);

  test('played day by day with breakage, the par holds as often as promised and the order comes when expected', () => {
    const input: PolicyInput = {
      ...cup,
      par: 30,
      rates: { ...cup.rates, usesADay: 200, perThousandUses: 0.7 },
    };
    const { kept, orderDay, days } = played(input);
    expect(kept).toBeGreaterThan(promised);
    const { earliest, latest } = ordersForPar(input).nextOrder!;
    expect([earliest, latest]).toEqual(
      [0.05, 0.95].map((share) => addDays(input.date, days[Math.floor(share * RUNS)]!)),
    );
    // Orders fall on reviews 28 days apart; the mean of 3000 has a standard error below 1 day.
    expect(Math.abs(orderDay - ordersForPar(input).nextOrder!.days)).toBeLessThan(3);
  });

  test('with walk-off as well the promise holds, and the order is expected no later than it comes', () => {
    const input: PolicyInput = {
      ...cup,
      par: 30,
      rates: { usesADay: 200, perThousandUses: 0.5, walkOffPerYear: 0.3, retirementPerYear: 0 },
    };
    const { kept, orderDay } = played(input);
    expect(kept).toBeGreaterThan(promised);
    expect(ordersForPar(input).nextOrder!.days).toBeLessThan(orderDay + 3);
    expect(ordersForPar(input).nextOrder!.days).toBeGreaterThan(orderDay - 28);
  });

  test('no repeat supply: the whole range at once, with a warning', () => {
    const policy = ordersForPar({ ...cup, repeat: 'none' });
    const mean = (400 * 0.3 * 730) / 1000;
    expect(poissonCdf(policy.lifeOfRange! - 70, mean)).toBeGreaterThanOrEqual(0.95);
    expect(poissonCdf(policy.lifeOfRange! - 71, mean)).toBeLessThan(0.95);
    expect(policy).toMatchObject({
      reorderPoint: null,
      nextOrder: null,
      warnings: [{ code: 'life-of-range' }],
    });
  });

  test('supply until a date: a last order by then; none in time counts as no repeat', () => {
    const ending = ordersForPar({ ...cup, repeat: { until: '2027-03-02' } });
    expect(ending.lastOrder?.by).toBe('2027-03-02');
    expect(ending.lastOrder!.upTo).toBeGreaterThan(70);
    expect(ending.warnings).toMatchObject([{ code: 'supply-ends' }]);
    expect(ordersForPar({ ...cup, repeat: { until: '2026-05-01' } })).toMatchObject({
      lastOrder: null,
      reorderPoint: null,
      warnings: [{ code: 'life-of-range' }],
    });
  });
});
