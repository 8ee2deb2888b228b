import { costOf } from './reduced-days.js';

export interface StockSearch {
  /** The stock that the peaks would have if that many days could be missed and no rule looked at the clean count. */
  readonly byPeaks: (k: number) => readonly number[];
  /** Number of days run. */
  readonly days: number;
  /** Cost of one piece by ware, minor units, ≥ 0. */
  readonly unitCostMinor: readonly number[];
  /** Days that may run out of something. */
  readonly k: number;
  /** Runs the same days at a stock and counts those that run out of something. */
  readonly misses: (stock: readonly number[]) => number | Promise<number>;
  /** Stocks tried before the search is given up; 150 unless said. */
  readonly tries?: number;
}

export interface SearchedStock {
  readonly stock: number[];
  /** Σ unit cost × pieces, minor units. */
  readonly cost: number;
  /** Days that run out of something at this stock; above k only if no stock tried met the service level. */
  readonly misses: number;
  /** Stocks that were run. */
  readonly tries: number;
  /** Whether the search came to rest rather than being given up. */
  readonly settled: boolean;
}

const TRIES = 150;
/** Pieces by which a ware is raised to see whether others can then be lowered for more. */
const RAISES = [1, 2, 4];

/**
 * A cheap stock at which at most k days run out of anything, where only a run can tell: when a rule looks at the
 * clean count, say starts a part load as cups run low, peaks depend on the stock and cannot be read off.
 *
 * It starts on the line of stocks that the peaks hold cheapest, at the last one that meets the service level when it is
 * run. From there each ware, the dearest first, is lowered as far as it goes; then each in turn is raised a little to
 * see whether the others can be lowered for more than that costs, until no such exchange is left. Every try is a run
 * of the same days, so comparisons carry no noise. The stock returned was run and meets the service level, but it is not
 * proven cheapest: it takes more pieces to help more, which such rules need not obey, and sees neither exchanges of
 * many ware at once nor what lies over a hump. Where the peaks do decide it starts, and ends, at the exact answer;
 * where one ware needs a tenth less or more than they say it has ended up to 1 % dearer than the least with four
 * ware, and up to 3 % with eight. If not even several times the stock helps, the stock of the largest peaks is
 * returned with its misses.
 *
 * Ware without a price is lowered last and counts as 1 minor unit, so that it is not bought without end.
 */
export async function searchStock(search: StockSearch): Promise<SearchedStock> {
  const { k, unitCostMinor } = search;
  const limit = search.tries ?? TRIES;
  const priced = unitCostMinor.map((cost) => cost || 1);
  const known = new Map<string, number>();
  let tries = 0;
  const missesAt = async (stock: readonly number[]): Promise<number> => {
    const key = stock.join();
    const before = known.get(key);
    if (before !== undefined) return before;
    if (tries >= limit) return Infinity;
    tries++;
    const misses = await search.misses(stock);
    known.set(key, misses);
    return misses;
  };
  const keeps = async (stock: readonly number[]) => (await missesAt(stock)) <= k;
  const dearestFirst = priced.map((_, w) => w).sort((a, b) => priced[b] - priced[a]);

  let stock = await raisedTogether(await lastOnLine(search, keeps), keeps);
  if (await keeps(stock)) {
    stock = await lowered(stock, dearestFirst, keeps);
    for (let better: readonly number[] | null = stock; better !== null;) {
      stock = [...better];
      better = await exchanged(stock, dearestFirst, priced, keeps);
    }
  }
  const misses = known.get(stock.join()) ?? Infinity;
  return {
    stock: [...stock],
    cost: costOf(unitCostMinor, stock),
    misses,
    tries,
    settled: tries < limit,
  };
}

type Keeps = (stock: readonly number[]) => Promise<boolean>;

/**
 * The stock of the peaks with the most days missed that meets the service level when run; with none missed if none does.
 * From k on in doubling steps, whichever way is called for, then halving.
 */
async function lastOnLine(
  { byPeaks, k, days }: StockSearch,
  keeps: Keeps,
): Promise<readonly number[]> {
  let kept = -1;
  let broken = days + 1;
  for (let at = k, step = 1; broken - kept > 1;) {
    if (await keeps(byPeaks(at))) kept = at;
    else broken = at;
    const outward =
      broken > days ? at + step : kept < 0 ? at - step : Math.floor((kept + broken) / 2);
    at = Math.min(Math.max(outward, kept + 1), broken - 1);
    step *= 2;
  }
  return byPeaks(Math.max(kept, 0));
}

/** The start, or if that does not meet the service level, scaled up by 5, 10, 20 … 640 percent until it does; else the start. */
async function raisedTogether(start: readonly number[], keeps: Keeps): Promise<readonly number[]> {
  if (await keeps(start)) return start;
  for (let percent = 5; percent <= 640; percent *= 2) {
    const stock = start.map((pieces) => pieces + Math.max(1, Math.ceil((pieces * percent) / 100)));
    if (await keeps(stock)) return stock;
  }
  return start;
}

/** Lowers each ware in turn as far as the service level allows, in doubling steps and then by halving. */
async function lowered(
  start: readonly number[],
  order: readonly number[],
  keeps: Keeps,
): Promise<number[]> {
  let stock = [...start];
  for (const w of order) {
    let broken = -1;
    for (let step = 1; stock[w] - broken > 1; step *= 2) {
      const at = broken < 0 ? Math.max(0, stock[w] - step) : Math.floor((stock[w] + broken) / 2);
      if (await keeps(stock.with(w, at))) stock = stock.with(w, at);
      else broken = at;
    }
  }
  return stock;
}

/** A cheaper stock with one ware raised and others lowered, or null if there is none so near. */
async function exchanged(
  stock: readonly number[],
  order: readonly number[],
  priced: readonly number[],
  keeps: Keeps,
): Promise<number[] | null> {
  const cost = costOf(priced, stock);
  for (const raise of RAISES) {
    for (const up of [...order].reverse()) {
      let other = stock.with(up, stock[up] + raise);
      for (const w of order) {
        if (w !== up)
          while (other[w] > 0 && (await keeps(other.with(w, other[w] - 1))))
            other = other.with(w, other[w] - 1);
      }
      if (costOf(priced, other) < cost && (await keeps(other))) return other;
    }
  }
  return null;
}
