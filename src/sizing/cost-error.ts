import { bootstrapStandardError } from '../statistics/bootstrap-standard-error.js';
import { allowedMisses } from '../statistics/quantile-of-counts.js';
import { leastCostStock } from './least-cost-stock.js';
import { selectDays } from './peaks.js';
import type { Peaks } from './peaks.js';

/** Enough to tell an error of half a percent from one of a whole: 25 samples know theirs to about 15 %. */
const SAMPLES = 25;
const PARTS = 50;

/**
 * How far the cost of the cheapest stock would vary from one sample of so many days to the next: its bootstrap
 * standard error as a share of the cost; 0 where nothing costs anything.
 *
 * @param uniform a source of independent numbers in [0, 1)
 */
export function costError(
  peaks: Peaks,
  unitCostMinor: readonly number[],
  level: number,
  uniform: () => number,
): number {
  const k = allowedMisses(peaks.days, level);
  const cost = (days: Peaks) => leastCostStock(days, unitCostMinor, k, { parts: PARTS }).cost;
  const whole = cost(peaks);
  if (whole === 0) return 0;
  return (
    bootstrapStandardError(
      peaks.days,
      (drawn) => cost(selectDays(peaks, drawn)),
      SAMPLES,
      uniform,
    ) / whole
  );
}
