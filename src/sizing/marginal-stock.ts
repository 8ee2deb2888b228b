import { quantileIntervalRanks } from '../statistics/quantile-interval-ranks.js';
import { exceededByAtMost, quantileOfCounts } from '../statistics/quantile-of-counts.js';
import { peakCounts } from './peaks.js';
import type { Peaks } from './peaks.js';

/** What one ware would need if running out of the others did not matter. */
export interface MarginalStock {
  /** The least stock that at most ⌊n(1 − level) + 10⁻⁹⌋ of the days exceed. */
  readonly pieces: number;
  /** Distribution-free interval of the quantile; null where so few days give it no end. */
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * The plain quantile of each ware's peaks with its distribution-free interval: the ends are the peaks of the ranks
 * that bound a quantile at the level.
 *
 * @param level a share strictly between 0 and 1
 * @throws RangeError for no days or a level outside
 */
export function marginalStock(peaks: Peaks, level: number, confidence = 0.95): MarginalStock[] {
  const { days } = peaks;
  const { lower, upper } = quantileIntervalRanks(days, level, confidence);
  return Array.from({ length: peaks.ware }, (_, ware) => {
    const counts = peakCounts(peaks, ware);
    const ofRank = (rank: number | null) =>
      rank === null ? null : exceededByAtMost(counts, days - rank);
    return { pieces: quantileOfCounts(counts, level), low: ofRank(lower), high: ofRank(upper) };
  });
}

/** By ware: of the kind of day that needs most of it. */
export const mostNeeded = (kinds: readonly (readonly MarginalStock[])[]): MarginalStock[] =>
  kinds[0].map((_, ware) =>
    kinds.map((each) => each[ware]).reduce((most, one) => (one.pieces > most.pieces ? one : most)),
  );
