/**
 * Logarithms and powers for the tables, in whole numbers of 2⁻¹²⁰: the tables are computed, not copied, and
 * whole numbers of any size are the same in every engine.
 */
const PLACES = 120n;
const ONE = 1n << PLACES;

/** Steps of the table of logarithms: 1 to 2 in 128 parts. */
export const LOG_STEPS = 128;
/** Steps of the table of powers: from 1 to 2 by 128 equal ratios. */
export const POWER_STEPS = 128;

/** A number as the sum of two: the first short enough to be multiplied or added without rounding. */
export interface Split {
  readonly high: number;
  readonly low: number;
}

/** Split after `bits` binary places. */
function split(value: bigint, bits: number): Split {
  const rest = PLACES - BigInt(bits);
  const high = (value >> rest) << rest;
  return { high: toNumber(high), low: toNumber(value - high) };
}

/** Exact where the value has at most 53 bits, else rounded. */
function toNumber(value: bigint): number {
  return Number(value) / Number(ONE);
}

/** Binary places of the high part of a logarithm: 2,048 times ln 2 then still fits 53 bits. */
const LOG_BITS = 41;

/** 2 atanh(1/n) = ln((n + 1)/(n − 1)), by Gregory's series. */
function logOfRatio(n: bigint): bigint {
  let sum = 0n;
  let power = (2n * ONE) / n;
  for (let odd = 1n; power !== 0n; odd += 2n) {
    sum += power / odd;
    power /= n * n;
  }
  return sum;
}

/** ln(1 + j/128) for j = 0 … 128. */
function stepLogs(): bigint[] {
  const logs = [0n];
  for (let j = 0; j < LOG_STEPS; j += 1)
    logs.push(logs[j]! + logOfRatio(BigInt(2 * (LOG_STEPS + j) + 1)));
  return logs;
}

/** 2^(j/128) for j = 0 … 127: the series of the exponential function for the first step, then products. */
function stepPowers(ln2: bigint): bigint[] {
  const step = ln2 / BigInt(POWER_STEPS);
  let ratio = 0n;
  let term = ONE;
  for (let n = 1n; term !== 0n; n += 1n) {
    ratio += term;
    term = (term * step) / (n * ONE);
  }
  const powers = [ONE];
  for (let j = 1; j < POWER_STEPS; j += 1) powers.push((powers[j - 1]! * ratio) / ONE);
  return powers;
}

const logs = stepLogs();
const ln2 = logs[LOG_STEPS]!;

/** ln 2. */
export const LN2 = split(ln2, LOG_BITS);
/** ln 2 / 128, in a high part that 2¹⁸ steps multiply without rounding. */
export const LN2_STEP = split(ln2 / BigInt(POWER_STEPS), 42);
/** By j: ln(1 + j/128); from √2 on of half that, so that numbers just below 1 lie near 1 too. */
export const LOG_OF_STEP: readonly Split[] = logs.map((log, j) =>
  split(j < 53 ? log : log - ln2, LOG_BITS),
);
/** By j: 2^(j/128). */
export const POWER_OF_STEP: readonly Split[] = stepPowers(ln2).map((power) => split(power, 52));
