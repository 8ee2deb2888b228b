import { log, log1p } from '../elementary/log.js';

/**
 * How many values must be seen before the largest of them is an upper bound of the p-quantile with the given
 * confidence, whatever the distribution: the least n with 1 − pⁿ ≥ confidence (Wilks, Annals of Mathematical
 * Statistics 12, 1941).
 *
 * @throws RangeError unless p and confidence lie strictly between 0 and 1
 */
export function leastSampleForBound(p: number, confidence = 0.95): number {
  if (!(p > 0 && p < 1 && confidence > 0 && confidence < 1)) {
    throw new RangeError(
      `a bound needs 0 < p < 1 and 0 < confidence < 1; given p = ${p}, confidence = ${confidence}`,
    );
  }
  // The small allowance keeps a case that meets the confidence exactly (p = confidence = 1/2) from rounding up.
  return Math.max(1, Math.ceil(log1p(-confidence) / log(p) - 1e-9));
}
