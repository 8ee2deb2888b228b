/** The elementary functions of a double to some 200 bits, in whole numbers of 2⁻²⁵⁶: slow, plain series. */
const PLACES = 256n;
export const ONE = 1n << PLACES;

/** A double as it is, exact to 2⁻²⁵⁶. */
export function exactly(x: number): bigint {
  if (x < 0) return -exactly(-x);
  let shift = 0;
  let mantissa = x;
  while (!Number.isInteger(mantissa)) {
    mantissa *= 2;
    shift += 1;
  }
  return (BigInt(mantissa) << PLACES) >> BigInt(shift);
}

const times = (a: bigint, b: bigint): bigint => (a * b) / ONE;

/** 2 artanh(z) for |z| well below 1. */
function doubleArtanh(z: bigint): bigint {
  const square = times(z, z);
  let sum = 0n;
  let power = 2n * z;
  for (let odd = 1n; power !== 0n; odd += 2n) {
    sum += power / odd;
    power = times(power, square);
  }
  return sum;
}
const LN2 = doubleArtanh(ONE / 3n);

export function logOf(value: bigint): bigint {
  let x = value;
  let twos = 0n;
  while (x > (3n * ONE) / 2n) {
    x /= 2n;
    twos += 1n;
  }
  while (x < (3n * ONE) / 4n) {
    x *= 2n;
    twos -= 1n;
  }
  return twos * LN2 + doubleArtanh(((x - ONE) * ONE) / (x + ONE));
}

export function expOf(x: bigint): bigint {
  const twos = x / LN2;
  const rest = x - twos * LN2;
  let sum = 0n;
  let term = ONE;
  for (let n = 1n; term !== 0n; n += 1n) {
    sum += term;
    term = times(term, rest) / n;
  }
  return twos < 0n ? sum >> -twos : sum << twos;
}

/** Sum of xⁿ/n! with signs + − by pairs, from n = `first`: sine from 1, cosine from 0. */
function circular(x: bigint, first: bigint): bigint {
  let sum = 0n;
  let term = first === 0n ? ONE : x;
  for (let n = first; term !== 0n; n += 2n) {
    sum += term;
    term = -times(times(term, x), x) / ((n + 1n) * (n + 2n));
  }
  return sum;
}
export const sinOf = (x: bigint): bigint => circular(x, 1n);
export const cosOf = (x: bigint): bigint => circular(x, 0n);

/** How far `found` is from `exact`, in units of the last place of `found`. */
export function lastPlaces(found: number, exact: bigint): number {
  const gap = exactly(found) - exact;
  // Scaled before it becomes a double, so that nothing is lost.
  const size = Math.max(Math.abs(found), 2 ** -1022);
  const place = 2 ** (Math.floor(Math.log2(size)) - 52);
  return Math.abs(Number(gap) / 2 ** 256) / place;
}
