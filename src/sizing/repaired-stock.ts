import { runsOut } from './reduced-days.js';
import type { ReducedDays } from './reduced-days.js';

/**
 * Turns any stock not below the floors into one that misses at most k days and cannot be lowered in any one ware:
 * first it is raised for one missed day after another, the cheapest to save first; then whatever misses are left
 * over are spent where lowering saves most a day. A good first answer for the exact search, nothing more.
 */
export function repairedStock(
  reduced: ReducedDays,
  unitCost: ArrayLike<number>,
  start: Int32Array,
): Int32Array {
  const stock = start.slice();
  const missed = raise(reduced, unitCost, stock);
  lower(reduced, unitCost, stock, missed);
  return stock;
}

/** Raises the stock in place until at most k days are missed; returns the rows still missed. */
function raise(reduced: ReducedDays, unitCost: ArrayLike<number>, stock: Int32Array): number[] {
  const { ware, k, peak, weight } = reduced;
  let missed: number[] = [];
  for (let row = 0; row < reduced.rows; row++) if (runsOut(reduced, row, stock)) missed.push(row);
  while (total(missed, weight) > k) {
    let cheapest = -1;
    let least = Infinity;
    for (const row of missed) {
      let price = 0;
      for (let w = 0; w < ware; w++) {
        const short = peak[row * ware + w] - stock[w];
        if (short > 0) price += unitCost[w] * short;
      }
      if (price / weight[row] < least) {
        least = price / weight[row];
        cheapest = row;
      }
    }
    for (let w = 0; w < ware; w++) stock[w] = Math.max(stock[w], peak[cheapest * ware + w]);
    missed = missed.filter((row) => runsOut(reduced, row, stock));
  }
  return missed;
}

/** Lowers the stock in place, ware by ware as far as the misses left allow, the best bargain first. */
function lower(
  reduced: ReducedDays,
  unitCost: ArrayLike<number>,
  stock: Int32Array,
  missed: readonly number[],
): void {
  const { ware, k, peak, weight, byPeak } = reduced;
  const isMissed = new Uint8Array(reduced.rows);
  for (const row of missed) isMissed[row] = 1;
  let left = k - total(missed, weight);
  for (;;) {
    let best = { ware: -1, level: 0, extra: 0, bargain: 0 };
    for (let w = 0; w < ware; w++) {
      const { level, extra } = lowest(reduced, w, stock[w], isMissed, left);
      const bargain = (unitCost[w] * (stock[w] - level)) / (1 + extra);
      if (bargain > best.bargain) best = { ware: w, level, extra, bargain };
    }
    if (best.ware < 0) return;
    stock[best.ware] = best.level;
    left -= best.extra;
    for (const row of byPeak[best.ware]) {
      if (peak[row * ware + best.ware] <= best.level) break;
      isMissed[row] = 1;
    }
  }
}

/** How far one ware can be lowered before more than `left` further days are missed. */
function lowest(
  reduced: ReducedDays,
  w: number,
  from: number,
  isMissed: Uint8Array,
  left: number,
): { level: number; extra: number } {
  const { ware, peak, weight, floor } = reduced;
  let extra = 0;
  let allowed = 0;
  let level = from;
  for (const row of reduced.byPeak[w]) {
    const value = peak[row * ware + w];
    if (value > from) continue;
    if (value < level) {
      level = value;
      allowed = extra;
    }
    if (isMissed[row] === 0) extra += weight[row];
    if (extra > left) return { level, extra: allowed };
  }
  return { level: floor[w], extra };
}

function total(rows: readonly number[], weight: Int32Array): number {
  let sum = 0;
  for (const row of rows) sum += weight[row];
  return sum;
}
