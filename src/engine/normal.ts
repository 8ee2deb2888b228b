/**
 * The standard normal quantile, so that one uniform gives one normal draw.
 *
 * M. J. Wichura, "Algorithm AS 241: the percentage points of the normal distribution", Applied Statistics
 * 37(3), 1988, routine PPND16: about one part in 10¹⁶. Ours rather than a library's, as those at hand are
 * either coarse or make functions from text when loaded, which a page with a strict policy forbids.
 */

/** Coefficients of a ratio of two polynomials, from the constant upwards. */
type Ratio = readonly [readonly number[], readonly number[]];

const MIDDLE: Ratio = [
  [3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727],
  [1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061, 28729.085735721942674, 5226.495278852545925],
];
const NEAR: Ratio = [
  [1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4],
  [1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459, 0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9],
];
const FAR: Ratio = [
  [6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 0.026532189526576123093, 0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7],
  [1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4, 1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15],
];

function ratio([top, bottom]: Ratio, x: number): number {
  let above = 0;
  let below = 0;
  for (let at = top.length - 1; at >= 0; at -= 1) {
    above = above * x + top[at]!;
    below = below * x + bottom[at]!;
  }
  return above / below;
}

/** The value below which a standard normal lies with probability `share` (0 < share < 1). */
export function normalQuantile(share: number): number {
  const q = share - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(MIDDLE, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(q < 0 ? share : 1 - share));
  const size = r <= 5 ? ratio(NEAR, r - 1.6) : ratio(FAR, r - 5);
  return q < 0 ? -size : size;
}
