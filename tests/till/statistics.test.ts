import chiSquareCdf from '@stdlib/stats-base-dists-gamma-cdf';
import poissonCdf from '@stdlib/stats-base-dists-poisson-cdf';
import fc from 'fast-check';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { chiSquareQuantile, chiSquareTail } from '../../src/till/chi-square.js';
import { fitDayFactor } from '../../src/till/day-factor.js';
import { testTable, testTotals } from '../../src/till/goodness.js';
import { percents } from '../../src/till/menu-shares.js';
import { mixedPoisson, quantileOf } from '../../src/till/mixed-poisson.js';
import { sizesCounted, sizesFromSums, type SizeSum } from '../../src/till/party-size.js';
import { drawTable, gammaOfWholeShape, poisson, rushTruth } from './sales.js';

interface Negbin {
  readonly negbin: { pdf(k: number, r: number, p: number): number };
}
const { jStat } = createRequire(import.meta.url)('jstat') as { readonly jStat: Negbin };

describe('chi-square', () => {
  // Critical values of the chi-square distribution, NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.4.
  it.each([
    [0.95, 1, 3.841],
    [0.975, 9, 19.023],
    [0.025, 9, 2.7],
    [0.99, 20, 37.566],
    [0.95, 100, 124.342],
  ])('has its quantile of %f at %i degrees of freedom', (p, freedom, value) => {
    expect(Math.abs(chiSquareQuantile(p, freedom) - value)).toBeLessThan(0.0006);
    expect(Math.abs(chiSquareTail(value, freedom) - (1 - p))).toBeLessThan(1e-4);
  });

  it('has a quantile that undoes the distribution function', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.integer({ min: 1, max: 400 }),
        (p, freedom) => {
          expect(chiSquareCdf(chiSquareQuantile(p, freedom), freedom / 2, 0.5)).toBeCloseTo(p, 9);
        },
      ),
      { seed: 20 },
    );
  });
});

describe('counts with a gamma level', () => {
  it('are negative binomial, as jStat has it', () => {
    for (const [mean, cv] of [
      [3, 0.5],
      [40, 0.2],
      [0.4, 1],
    ] as const) {
      const r = 1 / (cv * cv);
      mixedPoisson(mean, cv).forEach((chance, k) => {
        expect(chance).toBeCloseTo(jStat.negbin.pdf(k, r, r / (r + mean)), 9);
      });
    }
  });

  it('are Poisson without a spread, as @stdlib has it', () => {
    let below = 0;
    mixedPoisson(7.5, 0).forEach((chance, k) => {
      below += chance;
      expect(below).toBeCloseTo(poissonCdf(k, 7.5), 9);
    });
  });

  it('sum to 1 with the mean and variance they are given', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (mean, cv) => {
          const chances = mixedPoisson(mean, cv);
          const moment = (power: number): number =>
            chances.reduce((sum, chance, k) => sum + chance * k ** power, 0);
          expect(moment(0)).toBeCloseTo(1, 6);
          expect(Math.abs(moment(1) - mean)).toBeLessThan(1e-4 * (1 + mean));
          expect(Math.abs(moment(2) - mean ** 2 - mean - cv ** 2 * mean ** 2)).toBeLessThan(
            1e-3 * (1 + mean * mean),
          );
        },
      ),
      { seed: 20 },
    );
  });

  it('have the median and tail of a coin toss list by hand', () => {
    expect(quantileOf([0.5, 0.25, 0.25], 0.5)).toBe(0);
    expect(quantileOf([0.5, 0.25, 0.25], 0.75)).toBe(1);
    expect(quantileOf([0.5, 0.25, 0.25], 0.76)).toBe(2);
  });
});

/** Every table with these margins and its chance, if each party falls on a slot whatever the day: by hand, cell after cell. */
function tablesWith(
  rows: readonly number[],
  columns: readonly number[],
): { table: number[][]; weight: number }[] {
  if (rows.length === 1)
    return [
      {
        table: [[...columns]],
        weight: columns.reduce((product, count) => product / factorial(count), 1),
      },
    ];
  const splits = (left: number, room: readonly number[]): number[][] =>
    room.length === 1
      ? left <= room[0]!
        ? [[left]]
        : []
      : Array.from({ length: Math.min(left, room[0]!) + 1 }, (_, first) =>
          splits(left - first, room.slice(1)).map((rest) => [first, ...rest]),
        ).flat();
  return splits(rows[0]!, columns).flatMap((row) =>
    tablesWith(
      rows.slice(1),
      columns.map((count, at) => count - row[at]!),
    ).map(({ table, weight }) => ({
      table: [row, ...table],
      weight: row.reduce((product, count) => product / factorial(count), weight),
    })),
  );
}

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1);
}

describe('the table of days by slots', () => {
  // Oracle: all tables with the same margins, listed one by one.
  it.each([
    [
      [3, 4, 2],
      [5, 4],
    ],
    [
      [2, 2, 2, 3],
      [1, 3, 5],
    ],
    [
      [6, 1],
      [2, 4, 1],
    ],
  ])('has the exact mean and variance of X² given the margins %j and %j', (rows, columns) => {
    const tables = tablesWith(rows, columns);
    const all = tables.reduce((sum, { weight }) => sum + weight, 0);
    const x2 = tables.map(({ table, weight }) => ({
      x: testTable(table)!.statistic,
      chance: weight / all,
    }));
    const mean = x2.reduce((sum, { x, chance }) => sum + x * chance, 0);
    const variance = x2.reduce((sum, { x, chance }) => sum + (x - mean) ** 2 * chance, 0);
    const { expected, variance: spread } = testTable(tables[0]!.table)!;
    expect(expected).toBeCloseTo(mean, 9);
    expect(spread).toBeCloseTo(variance, 9);
  });

  it("has Pearson's X² of the classic two by two", () => {
    // X² = n (ad − bc)² / (row and column totals), the textbook form.
    expect(
      testTable([
        [10, 20],
        [30, 15],
      ])!.statistic,
    ).toBeCloseTo((75 * (10 * 15 - 20 * 30) ** 2) / (30 * 45 * 40 * 35), 9);
  });

  it('raises a false alarm at 5 % about one time in twenty, thin slots and uneven days or not', () => {
    const alarms = (rates: readonly number[]): number =>
      Array.from({ length: 400 }, (_, run) =>
        testTable(drawTable({ ...rushTruth, days: 20, rates }, `alarm ${run}`))!,
      ).filter(({ p }) => p < 0.05).length;
    // 20 expected of 400, standard deviation 4.4; four of them either way.
    for (const rates of [rushTruth.rates, rushTruth.rates.map((rate) => rate / 10)]) {
      expect(alarms(rates)).toBeGreaterThan(2);
      expect(alarms(rates)).toBeLessThan(38);
    }
  });

  it('finds days of another shape, and parties in bunches', () => {
    const early = drawTable({ ...rushTruth, days: 20 }, 'early');
    const late = drawTable(
      { ...rushTruth, days: 20, rates: [...rushTruth.rates].reverse() },
      'late',
    );
    expect(testTable([...early, ...late])!.p).toBeLessThan(1e-4);
    const bunches = drawTable(
      { ...rushTruth, rates: rushTruth.rates.map((rate) => rate / 3) },
      'bunch',
    ).map((row) => row.map((count) => 3 * count));
    expect(testTable(bunches)!.p).toBeLessThan(1e-4);
  });

  it('says nothing about a single day, a single slot or no party', () => {
    expect(testTable([[3, 4, 5]])).toBeNull();
    expect(testTable([[3], [4]])).toBeNull();
    expect(
      testTable([
        [0, 0],
        [0, 0],
      ]),
    ).toBeNull();
  });
});

describe('the day factor', () => {
  it('is (variance − mean) / mean² under the root, and 0 when days differ less than chance lets them', () => {
    // By hand: totals 10, 20, 30 have mean 20 and variance 100, so c² = 80 / 400.
    expect(fitDayFactor([10, 20, 30]).cv).toBeCloseTo(Math.sqrt(0.2), 12);
    expect(fitDayFactor([20, 20, 21]).cv).toBe(0);
    expect(fitDayFactor([20, 20, 21]).low).toBe(0);
    expect(fitDayFactor([10, 20, 30]).varianceToMean).toBe(5);
  });

  it('is found again from drawn days, and its 95 % interval holds the truth nineteen times in twenty', () => {
    const stream = new Stream(streamKey('20', 'day factor'));
    const runs = 600;
    for (const [days, shape, mean] of [
      [12, 25, 40],
      [40, 16, 80],
      [120, 4, 30],
    ] as const) {
      let held = 0;
      let squares = 0;
      for (let run = 0; run < runs; run += 1) {
        const fit = fitDayFactor(
          Array.from({ length: days }, () =>
            poisson(stream, mean * gammaOfWholeShape(stream, shape)),
          ),
        );
        squares += (fit.varianceToMean - 1) / mean;
        if (fit.low <= 1 / Math.sqrt(shape) && fit.high >= 1 / Math.sqrt(shape)) held += 1;
      }
      expect(held / runs).toBeGreaterThan(0.92);
      expect(held / runs).toBeLessThan(0.98);
      expect(Math.abs(squares / runs - 1 / shape)).toBeLessThan(0.1 / shape);
    }
  });

  it('gives totals that pass their own test, and not with a wrong spread', () => {
    const totals = drawTable({ ...rushTruth, days: 200 }, 'totals').map((row) =>
      row.reduce((sum, count) => sum + count, 0),
    );
    expect(testTotals(totals, fitDayFactor(totals).cv)!.p).toBeGreaterThan(0.01);
    expect(testTotals(totals, 0)!.p).toBeLessThan(1e-6);
    expect(testTotals(totals.slice(0, 12), 0.25)).toBeNull();
  });
});

describe('party sizes from sums', () => {
  const sumsOf = (slots: readonly (readonly number[])[]): SizeSum[] => {
    const seen = new Map<string, SizeSum>();
    for (const sizes of slots) {
      const key = { parties: sizes.length, drinks: sizes.reduce((sum, size) => sum + size, 0) };
      const old = seen.get(JSON.stringify(key));
      seen.set(JSON.stringify(key), { ...key, slots: (old?.slots ?? 0) + 1 });
    }
    return [...seen.values()];
  };

  it('are of one where a report counts more tickets than drinks', () => {
    expect(sizesFromSums([{ parties: 3, drinks: 1, slots: 2 }])).toEqual([1]);
  });

  it('are exact when every slot holds one party', () => {
    const shares = sizesFromSums([
      { parties: 1, drinks: 1, slots: 50 },
      { parties: 1, drinks: 2, slots: 30 },
      { parties: 1, drinks: 4, slots: 20 },
    ]);
    [0.5, 0.3, 0, 0.2].forEach((share, at) => expect(shares[at] ?? 0).toBeCloseTo(share, 9));
    expect(sizesCounted([9, 50, 30, 0, 20])).toEqual([0.5, 0.3, 0, 0.2]);
  });

  it('keep the mean of the report and are a distribution', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 8 }), {
          minLength: 1,
          maxLength: 30,
        }),
        (slots) => {
          const shares = sizesFromSums(sumsOf(slots));
          const sizes = slots.flat();
          expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
          expect(shares.reduce((sum, share, at) => sum + share * (at + 1), 0)).toBeCloseTo(
            sizes.reduce((sum, size) => sum + size, 0) / sizes.length,
            3,
          );
        },
      ),
      { seed: 20, numRuns: 50 },
    );
  });

  it('are the likeliest: a search over all distributions of two sizes finds none better', () => {
    const slots = [[1, 1, 2], [2, 2], [1], [1, 2, 1, 1], [2], [1, 1]];
    const sums = sumsOf(slots);
    const choose = (n: number, k: number): number => factorial(n) / factorial(k) / factorial(n - k);
    const likelihood = (q: number): number =>
      sums.reduce(
        (sum, { parties: n, drinks, slots: times }) =>
          sum +
          times * Math.log(choose(n, drinks - n) * q ** (drinks - n) * (1 - q) ** (2 * n - drinks)),
        0,
      );
    let best = 0;
    for (let q = 0.001; q < 1; q += 0.001)
      if (best === 0 || likelihood(q) > likelihood(best)) best = q;
    // With more sizes allowed the answer may use them; here sums leave two alone as the likeliest.
    expect(sizesFromSums(sums)[1]).toBeCloseTo(best, 2);
  });

  it('are found again from drawn slots', () => {
    const stream = new Stream(streamKey('20', 'party sizes'));
    const truth = [0.6, 0.28, 0.09, 0.03];
    const draw = (): number => {
      const u = stream.uniform();
      return u < 0.6 ? 1 : u < 0.88 ? 2 : u < 0.97 ? 3 : 4;
    };
    const slots = Array.from({ length: 3000 }, () =>
      Array.from({ length: 1 + poisson(stream, 2) }, draw),
    );
    const shares = sizesFromSums(sumsOf(slots));
    // 9,000 parties seen through sums: the standard error of a share is about 0.01 at the most.
    truth.forEach((share, at) => expect(Math.abs(shares[at]! - share)).toBeLessThan(0.035));
  });
});

describe('percentages', () => {
  it('sum to 100 exactly and are off by less than a hundredth', () => {
    fc.assert(
      fc.property(
        fc
          .array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 30 })
          .filter((counts) => counts.some((count) => count > 0)),
        (counts) => {
          const all = counts.reduce((sum, count) => sum + count, 0);
          const written = percents(counts.map((count) => count / all)).map((text) =>
            Math.round(Number(text.replace(' %', '')) * 100),
          );
          expect(written.reduce((sum, share) => sum + share, 0)).toBe(10_000);
          written.forEach((share, at) =>
            expect(Math.abs(share - (10_000 * counts[at]!) / all)).toBeLessThan(1 + 1e-6),
          );
        },
      ),
      { seed: 20 },
    );
  });
});
