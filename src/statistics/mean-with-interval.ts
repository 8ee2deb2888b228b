import { mean, sampleVariance } from 'simple-statistics';
import { studentTQuantile } from './student-t-quantile.js';

/** A mean with its Student t interval; the ends are null where fewer than two values were seen. */
export interface MeanInterval {
  readonly count: number;
  readonly mean: number;
  readonly standardError: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly confidence: number;
}

/**
 * The mean of independent values with its interval by Student's t.
 *
 * @throws RangeError for no values at all
 */
export function meanWithInterval(values: readonly number[], confidence = 0.95): MeanInterval {
  if (values.length === 0) throw new RangeError('a mean needs at least one value');
  const variance = values.length < 2 ? null : sampleVariance([...values]);
  return intervalOfMean(values.length, mean([...values]), variance, confidence);
}

/** The same from the count, the mean and the sample variance (null below two values). */
export function intervalOfMean(
  count: number,
  centre: number,
  variance: number | null,
  confidence = 0.95,
): MeanInterval {
  if (variance === null || count < 2) {
    return { count, mean: centre, standardError: null, low: null, high: null, confidence };
  }
  const standardError = Math.sqrt(variance / count);
  const reach = studentTQuantile((1 + confidence) / 2, count - 1) * standardError;
  return {
    count,
    mean: centre,
    standardError,
    low: centre - reach,
    high: centre + reach,
    confidence,
  };
}
