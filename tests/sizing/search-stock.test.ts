import { describe, expect, it } from 'vitest';
import { leastCostStock } from '../../src/sizing/least-cost-stock.js';
import { countMisses } from '../../src/sizing/peaks.js';
import type { Peaks } from '../../src/sizing/peaks.js';
import { searchStock } from '../../src/sizing/search-stock.js';
import { drawDays, EIGHT_COSTS, EIGHT_WARE, THREE_KINDS } from './days.js';

const DAYS = 400;
const K = 20;

/** Searches with runs that count by `truth`, guided by `peaks`; `ratio` is its cost over the least. */
async function trial(
  peaks: Peaks,
  truth: Peaks,
  tries?: number,
): Promise<{ ratio: number; kept: boolean; tries: number; settled: boolean }> {
  const costs = EIGHT_COSTS.slice(0, peaks.ware);
  const found = await searchStock({
    byPeaks: (k) => leastCostStock(peaks, costs, k).stock,
    days: DAYS,
    unitCostMinor: costs,
    k: K,
    misses: (stock) => countMisses(truth, stock),
    ...(tries === undefined ? {} : { tries }),
  });
  return {
    ratio: found.cost / leastCostStock(truth, costs, K).cost,
    kept: countMisses(truth, found.stock) <= K,
    tries: found.tries,
    settled: found.settled,
  };
}

const drawn = (ware: number, sample: number) =>
  drawDays({ means: EIGHT_WARE.slice(0, ware), kinds: THREE_KINDS }, DAYS, `search ${sample}`);

/** The same days with the peaks of some ware scaled, as a rule that starts part loads early would do. */
const scaled = (peaks: Peaks, factors: readonly number[]): Peaks => ({
  ...peaks,
  data: peaks.data.map((peak, at) => Math.round(peak * (factors[at % peaks.ware] ?? 1))),
});

describe('the search by runs', () => {
  it('ends at the exact answer where the peaks decide', async () => {
    for (let sample = 0; sample < 12; sample++) {
      const peaks = drawn(1 + (sample % 5), sample);
      expect(await trial(peaks, peaks)).toMatchObject({ ratio: 1, kept: true });
    }
  });

  it('goes from the misses of the peaks in doubling steps, then by halves', async () => {
    const asked = async (most: number): Promise<number[]> => {
      const tried: number[] = [];
      await searchStock({
        byPeaks: (k) => {
          tried.push(k);
          return [200 - k];
        },
        days: 100,
        unitCostMinor: [1],
        k: 20,
        misses: ([pieces]) => (pieces! >= 200 - most ? 0 : 100),
      });
      return tried;
    };
    expect(await asked(90)).toEqual([20, 21, 23, 27, 35, 51, 83, 100, 91, 87, 89, 90, 90]);
    expect(await asked(12)).toEqual([20, 19, 17, 13, 5, 9, 11, 12, 12]);
  });

  it('takes a piece without a price rather than one of two cents', async () => {
    const found = await searchStock({
      byPeaks: () => [5, 5],
      days: DAYS,
      unitCostMinor: [0, 2],
      k: K,
      misses: (stock) => (stock[0]! + stock[1]! >= 10 ? 0 : DAYS),
    });
    expect(found).toMatchObject({ stock: [10, 0], cost: 0 });
  });

  it('lowers the dearest first, where either of two could be lowered but not both', async () => {
    for (const dearest of [0, 1, 2]) {
      const costs = [1, 1, 1].map((cost, w) => (w === dearest ? 300 : cost * 100));
      const { stock } = await searchStock({
        byPeaks: () => [12, 12, 12],
        days: DAYS,
        unitCostMinor: costs,
        k: K,
        misses: async (some) => (some.reduce((sum, pieces) => sum + pieces, 0) >= 30 ? 0 : DAYS),
      });
      expect(stock[dearest]).toBe(0);
    }
  });

  it('meets the service level and stays near the least cost where they mislead: one ware needs a tenth less', async () => {
    let same = 0;
    for (let sample = 0; sample < 12; sample++) {
      const peaks = drawn(4, sample);
      const { ratio, kept } = await trial(peaks, scaled(peaks, [0.9]));
      expect(kept).toBe(true);
      expect(ratio).toBeLessThan(1.02);
      if (ratio === 1) same++;
    }
    expect(same).toBeGreaterThanOrEqual(7);
  });

  it('meets the service level where the peaks claim too much: everything needs a tenth more', async () => {
    for (let sample = 0; sample < 6; sample++) {
      const peaks = drawn(3, sample);
      const { ratio, kept } = await trial(peaks, scaled(peaks, [1.1, 1.1, 1.1]));
      expect(kept).toBe(true);
      expect(ratio).toBeLessThan(1.02);
    }
  });

  it('stays within a few percent with eight ware and no more tries than allowed', async () => {
    const peaks = drawn(8, 1);
    const { ratio, kept, tries, settled } = await trial(peaks, scaled(peaks, [0.9]), 60);
    expect(kept).toBe(true);
    expect(ratio).toBeLessThan(1.05);
    expect(tries).toBe(60);
    expect(settled).toBe(false);
  });

  it('starts above all peaks if it must, runs no stock twice, and owns up if nothing helps', async () => {
    const seen = new Set<string>();
    const costs = EIGHT_COSTS.slice(0, 2);
    const peaks = drawn(2, 0);
    const search = {
      byPeaks: (k: number) => leastCostStock(peaks, costs, k).stock,
      days: DAYS,
      unitCostMinor: costs,
      k: 0,
    };
    const found = await searchStock({
      ...search,
      misses: (stock) => {
        expect(seen.has(stock.join())).toBe(false);
        seen.add(stock.join());
        return Math.min(...stock) >= 200 ? 0 : 5;
      },
    });
    expect(found).toMatchObject({ stock: [200, 200], misses: 0, settled: true, tries: seen.size });
    const hopeless = await searchStock({ ...search, misses: () => DAYS });
    expect(hopeless.misses).toBe(DAYS);
    expect(hopeless.stock).toEqual(search.byPeaks(0));
  });
});
