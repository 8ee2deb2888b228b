import { sampleRankCorrelation } from 'simple-statistics';
import { atanh, tanh } from '../elementary/hyperbolic.js';
import { square } from '../elementary/powers.js';
import { studentTQuantile } from './student-t-quantile.js';

/** Spearman's rank correlation; null where a side never varies, and no ends below four pairs. */
export interface RankCorrelation {
  readonly correlation: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly confidence: number;
}

/**
 * Spearman's rank correlation of paired values, ties sharing their mean rank, with an interval on Fisher's
 * scale: atanh r has variance near (1 + r²/2)/(n − 3) (Bonett & Wright, Psychometrika 65, 2000). The critical
 * value is Student's, n − 3 degrees, rather than the normal one: a little wider for few pairs, the same for many.
 *
 * @throws RangeError for unequal numbers of values
 */
export function rankCorrelation(
  x: readonly number[],
  y: readonly number[],
  confidence = 0.95,
): RankCorrelation {
  if (x.length !== y.length)
    throw new RangeError(`pairs need equal numbers of values; given ${x.length} and ${y.length}`);
  const found = x.length < 2 ? Number.NaN : sampleRankCorrelation([...x], [...y]);
  if (!Number.isFinite(found)) return { correlation: null, low: null, high: null, confidence };
  const correlation = Math.max(-1, Math.min(1, found));
  if (x.length < 4) return { correlation, low: null, high: null, confidence };
  const reach =
    studentTQuantile((1 + confidence) / 2, x.length - 3) *
    Math.sqrt((1 + square(correlation) / 2) / (x.length - 3));
  const centre = atanh(correlation);
  return {
    correlation,
    low: tanh(centre - reach),
    high: tanh(centre + reach),
    confidence,
  };
}
