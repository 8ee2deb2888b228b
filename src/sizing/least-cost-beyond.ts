import type { LeastCostOptions, LeastCostStock } from './least-cost-stock.js';
import type { Peaks } from './peaks.js';
import { stockForKinds, type KindOfDays } from './stock-for-kinds.js';

/** What days need beyond pieces that are there already. */
export function peaksBeyond(peaks: Peaks, owned: readonly number[]): Peaks {
  if (owned.every((pieces) => pieces === 0)) return peaks;
  const data = new Uint16Array(peaks.days * peaks.ware);
  for (let cell = 0; cell < data.length; cell++)
    data[cell] = Math.max(0, peaks.data[cell] - owned[cell % peaks.ware]);
  return { days: peaks.days, ware: peaks.ware, data };
}

/**
 * The stock with least money still to spend: never below what is owned, which costs nothing. A day is free of
 * shortage exactly when no ware needs more beyond what is owned than is bought, so the search is the same.
 *
 * @param owned pieces by ware that are there already
 * @returns the whole stock; `cost` and `bound` are of what is bought
 */
export function leastCostBeyond(
  kinds: readonly KindOfDays[],
  unitCostMinor: readonly number[],
  owned: readonly number[],
  options: LeastCostOptions = {},
): LeastCostStock {
  const beyond = kinds.map(({ peaks, misses }) => ({ peaks: peaksBeyond(peaks, owned), misses }));
  const found = stockForKinds(beyond, unitCostMinor, options);
  return { ...found, stock: found.stock.map((pieces, w) => pieces + owned[w]) };
}
