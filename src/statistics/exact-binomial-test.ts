import { binomialAtMost } from './binomial-at-most.js';
import { binomialProbability } from './binomial-probability.js';

/** Two results count as equally likely when their probabilities differ by no more than rounding. */
const EQUALLY_LIKELY = 1 + 1e-7;

/**
 * The exact two-sided p-value of seeing `successes` in `trials` when each succeeds with chance p: the chance of
 * all results that are no likelier than the one seen (the method of small p-values; Hirji, Exact Analysis of
 * Discrete Data, 2006). The probabilities rise to the mode and fall after it, so the results on the other side
 * are a tail whose end is found by halving.
 *
 * @throws RangeError for counts that are not whole or p outside [0, 1]
 */
export function exactBinomialTest(successes: number, trials: number, p: number): number {
  const limit = binomialProbability(successes, trials, p) * EQUALLY_LIKELY;
  const mean = trials * p;
  if (successes === mean) return 1;
  if (successes < mean) {
    const first = firstNoLikelier(
      Math.ceil(mean),
      trials + 1,
      (count) => binomialProbability(count, trials, p) <= limit,
    );
    return Math.min(1, binomialAtMost(successes, trials, p) + atLeast(first, trials, p));
  }
  const mirrored = firstNoLikelier(
    Math.ceil(trials - mean),
    trials + 1,
    (count) => binomialProbability(trials - count, trials, p) <= limit,
  );
  return Math.min(1, atLeast(successes, trials, p) + binomialAtMost(trials - mirrored, trials, p));
}

/** Through the failures, so that a small upper tail keeps its digits. */
function atLeast(successes: number, trials: number, p: number): number {
  return binomialAtMost(trials - successes, trials, 1 - p);
}

/** The first count in low…high at which a condition holds that, once true, stays true; `high` if it never does. */
function firstNoLikelier(low: number, high: number, holds: (count: number) => boolean): number {
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
