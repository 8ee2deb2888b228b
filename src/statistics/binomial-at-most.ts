import { regularisedIncompleteBeta } from './regularised-incomplete-beta.js';

/**
 * The chance of at most `successes` in `trials` independent trials that each succeed with chance p
 * (DLMF 8.17.5: a sum of binomial probabilities is an incomplete beta function).
 *
 * @throws RangeError for counts that are not whole or p outside [0, 1]
 */
export function binomialAtMost(successes: number, trials: number, p: number): number {
  if (
    !(Number.isInteger(trials) && trials >= 0 && Number.isInteger(successes) && p >= 0 && p <= 1)
  ) {
    throw new RangeError(
      `a binomial probability needs whole counts and 0 ≤ p ≤ 1; given ${successes} of ${trials}, p = ${p}`,
    );
  }
  if (successes < 0) return 0;
  if (successes >= trials) return 1;
  return regularisedIncompleteBeta(1 - p, trials - successes, successes + 1);
}
