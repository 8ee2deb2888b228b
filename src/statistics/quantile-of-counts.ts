/** Allowance for products such as 20 × (1 − 0.95), which floating point puts just below 1. */
const ROUNDING = 1e-9;

/**
 * The number of n days that may fail while a share `level` of them succeeds: ⌊n(1 − level) + 10⁻⁹⌋.
 *
 * @throws RangeError unless n is whole and ≥ 0 and the level lies in [0, 1]
 */
export function allowedMisses(n: number, level: number): number {
  if (!(Number.isInteger(n) && n >= 0 && level >= 0 && level <= 1)) {
    throw new RangeError(
      `allowed misses need a whole number of days and a level in 0…1; given ${n} days at ${level}`,
    );
  }
  return Math.min(n, Math.floor(n * (1 - level) + ROUNDING));
}

/**
 * The least whole number that at most `above` of the values exceed, which is their (above+1)-th largest; 0 if there
 * are no more than `above`.
 *
 * @param counts how many values were 0, 1, 2, …
 */
export function exceededByAtMost(counts: ArrayLike<number>, above: number): number {
  let values = 0;
  for (let value = counts.length - 1; value > 0; value--) {
    values += counts[value];
    if (values > above) return value;
  }
  return 0;
}

/**
 * The p-quantile of whole numbers: the least that all but ⌊n(1 − p) + 10⁻⁹⌋ of the n values do not exceed. Never
 * interpolated, because half a cup cannot be bought.
 *
 * @param counts how many values were 0, 1, 2, …
 * @throws RangeError for p outside [0, 1]
 */
export function quantileOfCounts(counts: ArrayLike<number>, p: number): number {
  let n = 0;
  for (let value = 0; value < counts.length; value++) n += counts[value];
  return exceededByAtMost(counts, allowedMisses(n, p));
}
