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
  const { ware } = peaks;
  const floor = new Int32Array(ware);
  const top = new Int32Array(ware);
  for (let w = 0; w < ware; w++) {
    const counts = peakCounts(peaks, w);
    floor[w] = exceededByAtMost(counts, k);
    top[w] = k >= peaks.days ? 0 : counts.length - 1;
  }

  const { rows, weight, peak } = alike(peaks, floor, k < peaks.days ? mattering(peaks, floor) : []);
  return {
    ware,
    k,
    floor,
    top,
    rows,
    weight,
    peak,
    byPeak: Array.from(floor, (least, w) => highestFirst(peak, rows, ware, w, least, top[w])),
  };
}

/** The days that pass the floor of some ware. */
function mattering({ days, ware, data }: Peaks, floor: Int32Array): ArrayLike<number> {
  const found = new Int32Array(days);
  let count = 0;
  for (let day = 0, row = 0; day < days; day++, row += ware) {
    let w = 0;
    while (w < ware && data[row + w] <= floor[w]) w++;
    if (w < ware) found[count++] = day;
  }
  return found.subarray(0, count);
}

/**
 * Days with the same peaks, raised to the floors, are one row; rows in the order of their first days. A table by a
 * hash of the peaks, as this is most of what a resampling or cross-validation does.
 */
function alike(
  { ware, data }: Peaks,
  floor: Int32Array,
  days: ArrayLike<number>,
): Pick<ReducedDays, 'rows' | 'weight' | 'peak'> {
  const weight = new Int32Array(days.length);
  const peak = new Int32Array(days.length * ware);
  let slots = 16;
  while (slots < 2 * days.length) slots *= 2;
  /** Row + 1; 0 where the slot is free. */
  const table = new Int32Array(slots);
  let rows = 0;
  for (let i = 0; i < days.length; i++) {
    const from = days[i] * ware;
    const to = rows * ware;
    let hash = 0;
    for (let w = 0; w < ware; w++) {
      const value = Math.max(data[from + w], floor[w]);
      peak[to + w] = value;
      hash = Math.imul(hash ^ value, 0x9e3779b1);
      hash ^= hash >>> 15;
    }
    let slot = hash & (slots - 1);
    while (table[slot] !== 0 && !same(peak, ware, table[slot] - 1, rows))
      slot = (slot + 1) & (slots - 1);
    if (table[slot] === 0) table[slot] = ++rows;
    weight[table[slot] - 1]++;
  }
  return { rows, weight: weight.slice(0, rows), peak: peak.slice(0, rows * ware) };
}

function same(peak: Int32Array, ware: number, one: number, other: number): boolean {
  for (let w = 0; w < ware; w++) if (peak[one * ware + w] !== peak[other * ware + w]) return false;
  return true;
}

/** The rows that pass the floor of a ware, highest peak first, rows alike in their order: sorted by counting. */
function highestFirst(
  peak: Int32Array,
  rows: number,
  ware: number,
  w: number,
  floor: number,
  top: number,
): Int32Array {
  /** By how far a peak lies below the top: how many lie nearer to it, then where the next one goes. */
  const next = new Int32Array(top - floor + 1);
  for (let row = 0, at = w; row < rows; row++, at += ware)
    if (peak[at] > floor) next[top - peak[at] + 1]++;
  for (let below = 1; below < next.length; below++) next[below] += next[below - 1];
  const sorted = new Int32Array(next[top - floor]);
  for (let row = 0, at = w; row < rows; row++, at += ware)
    if (peak[at] > floor) sorted[next[top - peak[at]]++] = row;
  return sorted;
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
