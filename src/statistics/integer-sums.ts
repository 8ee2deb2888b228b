import { intervalOfMean } from './mean-with-interval.js';
import type { MeanInterval } from './mean-with-interval.js';

/**
 * Count, sum and sum of squares of whole numbers. Kept as exact integers, so that the sums of any parts of the
 * days, merged in any order, are the sums of the whole to the last digit; floating-point sums are not.
 * The squares need more than 53 bits (a day's waits in milliseconds pass 10¹⁵ squared), hence bigint.
 */
export interface IntegerSums {
  readonly count: number;
  readonly sum: bigint;
  readonly squares: bigint;
}

/** The sums of nothing: what merging starts from. */
export const NO_SUMS: IntegerSums = { count: 0, sum: 0n, squares: 0n };

/**
 * The sums of the given whole numbers.
 *
 * @throws RangeError for a number that is not a safe integer
 */
export function integerSums(values: ArrayLike<number>): IntegerSums {
  let sum = 0n;
  let squares = 0n;
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (!Number.isSafeInteger(value))
      throw new RangeError(`exact sums take whole numbers below 2⁵³; given ${value}`);
    const whole = BigInt(value as number);
    sum += whole;
    squares += whole * whole;
  }
  return { count: values.length, sum, squares };
}

/** The sums of two parts together. */
export function mergeSums(first: IntegerSums, second: IntegerSums): IntegerSums {
  return {
    count: first.count + second.count,
    sum: first.sum + second.sum,
    squares: first.squares + second.squares,
  };
}

/**
 * The mean and its Student t interval. Numerator and denominator are exact; only the final divisions round.
 *
 * @throws RangeError for no values
 */
export function meanOfSums(sums: IntegerSums, confidence = 0.95): MeanInterval {
  if (sums.count === 0) throw new RangeError('a mean needs at least one value');
  const count = BigInt(sums.count);
  const spread = count * sums.squares - sums.sum * sums.sum;
  const variance = sums.count < 2 ? null : Number(spread) / (sums.count * (sums.count - 1));
  return intervalOfMean(sums.count, Number(sums.sum) / sums.count, variance, confidence);
}
