import { betaQuantile } from './beta-quantile.js';

/**
 * The p-quantile of Student's t with the given degrees of freedom, from the beta quantile of which it is a
 * transform (DLMF 8.17.5 and the definition of t): t²/(ν + t²) is beta(1/2, ν/2).
 *
 * @throws RangeError unless 0 < p < 1 and the degrees of freedom are > 0
 */
export function studentTQuantile(p: number, degreesOfFreedom: number): number {
  if (!(p > 0 && p < 1 && degreesOfFreedom > 0)) {
    throw new RangeError(
      `a t quantile needs 0 < p < 1 and degrees of freedom > 0; given p = ${p}, ${degreesOfFreedom} degrees`,
    );
  }
  if (p < 0.5) return -studentTQuantile(1 - p, degreesOfFreedom);
  if (p === 0.5) return 0;
  // The beta variable or its complement, whichever is small and therefore has its digits.
  const far = betaQuantile(2 * (1 - p), degreesOfFreedom / 2, 0.5);
  if (far < 0.5) return Math.sqrt((degreesOfFreedom * (1 - far)) / far);
  const near = betaQuantile(2 * p - 1, 0.5, degreesOfFreedom / 2);
  return Math.sqrt((degreesOfFreedom * near) / (1 - near));
}
