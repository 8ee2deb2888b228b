import { costOf } from './reduced-days.js';
import type { ReducedDays } from './reduced-days.js';

/**
 * A part of the search: all stocks between `low` and `high`. Days above `high` in some ware are missed by every
 * stock of the box and used up; the others may be missed `left` times.
 */
export interface StockBox {
  readonly low: Int32Array;
  readonly high: Int32Array;
  readonly left: number;
  /** By ware: rows not used up with a peak in low…high, low itself left out, highest first, and those peaks. */
  readonly rows: readonly Int32Array[];
  readonly peaks: readonly Int32Array[];
}

/**
 * Shrinks a box without losing a stock that misses at most k days and costs at most `limit`; null if none is in it.
 * Three arguments repeat until nothing moves: days above `high` use up misses; with fewer misses left the
 * (left+1)-th largest remaining peak of each ware is its new least; and what the least stock leaves of the limit
 * caps each ware.
 */
export function shrunkBox(
  reduced: ReducedDays,
  unitCost: ArrayLike<number>,
  from: Pick<StockBox, 'low' | 'high'>,
  limit: number,
): StockBox | null {
  const { ware, peak, weight, byPeak } = reduced;
  const low = from.low.slice();
  const high = from.high.slice();
  const usedUp = new Uint8Array(reduced.rows);
  let left = reduced.k;
  for (let moved = true; moved;) {
    moved = false;
    for (let w = 0; w < ware; w++) {
      for (const row of byPeak[w]) {
        if (peak[row * ware + w] <= high[w]) break;
        if (usedUp[row] === 0) left -= weight[row];
        usedUp[row] = 1;
      }
    }
    if (left < 0) return null;
    for (let w = 0; w < ware; w++) low[w] = Math.max(low[w], leastPeak(reduced, w, usedUp, left));
    const room = limit - costOf(unitCost, low);
    if (room < 0) return null;
    for (let w = 0; w < ware; w++) {
      const cap = low[w] + Math.floor(room / unitCost[w]);
      if (cap < high[w]) {
        high[w] = cap;
        moved = true;
      }
      if (low[w] > high[w]) return null;
    }
  }
  const rows: Int32Array[] = [];
  const peaks: Int32Array[] = [];
  for (let w = 0; w < ware; w++) {
    const all = byPeak[w];
    const some = new Int32Array(all.length);
    const theirs = new Int32Array(all.length);
    let count = 0;
    for (let i = 0; i < all.length; i++) {
      const value = peak[all[i] * ware + w];
      // The highest come first.
      if (value <= low[w]) break;
      if (usedUp[all[i]] !== 0) continue;
      some[count] = all[i];
      theirs[count++] = value;
    }
    rows.push(some.subarray(0, count));
    peaks.push(theirs.subarray(0, count));
  }
  return { low, high, left, rows, peaks };
}

/** The (left+1)-th largest peak of a ware among the days not used up; the floor if there are fewer. */
function leastPeak(reduced: ReducedDays, w: number, usedUp: Uint8Array, left: number): number {
  let seen = 0;
  for (const row of reduced.byPeak[w]) {
    if (usedUp[row] === 0) seen += reduced.weight[row];
    if (seen > left) return reduced.peak[row * reduced.ware + w];
  }
  return reduced.floor[w];
}
