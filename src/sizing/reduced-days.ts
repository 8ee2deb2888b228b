import { exceededByAtMost } from '../statistics/quantile-of-counts.js';
import { peakCounts } from './peaks.js';
import type { Peaks } from './peaks.js';

/**
 * What is left of a least-cost problem once everything that cannot matter is gone. If at most k days may be
 * missed, no ware can do with less than its (k+1)-th largest peak: that is its floor, a day with no peak above
 * the floors can never be missed, and a peak at or below the floor asks for nothing. Days alike in what is left
 * are one row with a weight. Of 4,000 days and 20 ware a few hundred rows remain.
 */
export interface ReducedDays {
  readonly ware: number;
  /** Days that may be missed. */
  readonly k: number;
  /** By ware: no stock that misses at most k days is below the floors or need be above the tops. */
  readonly floor: Int32Array;
  readonly top: Int32Array;
  readonly rows: number;
  /** By row: how many days it stands for. */
  readonly weight: Int32Array;
  /** Row × ware: the peak, raised to the floor. */
  readonly peak: Int32Array;
  /** By ware: the rows that pass the floor, highest peak first. */
  readonly byPeak: readonly Int32Array[];
}

/** Reduces the days to those that decide which stock is cheapest while at most k days are missed. */
export function reducedDays(peaks: Peaks, k: number): ReducedDays {
  const { ware, data } = peaks;
  const floor = new Int32Array(ware);
  const top = new Int32Array(ware);
  for (let w = 0; w < ware; w++) {
    const counts = peakCounts(peaks, w);
    floor[w] = exceededByAtMost(counts, k);
    top[w] = k >= peaks.days ? 0 : counts.length - 1;
  }

  const rowOf = new Map<string, number>();
  const weight: number[] = [];
  const peak: number[] = [];
  const raised = Array.from({ length: ware }, () => 0);
  for (let day = 0; day < peaks.days && k < peaks.days; day++) {
    let matters = false;
    for (let w = 0, at = day * ware; w < ware; w++, at++) {
      matters ||= data[at] > floor[w];
      raised[w] = Math.max(data[at], floor[w]);
    }
    if (!matters) continue;
    // A peak has 16 bits, so a row is a string of one character a ware.
    const key = String.fromCharCode(...raised);
    const known = rowOf.get(key);
    if (known === undefined) {
      rowOf.set(key, weight.length);
      weight.push(1);
      for (const value of raised) peak.push(value);
    } else {
      weight[known]++;
    }
  }

  const byPeak = Array.from({ length: ware }, (_, w) => {
    const above: number[] = [];
    for (let row = 0; row < weight.length; row++)
      if (peak[row * ware + w] > floor[w]) above.push(row);
    return Int32Array.from(above.sort((a, b) => peak[b * ware + w] - peak[a * ware + w] || a - b));
  });
  return {
    ware,
    k,
    floor,
    top,
    rows: weight.length,
    weight: Int32Array.from(weight),
    peak: Int32Array.from(peak),
    byPeak,
  };
}

/** Whether a row's day runs out of something at a stock. */
export function runsOut(reduced: ReducedDays, row: number, stock: ArrayLike<number>): boolean {
  const { ware, peak } = reduced;
  for (let w = 0, at = row * ware; w < ware; w++, at++) if (peak[at] > stock[w]) return true;
  return false;
}

/** How many days run out of something at a stock that is not below the floors. */
export function missesAt(reduced: ReducedDays, stock: ArrayLike<number>): number {
  let misses = 0;
  for (let row = 0; row < reduced.rows; row++)
    if (runsOut(reduced, row, stock)) misses += reduced.weight[row];
  return misses;
}

/** Σ unit cost × pieces. */
export function costOf(unitCost: ArrayLike<number>, stock: ArrayLike<number>): number {
  let cost = 0;
  for (let w = 0; w < stock.length; w++) cost += unitCost[w] * stock[w];
  return cost;
}
