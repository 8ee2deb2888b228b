/**
 * What a run of days with unlimited ware leaves behind: for each day and ware, the largest number of pieces that
 * was ever off the shelf. As long as no rule looks at the clean count, a stock meets the very same rush until the
 * moment a peak would pass it, so a day is free of shortage exactly when every peak is at most its stock.
 *
 * Row by row in one array of 16-bit numbers (day × ware + ware index), the only part of a study that grows with
 * the number of days.
 */
export interface Peaks {
  readonly days: number;
  readonly ware: number;
  readonly data: Uint16Array;
}

/**
 * The days of all parts, in the order given.
 *
 * @throws RangeError for no parts, or parts with different numbers of ware
 */
export function mergePeaks(parts: readonly Peaks[]): Peaks {
  const first = parts[0];
  if (first === undefined) throw new RangeError('merging peaks needs at least one part');
  if (parts.length === 1) return first;
  const days = parts.reduce((sum, part) => sum + part.days, 0);
  const data = new Uint16Array(days * first.ware);
  let at = 0;
  for (const part of parts) {
    if (part.ware !== first.ware)
      throw new RangeError(`parts have ${first.ware} and ${part.ware} ware`);
    data.set(part.data.subarray(0, part.days * part.ware), at);
    at += part.days * part.ware;
  }
  return { days, ware: first.ware, data };
}

/** The days of the given indices, in that order; a day may come more than once. */
export function selectDays(peaks: Peaks, days: ArrayLike<number>): Peaks {
  const { ware } = peaks;
  const data = new Uint16Array(days.length * ware);
  for (let i = 0; i < days.length; i++) {
    const from = days[i] * ware;
    for (let w = 0; w < ware; w++) data[i * ware + w] = peaks.data[from + w];
  }
  return { days: days.length, ware, data };
}

/** The days from `from` on, `count` of them; shares the memory of the whole. */
export function sliceDays(peaks: Peaks, from: number, count: number): Peaks {
  return {
    days: count,
    ware: peaks.ware,
    data: peaks.data.subarray(from * peaks.ware, (from + count) * peaks.ware),
  };
}

/** How many days had each peak of one ware, from 0 to the largest: as good as sorted, and quicker to make. */
export function peakCounts(peaks: Peaks, ware: number): Uint32Array {
  const { data } = peaks;
  const end = peaks.days * peaks.ware;
  let largest = 0;
  for (let at = ware; at < end; at += peaks.ware) if (data[at] > largest) largest = data[at];
  const counts = new Uint32Array(largest + 1);
  for (let at = ware; at < end; at += peaks.ware) counts[data[at]]++;
  return counts;
}

/** How many days run out of something at the given stock. */
export function countMisses(peaks: Peaks, stock: ArrayLike<number>): number {
  const { ware, data } = peaks;
  const end = peaks.days * ware;
  let misses = 0;
  for (let row = 0; row < end; row += ware) {
    for (let w = 0; w < ware; w++) {
      if (data[row + w] > stock[w]) {
        misses++;
        break;
      }
    }
  }
  return misses;
}
