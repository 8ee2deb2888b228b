/**
 * The standard normal quantile, so that one uniform gives one normal draw.
 *
 * M. J. Wichura, "Algorithm AS 241: the percentage points of the normal distribution", Applied Statistics
 * 37(3), 1988, routine PPND16: about one part in 10¹⁶. Ours rather than a library's, as those at hand are
 * either coarse or make functions from text when loaded, which a page with a strict policy forbids.
 */
import { log } from '../elementary/log.js';

/** Coefficients of a ratio of two polynomials, from the constant upwards. */
interface Ratio {
  readonly top: Float64Array;
  readonly bottom: Float64Array;
}

const ratioOf = (top: readonly number[], bottom: readonly number[]): Ratio => ({
  top: Float64Array.from(top),
  bottom: Float64Array.from(bottom),
});

const MIDDLE = ratioOf(
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946,
    45921.95393154987, 67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597,
    39307.89580009271, 28729.085735721943, 5226.495278852546,
  ],
);
const NEAR = ratioOf(
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045,
    1.2704582524523684, 0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008,
    0.015198666563616457, 0.0005475938084995345, 1.0507500716444169e-9,
  ],
);
const FAR = ratioOf(
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487,
    0.026532189526576124, 0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
);

/** c₀ + c₁x + … + c₇x⁷, in pairs, so that a processor can work on several at a time. */
function polynomial(c: Float64Array, x: number): number {
  const xx = x * x;
  const low = c[0]! + c[1]! * x + (c[2]! + c[3]! * x) * xx;
  const high = c[4]! + c[5]! * x + (c[6]! + c[7]! * x) * xx;
  return low + high * (xx * xx);
}

const ratio = (of: Ratio, x: number): number => polynomial(of.top, x) / polynomial(of.bottom, x);

/** The value below which a standard normal lies with probability `share` (0 < share < 1). */
export function normalQuantile(share: number): number {
  const q = share - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(MIDDLE, 0.180625 - q * q);
  const r = Math.sqrt(-log(q < 0 ? share : 1 - share));
  const size = r <= 5 ? ratio(NEAR, r - 1.6) : ratio(FAR, r - 5);
  return q < 0 ? -size : size;
}
