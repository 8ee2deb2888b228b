import { exp } from '../elementary/exp.js';

const HALF_LOG_TWO_PI = 0.9189385332046728;
/** Beyond this the chance is below 10⁻¹⁵, where the series has no digits left. */
const FAR = 8;

/**
 * Chance that a standard normal number is above z (absolute error some 10⁻¹⁵): G. Marsaglia, "Evaluating the normal
 * distribution", Journal of Statistical Software 11(4), 2004.
 */
export function normalUpper(z: number): number {
  if (Math.abs(z) > FAR) return z > 0 ? 0 : 1;
  let term = z;
  let sum = z;
  for (let odd = 3; Math.abs(term) > 1e-17 * Math.abs(sum); odd += 2) {
    term *= (z * z) / odd;
    sum += term;
  }
  return Math.max(0, Math.min(1, 0.5 - sum * exp(-(z * z) / 2 - HALF_LOG_TWO_PI)));
}
