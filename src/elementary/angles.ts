/**
 * Sines, cosines and angles by the same steps in every engine: their power series on a short range (an eighth of a
 * turn, and a thirty-second of one for the arc tangent), to which the argument is brought by quarters of a turn (W. Cody and
 * W. Waite, Software Manual for the Elementary Functions, 1980) and by halving the angle.
 */

/** A quarter of a turn in three parts; the first two have 33 bits, so that many quarters multiply without rounding. */
const QUARTER_1 = 1.5707963267341256;
const QUARTER_2 = 6.077100506303966e-11;
const QUARTER_3 = 2.0222662487959506e-21;
/** More quarters than this would no longer multiply without rounding. */
const MOST_QUARTERS = 1_000_000;

/** sin x, x in radians. */
export const sin = (x: number): number => turned(x, 0);

/** cos x, x in radians. */
export const cos = (x: number): number => turned(x, 1);

/** sin(x + quarters × π/2). Throws a RangeError beyond a million quarters, where the angle has lost its digits. */
function turned(x: number, quarters: number): number {
  const whole = Math.round(x * (2 / Math.PI));
  if (!(Math.abs(whole) <= MOST_QUARTERS))
    throw new RangeError(`an angle of ${x} radians has too many turns to be worked out`);
  const rest = x - whole * QUARTER_1 - whole * QUARTER_2 - whole * QUARTER_3;
  const quarter = (whole + quarters) & 3;
  const size = quarter % 2 === 0 ? sineSeries(rest) : cosineSeries(rest);
  return quarter < 2 ? size : -size;
}

/** x − x³/3! + x⁵/5! … to x¹⁷, for |x| ≤ π/4. */
function sineSeries(x: number): number {
  const square = x * x;
  let sum = 0;
  for (let n = 16; n >= 2; n -= 2) sum = (-square / (n * (n + 1))) * (1 + sum);
  return x + x * sum;
}

/** 1 − x²/2! + x⁴/4! … to x¹⁸, for |x| ≤ π/4. */
function cosineSeries(x: number): number {
  const square = x * x;
  let sum = 0;
  for (let n = 17; n >= 3; n -= 2) sum = (-square / (n * (n + 1))) * (1 + sum);
  return 1 - (square / 2) * (1 + sum);
}

/** The angle from the x-axis to the point (x, y), −π … π radians. */
export function atan2(y: number, x: number): number {
  if (x === 0 && y === 0) return y;
  const [along, across] = [Math.abs(x), Math.abs(y)];
  const acute =
    across <= along ? arcTangent(across / along) : Math.PI / 2 - arcTangent(along / across);
  const upper = x < 0 ? Math.PI - acute : acute;
  return y < 0 ? -upper : upper;
}

/** arctan t for 0 ≤ t ≤ 1: the angle halved twice, then J. Gregory's series to t²⁵. */
function arcTangent(t: number): number {
  const half = t / (1 + Math.sqrt(1 + t * t));
  const quarter = half / (1 + Math.sqrt(1 + half * half));
  const square = quarter * quarter;
  let sum = 0;
  for (let n = 25; n >= 3; n -= 2) sum = square * (1 / n - sum);
  return 4 * (quarter - quarter * sum);
}
