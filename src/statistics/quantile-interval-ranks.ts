import { binomialAtMost } from './binomial-at-most.js';

/** Ranks count from 1, the smallest value; null where the interval has no end on that side. */
export interface QuantileIntervalRanks {
  readonly lower: number | null;
  readonly upper: number | null;
  /** The chance that the interval covers the quantile of a continuous distribution; at least that for counts. */
  readonly coverage: number;
}

/**
 * Which of n ordered values bound the p-quantile, whatever the distribution: the narrowest pair of ranks whose
 * misses are each no likelier than (1 − confidence)/2. The number of values below the quantile is binomial(n, p),
 * so rank l misses above it with chance P(X < l), and rank u misses below it with chance P(X ≥ u)
 * (Conover, Practical Nonparametric Statistics, 3.2; Hahn & Meeker, Statistical Intervals, 5.2).
 *
 * @throws RangeError unless n is whole and ≥ 1 and p and confidence lie strictly between 0 and 1
 */
export function quantileIntervalRanks(
  n: number,
  p: number,
  confidence = 0.95,
): QuantileIntervalRanks {
  if (!(Number.isInteger(n) && n >= 1 && p > 0 && p < 1 && confidence > 0 && confidence < 1)) {
    throw new RangeError(
      `a quantile interval needs n ≥ 1, 0 < p < 1 and 0 < confidence < 1; given n = ${n}, p = ${p}, confidence = ${confidence}`,
    );
  }
  const tail = (1 - confidence) / 2;
  const below = largest(n, (rank) => binomialAtMost(rank - 1, n, p) <= tail);
  // P(X ≥ u) counted as failures: P(n − X ≤ n − u) with chance 1 − p each.
  const above = largest(n, (fromTop) => binomialAtMost(fromTop - 1, n, 1 - p) <= tail);
  return {
    lower: below === 0 ? null : below,
    upper: above === 0 ? null : n + 1 - above,
    coverage: 1 - binomialAtMost(below - 1, n, p) - binomialAtMost(above - 1, n, 1 - p),
  };
}

/** The largest count in 1…n for which a condition holds that, once false, stays false; 0 if it never holds. */
function largest(n: number, holds: (count: number) => boolean): number {
  let low = 0;
  let high = n;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}
