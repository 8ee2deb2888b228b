import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastCostBeyond } from '../../src/sizing/least-cost-beyond.js';
import { leastCostStock } from '../../src/sizing/least-cost-stock.js';
import { countMisses, type Peaks } from '../../src/sizing/peaks.js';

const houses = fc.integer({ min: 1, max: 3 }).chain((ware) =>
  fc.record({
    rows: fc.array(fc.array(fc.nat(6), { minLength: ware, maxLength: ware }), {
      minLength: 1,
      maxLength: 12,
    }),
    prices: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: ware, maxLength: ware }),
    owned: fc.array(fc.nat(6), { minLength: ware, maxLength: ware }),
    k: fc.nat(3),
  }),
);

const peaksOf = (rows: readonly (readonly number[])[]): Peaks => ({
  days: rows.length,
  ware: rows[0]!.length,
  data: Uint16Array.from(rows.flat()),
});

/** Every stock up to the largest need, one by one. */
function cheapest(
  peaks: Peaks,
  prices: readonly number[],
  k: number,
  owned: readonly number[],
): number {
  let least = Infinity;
  const visit = (stock: readonly number[]): void => {
    if (stock.length === prices.length) {
      if (countMisses(peaks, stock) > k) return;
      const spend = stock.reduce((sum, pieces, w) => sum + (pieces - owned[w]!) * prices[w]!, 0);
      least = Math.min(least, spend);
      return;
    }
    const from = owned[stock.length]!;
    for (let pieces = from; pieces <= Math.max(from, 6); pieces++) visit([...stock, pieces]);
  };
  visit([]);
  return least;
}

describe('the stock beyond what is owned', () => {
  it('spends as little as trying every stock does, never goes below what is there, meets the service level', () =>
    fc.assert(
      fc.property(houses, ({ rows, prices, owned, k }) => {
        const peaks = peaksOf(rows);
        const { stock, cost } = leastCostBeyond([{ peaks, misses: k }], prices, owned);
        expect(cost).toBe(cheapest(peaks, prices, k, owned));
        stock.forEach((pieces, w) => expect(pieces).toBeGreaterThanOrEqual(owned[w]!));
        expect(countMisses(peaks, stock)).toBeLessThanOrEqual(k);
      }),
      { seed: 1, numRuns: 300 },
    ));

  it('is the ordinary stock where nothing is owned', () => {
    const peaks = peaksOf([
      [3, 1],
      [2, 4],
      [5, 0],
    ]);
    expect(leastCostBeyond([{ peaks, misses: 1 }], [3, 2], [0, 0])).toEqual(
      leastCostStock(peaks, [3, 2], 1),
    );
  });
});
