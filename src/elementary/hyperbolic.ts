/** The hyperbolic tangent and its inverse, by way of eˣ − 1 and ln(1 + x), with their digits also near 0 (errors below 4 units in the last place). */
import { expm1 } from './exp.js';
import { log1p } from './log.js';

/** tanh x = (e²ˣ − 1)/(e²ˣ + 1). */
export function tanh(x: number): number {
  if (x < 0) return -tanh(-x);
  if (x > 20) return 1;
  const grown = expm1(2 * x);
  return grown / (grown + 2);
}

/** artanh x = ½ ln((1 + x)/(1 − x)) for −1 ≤ x ≤ 1; infinite at the ends. */
export function atanh(x: number): number {
  return x < 0 ? -atanh(-x) : log1p((2 * x) / (1 - x)) / 2;
}
