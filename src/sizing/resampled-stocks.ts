import { allowedMisses } from '../statistics/quantile-of-counts.js';
import { leastCostStock } from './least-cost-stock.js';
import { selectDays, type Peaks } from './peaks.js';

const PARTS = 50;

/**
 * The cheapest stock on each of so many samples of the days, drawn with replacement (the bootstrap; Efron, Annals of
 * Statistics 7, 1979): how far a stock would vary from one set of days to the next. Runs of as many days that use
 * the same numbers draw the same days, so that their stocks can be compared sample by sample.
 *
 * @param level share of days on which nothing may run out, 0..1
 * @param uniform a source of independent numbers in [0, 1)
 * @returns pieces by ware, a row a sample
 */
export function resampledStocks(
  peaks: Peaks,
  unitCostMinor: readonly number[],
  level: number,
  samples: number,
  uniform: () => number,
): (readonly number[])[] {
  const { days } = peaks;
  const misses = allowedMisses(days, level);
  return Array.from({ length: samples }, () => {
    const drawn = Int32Array.from({ length: days }, () => Math.floor(uniform() * days));
    return leastCostStock(selectDays(peaks, drawn), unitCostMinor, misses, { parts: PARTS }).stock;
  });
}
