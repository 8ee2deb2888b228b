/**
 * Counts of a Poisson process whose level is gamma with mean 1: the negative binomial distribution.
 */
import { exp } from '../elementary/exp.js';
import { log, log1p } from '../elementary/log.js';

/**
 * Chances of 0, 1, 2, … with the mean and the level's coefficient of variation given, up to where less
 * than 10⁻⁹ is left; cv 0 is the Poisson distribution.
 */
export function mixedPoisson(mean: number, cv: number): number[] {
  const a = cv * cv;
  // P(0) = (1 + a m)^(−1/a), and e^(−m) in the limit; then P(k+1) = P(k) · m (1 + a k) / ((k + 1)(1 + a m)).
  let logChance = a === 0 ? -mean : -log1p(a * mean) / a;
  const chances: number[] = [];
  let covered = 0;
  // The tail falls off as e^(−k / (a m)) or faster; a stop for what rounding never lets reach the sum.
  const longest = 50 + mean * (1 + 12 * cv + 25 * a) + 12 * Math.sqrt(mean);
  for (let k = 0; covered < 1 - 1e-9 && k <= longest; k += 1) {
    const chance = exp(logChance);
    chances.push(chance);
    covered += chance;
    logChance += log((mean * (1 + a * k)) / ((k + 1) * (1 + a * mean)));
  }
  return chances;
}

/** The smallest count that a share `p` of the distribution does not exceed; chances of 0, 1, 2, … given. */
export function quantileOf(chances: readonly number[], p: number): number {
  let sum = 0;
  for (let k = 0; k < chances.length; k += 1) {
    sum += chances[k]!;
    if (sum >= p - 1e-12) return k;
  }
  return chances.length - 1;
}
