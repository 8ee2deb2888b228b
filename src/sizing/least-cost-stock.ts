import { costOf, reducedDays, missesAt } from './reduced-days.js';
import type { ReducedDays } from './reduced-days.js';
import { repairedStock } from './repaired-stock.js';
import type { Peaks } from './peaks.js';
import { LagrangianBounds } from './lagrangian-bounds.js';
import { shrunkBox } from './stock-box.js';
import type { StockBox } from './stock-box.js';

export interface LeastCostOptions {
  /** Parts of the search looked at before it is given up; 5,000 unless said. */
  readonly parts?: number;
}

export interface LeastCostStock {
  /** Pieces by ware. */
  readonly stock: number[];
  /** Σ unit cost × pieces, minor units. */
  readonly cost: number;
  /** Whether no stock that meets the service level is cheaper; false only if the search was given up. */
  readonly proven: boolean;
  /** No stock that meets the service level costs less than this (ware without a price counted as explained below). */
  readonly bound: number;
}

const PARTS = 5000;
/** Rounds of improving the bound: of the whole problem, then of each part, which starts from good prices. */
const ROUNDS = 15;
const ROUNDS_IN_PARTS = 5;

/**
 * The cheapest stock at which at most k of the days run out of anything. Exact branch and bound: the days are
 * reduced to the few that can matter, a first answer is found by repair, lower bounds come from a price on
 * missed days, and what they cannot decide is split at a stock of one ware into "at most" and "more".
 *
 * Ware without a price would be bought without end, so it counts as costing as little as the cheapest ware that
 * has one (as 1 if none has); `cost` adds nothing for it. Of several stocks that cost the same the first found is
 * returned, the same one for the same input; their cost does not depend on the order of ware or days.
 * Prices need not be whole; if any is not, differences below one part in 10⁹ of the total do not count.
 *
 * @param unitCostMinor cost of one piece by ware, minor units, ≥ 0
 * @param k days that may be missed, ≥ 0
 * @throws RangeError for prices that are missing, negative or not finite, or k not a whole number ≥ 0
 */
export function leastCostStock(
  peaks: Peaks,
  unitCostMinor: readonly number[],
  k: number,
  options: LeastCostOptions = {},
): LeastCostStock {
  if (
    unitCostMinor.length !== peaks.ware ||
    !unitCostMinor.every((cost) => Number.isFinite(cost) && cost >= 0)
  ) {
    throw new RangeError(
      `each of ${peaks.ware} ware needs a cost ≥ 0; given ${unitCostMinor.join(', ')}`,
    );
  }
  if (!(Number.isInteger(k) && k >= 0))
    throw new RangeError(`the days that may be missed are a whole number ≥ 0; given ${k}`);
  const cheapest = Math.min(...unitCostMinor.filter((cost) => cost > 0));
  // One kind of list in every search, so that what is compiled for one fits the next.
  const priced = Float64Array.from(
    unitCostMinor,
    (cost) => cost || (cheapest < Infinity ? cheapest : 1),
  );
  const found = new Search(reducedDays(peaks, k), priced, options).run();
  return {
    stock: Array.from(found.stock),
    cost: costOf(unitCostMinor, found.stock),
    proven: found.proven,
    bound: found.bound,
  };
}

class Search {
  readonly #reduced: ReducedDays;
  readonly #unitCost: Float64Array;
  readonly #bounds: LagrangianBounds;
  readonly #step: number;
  #partsLeft: number;
  #best: Int32Array;
  #bestCost: number;
  /** The lowest bound of the parts given up. */
  #open = Infinity;

  constructor(reduced: ReducedDays, unitCost: Float64Array, options: LeastCostOptions) {
    this.#reduced = reduced;
    this.#unitCost = unitCost;
    this.#bounds = new LagrangianBounds(reduced, unitCost);
    this.#partsLeft = options.parts ?? PARTS;
    this.#best = repairedStock(reduced, unitCost, reduced.top);
    this.#bestCost = costOf(unitCost, this.#best);
    this.#step = leastStep(unitCost, costOf(unitCost, reduced.top));
  }

  run(): { stock: Int32Array; proven: boolean; bound: number } {
    const { floor, top } = this.#reduced;
    this.#look(
      { low: floor, high: top },
      costOf(this.#unitCost, floor),
      this.#unitCost[0] ?? 1,
      true,
    );
    const bound = Math.min(this.#bestCost, this.#open);
    return { stock: this.#best, proven: this.#open > this.#limit, bound };
  }

  /** A cheaper stock costs at least one step less, so half a step less is as good a limit and forgives rounding. */
  get #limit(): number {
    return this.#bestCost - this.#step / 2;
  }

  /** Looks through one part of the search, all stocks of which cost at least `bound`. */
  #look(part: Pick<StockBox, 'low' | 'high'>, bound: number, price: number, whole: boolean): void {
    if (bound > this.#limit) return;
    if (this.#partsLeft <= 0) {
      this.#open = Math.min(this.#open, bound);
      return;
    }
    this.#partsLeft--;
    let box = shrunkBox(this.#reduced, this.#unitCost, part, this.#limit);
    let rounds = whole ? ROUNDS : ROUNDS_IN_PARTS;
    for (;;) {
      if (box === null) return;
      if (missesAt(this.#reduced, box.low) <= this.#reduced.k) {
        this.#offer(box.low);
        return;
      }
      const found = this.#bounds.raise(
        box,
        price,
        rounds,
        this.#limit,
        whole ? (stock) => this.#patch(stock) : undefined,
      );
      this.#patch(found.stock);
      bound = Math.max(bound, found.value);
      if (bound > this.#limit) return;
      price = found.price;
      rounds = ROUNDS_IN_PARTS;
      const before = this.#width(box);
      const smaller = shrunkBox(this.#reduced, this.#unitCost, found, this.#limit);
      if (smaller !== null && this.#width(smaller) > 0.7 * before) {
        this.#split(smaller, bound, price, found.stock);
        return;
      }
      box = smaller;
    }
  }

  /** Splits at a stock of the ware that matters most, near where the bound would have it; the likelier side first. */
  #split(box: StockBox, bound: number, price: number, likely: Int32Array): void {
    const { low, high } = box;
    let ware = 0;
    for (let w = 1; w < low.length; w++) {
      if ((high[w] - low[w]) * this.#unitCost[w] > (high[ware] - low[ware]) * this.#unitCost[ware])
        ware = w;
    }
    const wanted = Math.min(Math.max(likely[ware], low[ware]), high[ware]);
    const at = Math.min(Math.floor((wanted + (low[ware] + high[ware]) / 2) / 2), high[ware] - 1);
    const atMost = { low, high: high.with(ware, at) };
    const more = { low: low.with(ware, at + 1), high };
    for (const part of wanted <= at ? [atMost, more] : [more, atMost])
      this.#look(part, bound, price, false);
  }

  #width({ low, high }: StockBox): number {
    return costOf(this.#unitCost, high) - costOf(this.#unitCost, low);
  }

  #patch(stock: Int32Array): number {
    this.#offer(repairedStock(this.#reduced, this.#unitCost, stock));
    return this.#limit;
  }

  #offer(stock: Int32Array): void {
    const cost = costOf(this.#unitCost, stock);
    if (cost >= this.#bestCost) return;
    this.#best = stock.slice();
    this.#bestCost = cost;
  }
}

/** The least amount by which two different costs differ: the common divisor of whole prices. */
function leastStep(unitCost: Float64Array, scale: number): number {
  if (!unitCost.every(Number.isSafeInteger)) return 2e-9 * scale;
  const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
  return unitCost.reduce(divisor, 0);
}
