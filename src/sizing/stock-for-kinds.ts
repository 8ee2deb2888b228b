/** The cheapest stock for several kinds of day at once: on each, no more days are missed than that kind may miss. */
import { exceededByAtMost } from '../statistics/quantile-of-counts.js';
import { leastCostStock, type LeastCostOptions, type LeastCostStock } from './least-cost-stock.js';
import { countMisses, peakCounts, selectDays, type Peaks } from './peaks.js';
import { costOf } from './reduced-days.js';

/** Days of one kind, and how many of them may run out of something. */
export interface KindOfDays {
  readonly peaks: Peaks;
  readonly misses: number;
}

/** Pieces by which a ware is raised to see whether others can then be lowered for more. */
const RAISES = [1, 2, 4];

/**
 * One kind is searched exactly. With several, no stock costs less than the dearest of those that each kind needs by itself; where
 * that one carries the others too, as it mostly does, it is proven the cheapest. Otherwise the search begins at
 * the most of each ware that any kind needs, which carries all; each ware, the dearest first, is lowered as far as every
 * kind allows, and then each is raised a little to see whether the others can be lowered for more than that costs. That is
 * not proven cheapest: `bound` says how much less another might cost.
 *
 * @param unitCostMinor cost of one piece by ware, minor units, ≥ 0
 * @throws RangeError as `leastCostStock` does, or for no kinds
 */
export function stockForKinds(
  kinds: readonly KindOfDays[],
  unitCostMinor: readonly number[],
  options: LeastCostOptions = {},
): LeastCostStock {
  const alone = kinds.map(({ peaks, misses }) =>
    leastCostStock(peaks, unitCostMinor, misses, options),
  );
  const [first] = alone;
  if (first === undefined) throw new RangeError('a stock needs a kind of day');
  if (alone.length === 1) return first;
  const bound = Math.max(...alone.map((one) => one.bound));
  const carriesAll = alone.find(({ stock }) =>
    kinds.every(({ peaks, misses }) => countMisses(peaks, stock) <= misses),
  );
  if (carriesAll !== undefined) return { ...carriesAll, bound };
  const most = first.stock.map((_, ware) => Math.max(...alone.map(({ stock }) => stock[ware])));
  const stock = descended(most, unitCostMinor, kinds.map(deciding(unitCostMinor.length, kinds)));
  return { stock, cost: costOf(unitCostMinor, stock), proven: false, bound };
}

/** Without the days that no stock worth trying would miss: those with no peak above the least that some kind needs of each ware. */
function deciding(
  wares: number,
  kinds: readonly KindOfDays[],
): (kind: KindOfDays) => KindOfDays & { readonly floor: readonly number[] } {
  const floor = Array.from({ length: wares }, (_, ware) =>
    Math.max(
      ...kinds.map(({ peaks, misses }) => exceededByAtMost(peakCounts(peaks, ware), misses)),
    ),
  );
  return ({ peaks, misses }) => {
    const days: number[] = [];
    for (let day = 0; day < peaks.days; day++)
      if (floor.some((least, ware) => peaks.data[day * wares + ware] > least)) days.push(day);
    return { peaks: selectDays(peaks, days), misses, floor };
  };
}

function descended(
  start: readonly number[],
  unitCostMinor: readonly number[],
  kinds: readonly (KindOfDays & { readonly floor: readonly number[] })[],
): number[] {
  const { floor } = kinds[0];
  const cheapest = Math.min(...unitCostMinor.filter((cost) => cost > 0));
  // Ware without a price counts as little, so that it is not bought without end.
  const priced = unitCostMinor.map((cost) => cost || (cheapest < Infinity ? cheapest : 1));
  const order = priced.map((_, ware) => ware).sort((a, b) => priced[b] - priced[a]);
  const carries = (stock: readonly number[]): boolean =>
    kinds.every(({ peaks, misses }) => countMisses(peaks, stock) <= misses);
  /** The least of a ware at which all kinds are carried, the others as they are. */
  const lowered = (from: readonly number[], kept: number | null): number[] => {
    const stock = [...from];
    for (const ware of order) {
      if (ware === kept) continue;
      let [least, enough] = [floor[ware], stock[ware]];
      while (least < enough) {
        const middle = Math.floor((least + enough) / 2);
        if (carries(stock.with(ware, middle))) enough = middle;
        else least = middle + 1;
      }
      stock[ware] = enough;
    }
    return stock;
  };
  let stock = lowered(start, null);
  for (let better = true; better;) {
    better = false;
    for (const ware of order)
      for (const raise of RAISES) {
        const other = lowered(stock.with(ware, stock[ware] + raise), ware);
        if (costOf(priced, other) < costOf(priced, stock)) [stock, better] = [other, true];
      }
  }
  return stock;
}
