import { regularisedIncompleteBeta } from './regularised-incomplete-beta.js';

/**
 * The p-quantile of a beta(a, b) variable: the x at which I_x(a, b) = p.
 *
 * Found by halving, which cannot fail and is quick enough for the few intervals of a report (about 60
 * evaluations, more for a quantile very near 0); it stops when two neighbouring floating-point numbers are left.
 *
 * @param p a probability in [0, 1]
 * @param a first shape, > 0
 * @param b second shape, > 0
 * @throws RangeError outside those ranges
 */
export function betaQuantile(p: number, a: number, b: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`a probability lies in 0…1; given ${p}`);
  if (p === 0 || p === 1) return p;
  let low = 0;
  let high = 1;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (regularisedIncompleteBeta(middle, a, b) < p) low = middle;
    else high = middle;
  }
}
