/** Powers and roots by the same steps in every engine: products, square roots (exact to the last bit everywhere) and our own logarithm. */
import { exp } from './exp.js';
import { log } from './log.js';

/** Whole exponents up to here are products. */
const MOST_PRODUCTS = 1024;

/**
 * x to the power y. A whole y: by products (powers of ten up to 10²² are exact). Else e^(y ln x): the error is
 * about 1 + |y ln x| units in the last place.
 */
export function power(x: number, y: number): number {
  if (Number.isInteger(y) && Math.abs(y) <= MOST_PRODUCTS)
    return y < 0 ? 1 / products(x, -y) : products(x, y);
  return exp(y * log(x));
}

export const square = (x: number): number => x * x;

/** The whole n with 10ⁿ ≤ |x| < 10ⁿ⁺¹, as the number is written in shortest form; 0 for 0. */
export const decimalExponent = (x: number): number => Number(x.toExponential().split('e')[1]);

/** x · x · … by squaring. */
function products(x: number, count: number): number {
  let result = 1;
  let factor = x;
  for (let left = count; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) result *= factor;
    factor *= factor;
  }
  return result;
}

/** √(x² + y² + …); for lengths and amounts whose squares are far from the ends of the numbers. */
export function hypot(...sides: readonly number[]): number {
  let sum = 0;
  for (const side of sides) sum += side * side;
  return Math.sqrt(sum);
}

/** ∛x: from e^(ln x / 3), and one step of Newton's, which doubles the digits. */
export function cbrt(x: number): number {
  if (x < 0) return -cbrt(-x);
  if (!(x > 0 && x < Infinity)) return x;
  const near = exp(log(x) / 3);
  return near - (near - x / (near * near)) / 3;
}
