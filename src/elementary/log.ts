/**
 * The natural logarithm by the same steps in every engine: JavaScript's own differs from engine to engine in
 * the last bit, and a last bit may decide a draw.
 *
 * Table-driven, after P. T. P. Tang, "Table-driven implementation of the logarithm function in IEEE
 * floating-point arithmetic", ACM TOMS 16(4), 1990: x = 2ᵏ·c·(1 + r) with c from a table of 128 steps
 * and |r| < 1/256, and Mercator's series for ln(1 + r). Only + − × and tables. Errors stay below
 * 1.2 units in the last place (1.6 for log1p), as tests hold.
 */
import { LN2, LOG_OF_STEP, LOG_STEPS } from './fixed-point.js';

/** From step 53 on, 1 + 53/128 ≈ √2, a number counts for the next power of two. */
const TO_NEXT_POWER = LOG_STEPS - 53;

const LN2_HIGH = LN2.high;
const LN2_LOW = LN2.low;
/** Four numbers a step, side by side: c as it is read from the bits (1 … 2), 1/c, and ln c or ln c/2 in two parts. */
const steps = Float64Array.from(
  LOG_OF_STEP.flatMap(({ high, low }, j) => [
    1 + j / LOG_STEPS,
    1 / (1 + j / LOG_STEPS),
    high,
    low,
  ]),
);
/** By exponent as it stands in the bits: the power of two that brings the number to 1 … 2. */
const scale = powersOfTwoDown();

const number = new Float64Array(1);
const words = new Int32Array(number.buffer);
number[0] = 1;
/** Which of the two words holds sign and exponent: 1 on every common machine. */
const TOP = words[1] === 0 ? 0 : 1;

function powersOfTwoDown(): Float64Array {
  const powers = new Float64Array(2047);
  powers[1023] = 1;
  for (let at = 1024; at < 2047; at += 1) powers[at] = powers[at - 1]! / 2;
  for (let at = 1022; at > 0; at -= 1) powers[at] = powers[at + 1]! * 2;
  return powers;
}

/** ln x: −∞ at 0, NaN below. */
export function log(x: number): number {
  if (!(x >= 2.2250738585072014e-308 && x < Infinity)) return atTheEdges(x);
  number[0] = x;
  const top = words[TOP]!;
  const exponent = top >> 20;
  // Twenty bits of the fraction, rounded to seven.
  const j = ((top & 0xfffff) + 0x1000) >> 13;
  // Without a branch, as no processor foresees what a random number takes.
  const k = exponent - 1023 + ((j + TO_NEXT_POWER) >> 7);
  const step = 4 * j;
  const r = (x * scale[exponent]! - steps[step]!) * steps[step + 1]!;
  const rr = r * r;
  const curve =
    rr * (-1 / 2 + r * (1 / 3) + rr * (-1 / 4 + r * (1 / 5) + rr * (-1 / 6 + r * (1 / 7))));
  return k * LN2_HIGH + steps[step + 2]! + (r + (k * LN2_LOW + steps[step + 3]! + curve));
}

function atTheEdges(x: number): number {
  if (x === 0) return -Infinity;
  if (x > 0 && x < 1) return log(x * 18014398509481984) - 54 * LN2_LOW - 54 * LN2_HIGH;
  return x === Infinity ? x : NaN;
}

/** ln(1 + x), with its digits also where x is small (W. Kahan's correction by what 1 + x lost). */
export function log1p(x: number): number {
  const u = 1 + x;
  if (!(u > 0 && u < Infinity)) return log(u);
  // Exact on either side of 1 (O. Møller's two-sum, T. Dekker).
  const lost = x > 1 ? 1 - (u - x) : x - (u - 1);
  return x === 0 ? x : log(u) + lost / u;
}
