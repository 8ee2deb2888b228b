import type { ExcessDays } from './excess-days.js';
import type { StockBox } from './stock-box.js';

/** Bisection of the price stops at this relative width; a better price would hardly raise the bound. */
const PRICE_WIDTH = 1e-3;
/** No share falls to nothing, or it could not grow back in another part of the search. */
const LEAST_SHARE = 1e-3;

/** The best bound found, and what it says about where a cheaper stock can lie. */
export interface PriceBound {
  /** No stock of the box that keeps the promise costs less. */
  readonly value: number;
  readonly price: number;
  /** The stock at which the bound is taken; it may miss more days than allowed, usually few. */
  readonly stock: Int32Array;
  /** Every stock of the box that keeps the promise and costs at most the limit lies between these. */
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/**
 * Lower bounds of the cost by putting a price on missed days (Lagrangian relaxation: Geoffrion, Mathematical
 * Programming Study 2, 1974; Fisher, Management Science 27, 1981).
 *
 * Let every missed day cost `price` and give back `left` prices for the misses that are allowed: a stock that
 * keeps the promise then costs no more than before. Let each day's price be shared out among the ware that it may
 * run out of, and let a ware that runs out pay its share only: cheaper again, and now each ware decides alone,
 * by one walk down its peaks. So the sum of what the ware decide is a lower bound, whatever the price and the
 * shares. The price is set by bisection; a day's shares move towards the ware that does run out.
 */
export class PriceBounds {
  readonly #excess: ExcessDays;
  readonly #unitCost: ArrayLike<number>;
  /** Row × ware. Kept from one part of the search to the next: good shares here are good shares there. */
  readonly #share: Float64Array;
  /** Of the last evaluation, by ware: the stock chosen and its cost with penalties. */
  readonly #stock: Int32Array;
  readonly #least: Float64Array;

  constructor(excess: ExcessDays, unitCost: ArrayLike<number>) {
    this.#excess = excess;
    this.#unitCost = unitCost;
    this.#share = new Float64Array(excess.rows * excess.ware).fill(1);
    this.#stock = new Int32Array(excess.ware);
    this.#least = new Float64Array(excess.ware);
  }

  /**
   * Raises the bound of a box for some rounds of price and shares, or until it passes the limit.
   *
   * @param price where to start
   * @param inspect called with the stock of every fifth round, to be patched into an answer; returns the limit then
   */
  raise(box: StockBox, price: number, rounds: number, limit: number, inspect?: (stock: Int32Array) => number): PriceBound {
    const contested = this.#contestedRows(box);
    let best = { value: -Infinity, price, stock: box.low };
    const low = box.low.slice();
    const high = box.high.slice();
    for (let round = 0; round < rounds && best.value <= limit; round++) {
      const wide = round === 0 ? 2 : 1.1;
      const found = this.#bestPrice(box, best.price, wide);
      if (found.value > best.value) best = { ...found, stock: this.#stock.slice() };
      this.#cut(box, found, limit, low, high);
      if (inspect !== undefined && round % 5 === 0) limit = inspect(this.#stock);
      this.#moveShares(contested, 1 + 2 / (1 + round / 3));
    }
    return { ...best, low, high };
  }

  /** For each day that may run out of several ware: where the shares of those lie. Scales them to sum to one. */
  #contestedRows(box: StockBox): number[][] {
    const { ware } = this.#excess;
    const entries: number[][] = Array.from({ length: this.#excess.rows }, () => []);
    box.rows.forEach((rows, w) => rows.forEach((row) => entries[row].push(row * ware + w)));
    entries.forEach((at) => this.#scale(at));
    return entries.filter((at) => at.length > 1);
  }

  #scale(entries: readonly number[]): void {
    let sum = 0;
    for (const at of entries) sum += this.#share[at] = Math.max(this.#share[at], LEAST_SHARE);
    for (const at of entries) this.#share[at] /= sum;
  }

  /** The price at which the bound is highest for the present shares, and the bound; leaves its stock behind. */
  #bestPrice(box: StockBox, start: number, wide: number): { value: number; price: number } {
    let below = 0;
    let above = Infinity;
    let price = start;
    let best = { value: -Infinity, price };
    for (let step = 0; step < 200; step++) {
      const { value, slope } = this.#evaluate(box, price);
      if (value > best.value) best = { value, price };
      if (slope === 0) break;
      if (slope > 0) below = price;
      else above = price;
      if (above - below < PRICE_WIDTH * above) break;
      if (above === Infinity) price *= wide;
      else price = below === 0 ? price / wide : (below + above) / 2;
      if (price < 1e-9 * start) break;
    }
    this.#evaluate(box, best.price);
    return best;
  }

  /** The bound at a price, and how fast it rises with the price. */
  #evaluate(box: StockBox, price: number): { value: number; slope: number } {
    let value = -price * box.left;
    let slope = -box.left;
    for (let w = 0; w < box.rows.length; w++) {
      let least = Infinity;
      let penalties = 0;
      this.#walkDown(box, w, (level, shares) => {
        const cost = this.#unitCost[w] * level + price * shares;
        if (cost < least) {
          least = cost;
          penalties = shares;
          this.#stock[w] = level;
        }
      });
      this.#least[w] = least;
      value += least;
      slope += penalties;
    }
    return { value, slope };
  }

  /** Visits every stock of one ware worth considering, from the highest, with the shares it has to pay. */
  #walkDown(box: StockBox, w: number, visit: (level: number, shares: number) => void): void {
    const rows = box.rows[w];
    const peaks = box.peaks[w];
    const { ware, weight } = this.#excess;
    let shares = 0;
    for (let i = 0; i < rows.length; ) {
      const level = peaks[i];
      visit(level, shares);
      for (; i < rows.length && peaks[i] === level; i++) shares += weight[rows[i]] * this.#share[rows[i] * ware + w];
    }
    visit(box.low[w], shares);
  }

  /** Narrows low…high to the stocks of each ware with which the bound, the others free, stays within the limit. */
  #cut(box: StockBox, { value, price }: { value: number; price: number }, limit: number, low: Int32Array, high: Int32Array): void {
    for (let w = 0; w < box.rows.length; w++) {
      const others = value - this.#least[w];
      let highest = -1;
      let lowest = Infinity;
      this.#walkDown(box, w, (level, shares) => {
        if (others + this.#unitCost[w] * level + price * shares > limit) return;
        highest = Math.max(highest, level);
        lowest = level;
      });
      low[w] = Math.max(low[w], Math.min(lowest, box.high[w] + 1));
      high[w] = Math.min(high[w], highest);
    }
  }

  #moveShares(contested: readonly (readonly number[])[], growth: number): void {
    const { ware, peak } = this.#excess;
    for (const entries of contested) {
      const short = entries.filter((at) => peak[at] > this.#stock[at % ware]);
      if (short.length === 0 || short.length === entries.length) continue;
      for (const at of short) this.#share[at] *= growth;
      this.#scale(entries);
    }
  }
}
