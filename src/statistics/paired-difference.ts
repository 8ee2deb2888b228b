import { sampleVariance } from 'simple-statistics';
import { meanWithInterval } from './mean-with-interval.js';
import type { MeanInterval } from './mean-with-interval.js';

/** The mean of second − first over days that both alternatives met. */
export interface PairedDifference extends MeanInterval {
  /**
   * How many times fewer days the comparison needs because both alternatives met the same guests:
   * (variance of first + variance of second) / variance of the difference. Null where the difference never
   * varies or there are fewer than two pairs.
   */
  readonly varianceReduction: number | null;
}

/**
 * Compares two alternatives that met the same days, day by day (Law, Simulation Modeling and Analysis: the
 * paired-t interval under common random numbers).
 *
 * @param first one value a day
 * @param second the other alternative's value on the same days, in the same order
 * @throws RangeError for no days or unequal numbers of them
 */
export function pairedDifference(
  first: readonly number[],
  second: readonly number[],
  confidence = 0.95,
): PairedDifference {
  if (first.length !== second.length) {
    throw new RangeError(
      `pairs need equal numbers of values; given ${first.length} and ${second.length}`,
    );
  }
  const differences = first.map((value, day) => (second[day] ?? value) - value);
  const interval = meanWithInterval(differences, confidence);
  if (differences.length < 2) return { ...interval, varianceReduction: null };
  const shared = sampleVariance(differences);
  const apart = sampleVariance([...first]) + sampleVariance([...second]);
  return { ...interval, varianceReduction: shared === 0 ? null : apart / shared };
}
