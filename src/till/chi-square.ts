/**
 * The chi-square distribution, as the gamma distribution it is: shape k/2, rate 1/2.
 */
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';

/** Chance that a gamma variable of this mean and variance is as large as `value` or larger. */
export function gammaTail(value: number, mean: number, variance: number): number {
  return 1 - gammaCdf(value, (mean * mean) / variance, mean / variance);
}

/** Chance that a chi-square variable is as large as `value` or larger. */
export function chiSquareTail(value: number, freedom: number): number {
  return gammaTail(value, freedom, 2 * freedom);
}

/** The value below which a share `p` of a chi-square distribution lies, by halving. */
export function chiSquareQuantile(p: number, freedom: number): number {
  let low = 0;
  let high = freedom + 20 * Math.sqrt(2 * freedom) + 40;
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (gammaCdf(middle, freedom / 2, 0.5) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
