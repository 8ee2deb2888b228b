import { beforeAll, describe, expect, it } from 'vitest';
import fc from 'fast-check';
import loadHighs from 'highs';
import type { LegacyHighs } from 'highs';
import { marginalStock } from '../../src/sizing/marginal-stock.js';
import { leastCostStock } from '../../src/sizing/least-cost-stock.js';
import { countMisses, selectDays } from '../../src/sizing/peaks.js';
import type { Peaks } from '../../src/sizing/peaks.js';
import {
  drawDays,
  EIGHT_COSTS,
  EIGHT_WARE,
  ONE_KIND,
  peaksOf,
  rowsOf,
  THREE_KINDS,
} from './days.js';

/** The general solver takes seconds in all, and longer on a busy machine. */
const PATIENCE = 120_000;

interface Problem {
  readonly rows: number[][];
  readonly costs: number[];
  readonly k: number;
}

/** Random problems with many ties: 1–5 ware, up to `most` days of small peaks. */
function problems(most: number): fc.Arbitrary<Problem> {
  return fc.integer({ min: 1, max: 5 }).chain((ware) =>
    fc.record({
      rows: fc.array(fc.array(fc.nat(12), { minLength: ware, maxLength: ware }), {
        minLength: 1,
        maxLength: most,
      }),
      costs: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: ware, maxLength: ware }),
      k: fc.nat(Math.ceil(most / 2)),
    }),
  );
}

/** Any order of 0…n−1, from random keys. */
function shuffled(keys: readonly number[], n: number): number[] {
  return Array.from({ length: n }, (_, i) => i).sort(
    (a, b) =>
      (keys[a % keys.length] ?? 0) * (a + 1) - (keys[b % keys.length] ?? 0) * (b + 1) || a - b,
  );
}

describe('against HiGHS, a general solver of mixed-integer programs', () => {
  let highs: LegacyHighs;
  beforeAll(async () => {
    // The package's types describe its CommonJS build; the module itself exports the loader.
    highs = await (loadHighs as unknown as typeof loadHighs.default)();
  });

  /** min Σ c·N with N_w + M·z_d ≥ peak_dw, Σ z ≤ k, z binary. */
  function solved({ rows, costs, k }: Problem): number {
    const limits = rows.flatMap((row, d) =>
      row.map((peak, w) => ` p${d}_${w}: n${w} + ${peak} z${d} >= ${peak}`),
    );
    const program = [
      'Minimize',
      ` cost: ${costs.map((cost, w) => `${cost} n${w}`).join(' + ')}`,
      'Subject To',
      ...limits,
      ` missed: ${rows.map((_, d) => `z${d}`).join(' + ')} <= ${k}`,
      'Generals',
      ` ${costs.map((_, w) => `n${w}`).join(' ')}`,
      'Binaries',
      ` ${rows.map((_, d) => `z${d}`).join(' ')}`,
      'End',
    ].join('\n');
    const solution = highs.solve(program, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
    expect(solution.Status).toBe('Optimal');
    return Math.round(solution.ObjectiveValue);
  }

  it(
    'costs the same on 120 random problems, and meets the service level',
    () => {
      fc.assert(
        fc.property(problems(12), (problem) => {
          const peaks = peaksOf(problem.rows);
          const found = leastCostStock(peaks, problem.costs, problem.k);
          expect(countMisses(peaks, found.stock)).toBeLessThanOrEqual(problem.k);
          expect(found.proven).toBe(true);
          expect(found.cost).toBe(solved(problem));
        }),
        { seed: 20, numRuns: 120 },
      );
    },
    PATIENCE,
  );

  it(
    'costs the same on 4 problems of 40 days with a day factor',
    () => {
      for (let i = 0; i < 4; i++) {
        const peaks = drawDays(
          { means: EIGHT_WARE.slice(0, 4), kinds: THREE_KINDS },
          40,
          `highs ${i}`,
        );
        const costs = EIGHT_COSTS.slice(0, 4);
        expect(leastCostStock(peaks, costs, 4).cost).toBe(
          solved({ rows: rowsOf(peaks), costs, k: 4 }),
        );
      }
    },
    PATIENCE,
  );
});

describe('laws of the least cost', () => {
  const FIXED = { seed: 20, numRuns: 100 };

  it('is the least of all stocks, tried one by one', () => {
    const small = fc.record({
      rows: fc.array(fc.tuple(fc.nat(5), fc.nat(5), fc.nat(5)), { minLength: 1, maxLength: 12 }),
      costs: fc.tuple(
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
      ),
      k: fc.nat(6),
    });
    fc.assert(
      fc.property(small, ({ rows, costs, k }) => {
        const peaks = peaksOf(rows);
        let least = Infinity;
        for (let a = 0; a <= 5; a++) {
          for (let b = 0; b <= 5; b++) {
            for (let c = 0; c <= 5; c++) {
              if (countMisses(peaks, [a, b, c]) <= k)
                least = Math.min(least, a * costs[0] + b * costs[1] + c * costs[2]);
            }
          }
        }
        expect(leastCostStock(peaks, costs, k).cost).toBe(least);
      }),
      FIXED,
    );
  });

  it('does not depend on the order of ware or of days', () => {
    fc.assert(
      fc.property(
        problems(60),
        fc.array(fc.nat(), { minLength: 5, maxLength: 9 }),
        ({ rows, costs, k }, keys) => {
          const cost = leastCostStock(peaksOf(rows), costs, k).cost;
          const ware = shuffled(keys, costs.length);
          const reordered = peaksOf(rows.map((row) => ware.map((w) => row[w] ?? 0)));
          expect(
            leastCostStock(
              reordered,
              ware.map((w) => costs[w] ?? 0),
              k,
            ).cost,
          ).toBe(cost);
          expect(
            leastCostStock(selectDays(peaksOf(rows), shuffled(keys, rows.length)), costs, k).cost,
          ).toBe(cost);
        },
      ),
      FIXED,
    );
  });

  it('never rises as more days may be missed, and no stock is below what its ware needs alone', () => {
    fc.assert(
      fc.property(problems(60), ({ rows, costs, k }) => {
        const peaks = peaksOf(rows);
        const found = leastCostStock(peaks, costs, k);
        expect(leastCostStock(peaks, costs, k + 1).cost).toBeLessThanOrEqual(found.cost);
        if (k === 0 || k >= rows.length) return;
        marginalStock(peaks, 1 - k / rows.length).forEach(({ pieces }, w) =>
          expect(found.stock[w]).toBeGreaterThanOrEqual(pieces),
        );
      }),
      FIXED,
    );
  });

  it('stays when every day is there twice and twice as many may be missed', () => {
    fc.assert(
      fc.property(problems(40), ({ rows, costs, k }) => {
        expect(leastCostStock(peaksOf([...rows, ...rows]), costs, 2 * k).cost).toBe(
          leastCostStock(peaksOf(rows), costs, k).cost,
        );
      }),
      FIXED,
    );
  });

  it('adds up when a ware is there twice, and scales with the prices', () => {
    fc.assert(
      fc.property(problems(40), ({ rows, costs, k }) => {
        const first = costs[0] ?? 1;
        const twins = leastCostStock(
          peaksOf(rows.map((row) => [...row, row[0] ?? 0])),
          [...costs, first],
          k,
        );
        const doubled = leastCostStock(peaksOf(rows), [2 * first, ...costs.slice(1)], k);
        expect(twins.cost).toBe(doubled.cost);
        expect(
          leastCostStock(
            peaksOf(rows),
            costs.map((cost) => 7 * cost),
            k,
          ).cost,
        ).toBe(7 * leastCostStock(peaksOf(rows), costs, k).cost);
        // Down to prices far below the least coin, of which sixty-fourths are exact.
        const fine = costs.map((cost) => cost / 64);
        const { cost, proven } = leastCostStock(peaksOf(rows), fine, k);
        expect([64 * cost, proven]).toEqual([leastCostStock(peaksOf(rows), costs, k).cost, true]);
      }),
      FIXED,
    );
  });

  it('is the same for prices that are not whole', () => {
    fc.assert(
      fc.property(problems(40), ({ rows, costs, k }) => {
        const found = leastCostStock(
          peaksOf(rows),
          costs.map((cost) => cost / 7),
          k,
        );
        expect(found.proven).toBe(true);
        const whole = leastCostStock(peaksOf(rows), costs, k).cost;
        expect(found.cost).toBeCloseTo(whole / 7, 6);
        // However small they are: what does not count is a share of the whole.
        const tiny = costs.map((cost) => cost / 7e9);
        expect(leastCostStock(peaksOf(rows), tiny, k).cost * 7e9).toBeCloseTo(whole, 4);
      }),
      FIXED,
    );
  });

  it('claims nothing it has not proven when the search is cut short', () => {
    fc.assert(
      fc.property(problems(60), fc.nat(2), ({ rows, costs, k }, parts) => {
        const exact = leastCostStock(peaksOf(rows), costs, k);
        const short = leastCostStock(peaksOf(rows), costs, k, { parts });
        expect(countMisses(peaksOf(rows), short.stock)).toBeLessThanOrEqual(k);
        expect(short.bound).toBeLessThanOrEqual(exact.cost + 1e-6);
        expect(short.cost).toBeGreaterThanOrEqual(exact.cost);
        if (short.proven) expect(short.cost).toBe(exact.cost);
      }),
      FIXED,
    );
  });
});

describe('a café of realistic size', () => {
  const kinds = [
    ['independent', ONE_KIND],
    ['with busy days', THREE_KINDS],
  ] as const;
  it.each(kinds)('is solved to the end: 20 ware, 2,000 days, %s', (_, of) => {
    const means = [...EIGHT_WARE, 70, 12, 50, 30, 80, 18, 45, 100, 22, 65, 28, 10];
    const costs = [...EIGHT_COSTS, 200, 761, 410, 330, 275, 820, 150, 95, 640, 220, 480, 700];
    const peaks: Peaks = drawDays({ means, kinds: of }, 2000, 'twenty');
    const found = leastCostStock(peaks, costs, 100);
    expect(found.proven).toBe(true);
    expect(countMisses(peaks, found.stock)).toBeLessThanOrEqual(100);
    expect(leastCostStock(peaks, costs, 100)).toEqual(found);
    // Buying each ware at its own 95 % would be cheaper and fall far short of the service level.
    const alone = marginalStock(peaks, 0.95).map(({ pieces }) => pieces);
    expect(countMisses(peaks, alone)).toBeGreaterThan(200);
  });
});

describe('corners', () => {
  it('needs nothing when every day may be missed, or there are none', () => {
    expect(
      leastCostStock(
        peaksOf([
          [4, 5],
          [6, 7],
        ]),
        [1, 1],
        2,
      ),
    ).toEqual({ stock: [0, 0], cost: 0, proven: true, bound: 0 });
    expect(leastCostStock({ days: 0, ware: 1, data: new Uint16Array(0) }, [5], 0).stock).toEqual([
      0,
    ]);
  });

  it('takes the largest peaks when none may be missed', () => {
    expect(
      leastCostStock(
        peaksOf([
          [4, 5],
          [6, 1],
        ]),
        [3, 2],
        0,
      ),
    ).toEqual({ stock: [6, 5], cost: 28, proven: true, bound: 28 });
  });

  it('does not buy ware without a price without end', () => {
    // At its nominal price of 2 the second ware is no better a bargain than the first.
    const peaks = peaksOf([
      [9, 1],
      [1, 9],
      [1, 1],
      [1, 1],
    ]);
    expect(leastCostStock(peaks, [2, 0], 2)).toMatchObject({ stock: [1, 1], cost: 2 });
    expect(leastCostStock(peaks, [0, 0], 1).stock.toSorted()).toEqual([1, 9]);
  });

  it('refuses prices and counts that mean nothing', () => {
    expect(() => leastCostStock(peaksOf([[1, 2]]), [1], 0)).toThrow(RangeError);
    expect(() => leastCostStock(peaksOf([[1, 2]]), [1, -1], 0)).toThrow(RangeError);
    expect(() => leastCostStock(peaksOf([[1, 2]]), [1, Number.NaN], 0)).toThrow(RangeError);
    expect(() => leastCostStock(peaksOf([[1, 2]]), [1, 1], 0.5)).toThrow(RangeError);
  });
});
