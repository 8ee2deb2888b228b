/**
 * The rush against queueing theory, through ordinary scenarios with idealised stages. Sources stand
 * beside each value in shared/checks/published.json and are named in the title of each check.
 */
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import { EveryStep } from '../../src/cafe/looking-on.js';
import type { CafeModel } from '../../src/cafe/model.js';
import { IN_USE, PLACE_COUNT, RACKED, WASHING } from '../../src/cafe/places.js';
import { watchDays } from '../../src/questions/size/evidence.js';
import { checks, expectWithin, input, replications } from './checks.js';
import { idealised, instantMachine, modelOf, steady } from './scenario-of.js';

const sit = (dwell: unknown): Record<string, unknown> => ({
  partySize: 1,
  staysIn: '100 %',
  drinksEach: 1,
  secondDrink: 0,
  dwell,
});
const takeAway = { partySize: 1, staysIn: 0, drinksEach: 1, secondDrink: 0, dwell: '0 s' };

describe('Erlang B (A. K. Erlang 1917; Gross et al., Fundamentals of Queueing Theory, M/M/c/c): long-run share of drinks short', () => {
  it.each(
    checks('erlang-b')
      .filter((check) => input(check, 'c') <= 60)
      .map((check) => [check.id, check] as const),
  )('%s', (_, check) => {
    const [c, a] = [input(check, 'c'), input(check, 'a')];
    const model = modelOf(
      idealised({
        ...steady(a, Math.ceil(10_000 / a)),
        guests: sit({ exponential: '1 min' }),
        menu: { coffee: { share: 1, setting: ['cup'], fallBacks: ['takeaway'], making: '0 s' } },
      }),
    );
    const shares = replications(model, 16, [c]).map(
      ({ sums }) => sums.shortDrinks / sums.houseDrinks,
    );
    expectWithin(shares, Number(check.expected));
  });
});

describe('M/M/c and M/D/c waits at the counter (Erlang C; Crommelin 1932; Hillier & Lieberman, County Hospital)', () => {
  const waits = (lambda: number, making: unknown, makers: number): number[] =>
    replications(
      modelOf(
        idealised({
          // A run lasts 60 days at most.
          ...steady(lambda, Math.min(60 * 24 * 60, Math.ceil(30_000 / lambda))),
          guests: takeAway,
          counter: { makers, making },
          menu: { coffee: { share: 1, setting: ['cup'], making } },
        }),
      ),
      16,
    ).map(({ sums }) => sums.waitedMs / sums.drinksStarted / 60_000);

  it.each(checks('m-m-c').map((check) => [check.id, check] as const))('%s', (_, check) => {
    const expected = check.expected as { Wq: number };
    expectWithin(
      waits(
        input(check, 'lambda'),
        { exponential: `${1 / input(check, 'mu')} min` },
        input(check, 'c'),
      ),
      expected.Wq,
    );
  });

  it.each(checks('m-d-c').map((check) => [check.id, check] as const))('%s', (_, check) => {
    const expected = check.expected as { Wq: number };
    const c = input(check, 'c');
    expectWithin(waits(input(check, 'rho') * c, '1 min', c), expected.Wq);
  });

  it.each(
    checks('m-d-1')
      .filter((check) => input(check, 'rho') <= 0.9)
      .map((check) => [check.id, check] as const),
  )('%s', (_, check) => {
    const expected = check.expected as { Wq: number };
    expectWithin(waits(input(check, 'rho'), '1 min', 1), expected.Wq);
  });
});

describe('M/G/∞ (Palm 1943): pieces out, whatever the law of the dwell', () => {
  const DAYS = 800;
  it.each(
    checks('m-g-inf').flatMap((check) =>
      [
        { exponential: '@' },
        { lognormal: { mean: '@', sd: '20 min' } },
        { gamma: { mean: '@', sd: '25 min' } },
      ].map((law) => [check.id, Object.keys(law)[0]!, check, law] as const),
    ),
  )('%s, %s dwell: mean, and share of moments with at most n out', (_, __, check, law) => {
    const minutes = input(check, 'meanServiceH') * 60;
    const dwell = JSON.parse(JSON.stringify(law).replaceAll('@', `${minutes} min`)) as unknown;
    const model = modelOf(
      idealised({ ...steady(input(check, 'lambdaPerH') / 60, 300), guests: sit(dwell) }),
    );
    const expected = check.expected as { mean: number; 'P(N<=n)': number };
    const out: number[] = [];
    const floor = new Floor(model, 'mginf');
    const demand = new Demand(model, 'mginf');
    const day = new Day();
    // Looked at once a day, five hours after opening: days are independent.
    const watcher = new EveryStep(299 * 60_000, 299 * 60_000, (step, { ledger }) => {
      if (step === 1) out.push(ledger.peak(0) === 0 ? 0 : ledger.counts[IN_USE]!);
    });
    for (let number = 0; number < DAYS; number += 1) {
      demand.draw(number, day);
      watcher.rewind();
      floor.run(day, number, null, watcher);
    }
    expect(out).toHaveLength(DAYS);
    expectWithin(out, expected.mean);
    expectWithin(
      out.map((pieces) => (pieces <= input(check, 'n') ? 1 : 0)),
      expected['P(N<=n)'],
    );
  });
});

/** Mean pieces off the shelf at the given hours, and the error of that mean if counts are Poisson. */
async function piecesOut(
  model: CafeModel,
  hours: readonly number[],
  days: number,
): Promise<number[]> {
  const evidence = await watchDays({
    model,
    seed: 'mt',
    days,
    stock: null,
    listed: null,
    pause: async () => {},
  });
  return hours.map((hour) => {
    const step = (hour * 60) / evidence.stepMinutes;
    expect(Number.isInteger(step)).toBe(true);
    return evidence.mean[0]![step]!.reduce((sum, pieces) => sum + pieces, 0);
  });
}

function expectPoissonMeans(
  seen: readonly number[],
  expected: readonly number[],
  days: number,
): void {
  seen.forEach((value, index) => {
    const error = Math.sqrt(expected[index]! / days);
    expect(
      Math.abs(value - expected[index]!),
      `${value} against ${expected[index]!}`,
    ).toBeLessThanOrEqual(4 * error);
  });
}

describe('M_t/G/∞ (Eick, Massey & Whitt, Management Science 39(2), 1993): mean pieces out at a moment', () => {
  const DAYS = 800;

  it.each(checks('mt-g-inf-sinusoid').map((check) => [check.id, check] as const))(
    '%s',
    async (_, check) => {
      const [base, swing, gamma] = [
        input(check, 'lambdaBar'),
        input(check, 'beta'),
        input(check, 'gammaRadPerH'),
      ];
      const expected = (check.expected as { 'm(t)': [number, number][] })['m(t)'];
      // Started a period early so that it is periodic; a rate a step of three minutes with the step's exact mean.
      const before = 4;
      const step = 0.05;
      const steps = Array.from({ length: Math.round((before + 3.5) / step) }, (_, index) => {
        const [from, to] = [index * step - before, (index + 1) * step - before];
        return {
          for: '3 min',
          parties: `${base + (swing * (Math.cos(gamma * from) - Math.cos(gamma * to))) / (gamma * step)} / h`,
        };
      });
      const dwell = check.inputs['law'] === 'deterministic' ? '30 min' : { exponential: '30 min' };
      const model = modelOf(
        idealised({
          hours: { for: `${(before + 3.5) * 60} min` },
          arrivals: { steps, dayFactor: 0 },
          guests: sit(dwell),
        }),
      );
      const seen = await piecesOut(
        model,
        expected.map(([t]) => t + before),
        DAYS,
      );
      expectPoissonMeans(
        seen,
        expected.map(([, m]) => m),
        DAYS,
      );
    },
  );

  it.each(checks('mt-g-inf').map((check) => [check.id, check] as const))('%s', async (_, check) => {
    const { inputs } = check as unknown as {
      inputs: { t: number[]; lambda?: number; ratesPerH?: number[] };
    };
    const rates = inputs.ratesPerH ?? [inputs.lambda!, inputs.lambda!, inputs.lambda!];
    const steps = rates.map((rate) => ({ for: '60 min', parties: `${rate} / h` }));
    const model = modelOf(
      idealised({
        hours: { for: `${rates.length} h` },
        arrivals: { steps, dayFactor: 0 },
        guests: sit({ exponential: '30 min' }),
      }),
    );
    expectPoissonMeans(await piecesOut(model, inputs.t, DAYS), check.expected as number[], DAYS);
  });
});

describe('machine repair, finite source (Winston, Operations Research, 4th ed., sec. 20.9; M/M/c//N)', () => {
  it.each(checks('machine-repair').map((check) => [check.id, check] as const))(
    '%s: pieces in the wash, waiting and in the machine',
    (_, check) => {
      const [N, c, lambda, mu] = [
        input(check, 'N'),
        input(check, 'c'),
        input(check, 'lambda'),
        input(check, 'mu'),
      ];
      const expected = check.expected as { L: number; Lq: number; meanUp: number };
      // So many guests at the door that every clean piece is taken at once: the pieces are the finite source.
      const minutes = Math.ceil(2000 / expected.meanUp / lambda);
      const burst = Math.ceil(expected.meanUp * lambda * minutes * 1.5);
      const model = modelOf(
        idealised({
          hours: { for: `${minutes + 1} min` },
          arrivals: {
            steps: [
              { for: '1 min', parties: `${burst} / min` },
              { for: `${minutes} min`, parties: '0 / min' },
            ],
            dayFactor: 0,
          },
          guests: sit({ exponential: `${1 / lambda} min` }),
          washing: {
            machines: [{ ...instantMachine, cycle: { exponential: `${1 / mu} min` }, count: c }],
            hands: 'unlimited',
            partLoadWait: 'never',
          },
        }),
      );
      const floor = new Floor(model, 'repair');
      const demand = new Demand(model, 'repair');
      const day = new Day();
      const means = Array.from({ length: 20 }, (_, number) => {
        const sums = { up: 0, waiting: 0, washing: 0, looks: 0 };
        demand.draw(number, day);
        // Past the first tenth, so that the start is forgotten; never after the door has run dry.
        const watcher = new EveryStep(60_000, minutes * 60_000, (step, { ledger, counter }) => {
          if (step < minutes / 10) return;
          expect(counter.waiting).toBeGreaterThan(0);
          sums.up += ledger.counts[IN_USE]!;
          sums.waiting += ledger.counts[RACKED]!;
          sums.washing += ledger.counts[WASHING]!;
          sums.looks += 1;
        });
        floor.run(day, number, [N], watcher);
        return {
          up: sums.up / sums.looks,
          queue: sums.waiting / sums.looks,
          down: (sums.waiting + sums.washing) / sums.looks,
        };
      });
      expect(PLACE_COUNT).toBeGreaterThan(WASHING);
      expectWithin(
        means.map(({ up }) => up),
        expected.meanUp,
      );
      expectWithin(
        means.map(({ down }) => down),
        expected.L,
      );
      expectWithin(
        means.map(({ queue }) => queue),
        expected.Lq,
      );
    },
  );
});
