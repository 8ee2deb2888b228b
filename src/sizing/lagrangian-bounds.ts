import type { ReducedDays } from './reduced-days.js';
import type { StockBox } from './stock-box.js';

/** Bisection of the price stops at this relative width; a better price would hardly raise the bound. */
const PRICE_WIDTH = 1e-3;
/** No share falls to nothing, or it could not grow back in another part of the search. */
const LEAST_SHARE = 1e-3;

/** The best bound found, and what it says about where a cheaper stock can lie. */
export interface LagrangianBound {
  /** No stock of the box that meets the service level costs less. */
  readonly value: number;
  readonly price: number;
  /** The stock at which the bound is taken; it may miss more days than allowed, usually few. */
  readonly stock: Int32Array;
  /** Every stock of the box that meets the service level and costs at most the limit lies between these. */
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/**
 * Lower bounds of the cost by putting a price on missed days (Lagrangian relaxation: Geoffrion, Mathematical
 * Programming Study 2, 1974; Fisher, Management Science 27, 1981).
 *
 * Let every missed day cost `price` and give back `left` prices for the misses that are allowed: a stock that
 * meets the service level then costs no more than before. Let each day's price be shared out among the ware that it may
 * run out of, and let a ware that runs out pay its share only: cheaper again, and now each ware decides alone,
 * by one walk down its peaks. So the sum of what the ware decide is a lower bound, whatever the price and the
 * shares. The price is set by bisection; a day's shares move towards the ware that does run out.
 */
export class LagrangianBounds {
  readonly #reduced: ReducedDays;
  readonly #unitCost: ArrayLike<number>;
  /** Row × ware. Kept from one part of the search to the next: good shares here are good shares there. */
  readonly #share: Float64Array;
  /** Of the last evaluation, by ware: the stock chosen and its cost with penalties. */
  readonly #stock: Int32Array;
  readonly #least: Float64Array;
  /** Of the box under way: the stocks worth considering, ware after ware, each from the highest, where those of a ware begin, */
  #first: Int32Array;
  #level: Int32Array;
  /** and the shares that each has to pay. */
  #shares: Float64Array;

  constructor(reduced: ReducedDays, unitCost: ArrayLike<number>) {
    this.#reduced = reduced;
    this.#unitCost = unitCost;
    this.#share = new Float64Array(reduced.rows * reduced.ware).fill(1);
    this.#stock = new Int32Array(reduced.ware);
    this.#least = new Float64Array(reduced.ware);
    this.#first = new Int32Array(reduced.ware + 1);
    this.#level = new Int32Array(0);
    this.#shares = new Float64Array(0);
  }

  /**
   * Raises the bound of a box for some rounds of price and shares, or until it passes the limit.
   *
   * @param price where to start
   * @param inspect called with the stock of every fifth round, to be patched into an answer; returns the limit then
   */
  raise(
    box: StockBox,
    price: number,
    rounds: number,
    limit: number,
    inspect?: (stock: Int32Array) => number,
  ): LagrangianBound {
    const contested = this.#contestedRows(box);
    this.#findLevels(box);
    let best = { value: -Infinity, price, stock: box.low };
    const low = box.low.slice();
    const high = box.high.slice();
    for (let round = 0; round < rounds && best.value <= limit; round++) {
      this.#addShares(box);
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
  #contestedRows(box: StockBox): Contested {
    const { ware, rows } = this.#reduced;
    // First entry by row, by counting; then the entries, in the order of ware.
    const first = new Int32Array(rows + 1);
    for (const some of box.rows) for (const row of some) first[row + 1]++;
    for (let row = 0; row < rows; row++) first[row + 1] += first[row];
    const filled = first.slice();
    const entries = new Int32Array(first[rows]);
    box.rows.forEach((some, w) => {
      for (const row of some) entries[filled[row]++] = row * ware + w;
    });
    const contested: number[] = [];
    for (let row = 0; row < rows; row++) {
      this.#scale(entries, first[row], first[row + 1]);
      if (first[row + 1] - first[row] > 1) contested.push(row);
    }
    return { entries, first, rows: contested };
  }

  #scale(entries: Int32Array, from: number, to: number): void {
    const share = this.#share;
    let sum = 0;
    for (let i = from; i < to; i++) {
      const at = entries[i];
      if (share[at] < LEAST_SHARE) share[at] = LEAST_SHARE;
      sum += share[at];
    }
    for (let i = from; i < to; i++) share[entries[i]] /= sum;
  }

  /** Every stock of each ware worth considering: its peaks in the box, and the least. */
  #findLevels({ low, peaks }: StockBox): void {
    const most = peaks.reduce((sum, some) => sum + some.length + 1, 0);
    if (this.#level.length < most) {
      this.#level = new Int32Array(most);
      this.#shares = new Float64Array(most);
    }
    let at = 0;
    peaks.forEach((some, w) => {
      this.#first[w] = at;
      for (let i = 0; i < some.length; i++)
        if (i === 0 || some[i] !== some[i - 1]) this.#level[at++] = some[i];
      this.#level[at++] = low[w];
    });
    this.#first[peaks.length] = at;
  }

  /** The shares to be paid at each of those: of all days with a higher peak. */
  #addShares({ rows, peaks }: StockBox): void {
    const { ware, weight } = this.#reduced;
    for (let w = 0; w < rows.length; w++) {
      const some = rows[w];
      const peak = peaks[w];
      let at = this.#first[w];
      let sum = 0;
      this.#shares[at] = 0;
      for (let i = 0; i < some.length; i++) {
        if (peak[i] !== this.#level[at]) this.#shares[++at] = sum;
        sum += weight[some[i]] * this.#share[some[i] * ware + w];
      }
      this.#shares[this.#first[w + 1] - 1] = sum;
    }
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
    const level = this.#level;
    const shares = this.#shares;
    let value = -price * box.left;
    let slope = -box.left;
    for (let w = 0; w < box.rows.length; w++) {
      const unitCost = this.#unitCost[w];
      const end = this.#first[w + 1];
      let least = Infinity;
      let chosen = end - 1;
      for (let at = this.#first[w]; at < end; at++) {
        const cost = unitCost * level[at] + price * shares[at];
        if (cost < least) {
          least = cost;
          chosen = at;
        }
      }
      this.#stock[w] = level[chosen];
      this.#least[w] = least;
      value += least;
      slope += shares[chosen];
    }
    return { value, slope };
  }

  /** Narrows low…high to the stocks of each ware with which the bound, the others free, stays within the limit. */
  #cut(
    box: StockBox,
    { value, price }: { value: number; price: number },
    limit: number,
    low: Int32Array,
    high: Int32Array,
  ): void {
    for (let w = 0; w < box.rows.length; w++) {
      const others = value - this.#least[w];
      let highest = -1;
      let lowest = Infinity;
      for (let at = this.#first[w]; at < this.#first[w + 1]; at++) {
        const level = this.#level[at];
        if (others + this.#unitCost[w] * level + price * this.#shares[at] > limit) continue;
        highest = Math.max(highest, level);
        lowest = level;
      }
      low[w] = Math.max(low[w], Math.min(lowest, box.high[w] + 1));
      high[w] = Math.min(high[w], highest);
    }
  }

  #moveShares({ entries, first, rows }: Contested, growth: number): void {
    const { ware, peak } = this.#reduced;
    for (const row of rows) {
      const from = first[row];
      const to = first[row + 1];
      let short = 0;
      for (let i = from; i < to; i++)
        if (peak[entries[i]] > this.#stock[entries[i] - row * ware]) short++;
      if (short === 0 || short === to - from) continue;
      for (let i = from; i < to; i++)
        if (peak[entries[i]] > this.#stock[entries[i] - row * ware])
          this.#share[entries[i]] *= growth;
      this.#scale(entries, from, to);
    }
  }
}

/** Days that may run out of several ware of a box: their rows, and for every row where its entries (row × ware + ware) begin. */
interface Contested {
  readonly entries: Int32Array;
  readonly first: Int32Array;
  readonly rows: readonly number[];
}
