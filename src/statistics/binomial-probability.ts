import { exp } from '../elementary/exp.js';
import { log, log1p } from '../elementary/log.js';
import { logGamma } from './log-gamma.js';

/**
 * The chance of exactly `successes` in `trials` independent trials that each succeed with chance p.
 * Through logarithms, so that large numbers of trials neither overflow nor underflow on the way.
 *
 * @throws RangeError for counts that are not whole or p outside [0, 1]
 */
export function binomialProbability(successes: number, trials: number, p: number): number {
  if (
    !(Number.isInteger(trials) && trials >= 0 && Number.isInteger(successes) && p >= 0 && p <= 1)
  ) {
    throw new RangeError(
      `a binomial probability needs whole counts and 0 ≤ p ≤ 1; given ${successes} of ${trials}, p = ${p}`,
    );
  }
  if (successes < 0 || successes > trials) return 0;
  if (p === 0) return successes === 0 ? 1 : 0;
  if (p === 1) return successes === trials ? 1 : 0;
  const failures = trials - successes;
  const logWays = logGamma(trials + 1) - logGamma(successes + 1) - logGamma(failures + 1);
  return exp(logWays + successes * log(p) + failures * log1p(-p));
}
