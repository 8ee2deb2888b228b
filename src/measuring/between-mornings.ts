/** Whether mornings differ by more than chance. */
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import { square } from '../elementary/powers.js';

/** What one morning says of an input, on a scale on which its error is about normal. */
export interface MorningSays {
  readonly value: number;
  readonly standardError: number;
}

/**
 * Chance that mornings of which the truth is one and the same lie as far apart: squares of distances from their
 * weighted mean, in standard errors, are chi-square with one degree less than there are mornings (W. Cochran, Biometrics 10, 1954).
 * @throws RangeError for fewer than two mornings or a standard error that is not above 0
 */
export function chanceOfDifference(mornings: readonly MorningSays[]): number {
  if (mornings.length < 2 || mornings.some(({ standardError }) => !(standardError > 0)))
    throw new RangeError('two mornings are needed, each with a standard error above 0');
  const weights = mornings.map(({ standardError }) => 1 / square(standardError));
  const all = weights.reduce((sum, one) => sum + one, 0);
  const mean = mornings.reduce((sum, { value }, at) => sum + value * weights[at]!, 0) / all;
  const far = mornings.reduce((sum, { value }, at) => sum + weights[at]! * square(value - mean), 0);
  return 1 - gammaCdf(far, (mornings.length - 1) / 2, 0.5);
}
