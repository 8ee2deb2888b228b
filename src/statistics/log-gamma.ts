import { log } from '../elementary/log.js';

/** From here on Stirling's series with seven terms has all digits of a double. */
const LARGE = 16;
const HALF_LOG_TWO_PI = 0.9189385332046728;
/** B₂ₖ/(2k(2k − 1)) for k = 1 … 7 with the Bernoulli numbers B. */
const TERMS = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360_360, 1 / 156];

/**
 * ln Γ(x), the logarithm of (x − 1)! for whole x: Stirling's series (NIST Digital Library of Mathematical
 * Functions, 5.11.1), below 16 after Γ(x) = Γ(x + 1)/x. By our own logarithm, so that every engine gives
 * the same bytes.
 *
 * @param x > 0
 * @throws RangeError elsewhere
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`the logarithm of the gamma function needs x > 0; given ${x}`);
  let large = x;
  let product = 1;
  for (; large < LARGE; large += 1) product *= large;
  const inverse = 1 / large;
  let series = 0;
  for (let k = TERMS.length - 1; k >= 0; k -= 1) series = series * inverse * inverse + TERMS[k]!;
  return (large - 0.5) * log(large) - large + HALF_LOG_TWO_PI + series * inverse - log(product);
}
