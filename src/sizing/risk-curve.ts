import { exactBinomialInterval } from '../statistics/exact-binomial-interval.js';
import type { ShareInterval } from '../statistics/exact-binomial-interval.js';
import { countMisses } from './peaks.js';
import type { Peaks } from './peaks.js';

/** The chance that anything at all runs out in a rush, at one stock. */
export interface RiskPoint {
  /** Pieces by ware. */
  readonly stock: readonly number[];
  /** Days that ran out of something, with the exact interval of their share. */
  readonly risk: ShareInterval;
}

/** The chance of running out along a path of stocks, each met by all the days. */
export function riskCurve(
  peaks: Peaks,
  path: readonly (readonly number[])[],
  confidence = 0.95,
): RiskPoint[] {
  return path.map((stock) => ({
    stock,
    risk: exactBinomialInterval(countMisses(peaks, stock), peaks.days, confidence),
  }));
}

/**
 * The stocks with all ware scaled together, rounded to whole pieces, in steps of one hundredth of the chosen stock:
 * from the scale at which the quietest day has just enough to the one at which the busiest has. The chosen stock
 * itself (scale 1) is always on the path; steps that round to the same stock are one point.
 */
export function scaledPathOf(peaks: Peaks, stock: readonly number[]): number[][] {
  let least = 1;
  let most = 1;
  for (let day = 0; day < peaks.days; day++) {
    let scale = 0;
    stock.forEach((pieces, w) => {
      if (pieces > 0) scale = Math.max(scale, peaks.data[day * peaks.ware + w] / pieces);
    });
    least = Math.min(least, scale);
    most = Math.max(most, scale);
  }
  const path = new Map<string, number[]>();
  for (
    let hundredths = Math.floor(least * 100);
    hundredths <= Math.ceil(most * 100);
    hundredths++
  ) {
    const scaled = stock.map((pieces) => Math.round((pieces * hundredths) / 100));
    path.set(scaled.join(), scaled);
  }
  return [...path.values()];
}
