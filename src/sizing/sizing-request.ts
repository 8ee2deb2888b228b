/** What a stock is asked for with: the level, the prices, and where the days of each kind come from. */
import { DayStore, type DayProvider } from './day-store.js';
import type { Peaks } from './peaks.js';

/** Days, and for rules that look at the clean count a way of running them at a given stock. */
export interface SizingProvider extends DayProvider {
  /** How many of `count` days from number `from` on run out of something; absent where the peaks say it. */
  misses?(stock: readonly number[], from: number, count: number): number | Promise<number>;
}

export interface SizingRequest {
  /** Share of rushes in which nothing runs out, strictly between 0 and 1. */
  readonly level: number;
  /** Cost of one piece by ware, minor units, ≥ 0. */
  readonly unitCostMinor: readonly number[];
  readonly provider: SizingProvider;
  /** Further kinds of day, each of which the stock must carry at the level too. */
  readonly further?: readonly SizingProvider[];
  /** Fixes the number of days the stock is chosen on. */
  readonly days?: number;
  /** Otherwise, the most it may be chosen on; 8,000 unless said. */
  readonly cap?: number;
  /** A provisional answer: certify once, on so many fresh days, and never add days; 1,000 are chosen on unless `days` says otherwise. */
  readonly certifyOn?: number;
  /** False for listed days (`days` is their number): no fresh ones exist, and the days are the days. */
  readonly certify?: boolean;
  readonly confidence?: number;
  /** A source of independent numbers in [0, 1) for the bootstrap. */
  readonly uniform: () => number;
}

/** Those who know the days, by kind. */
export const providersOf = ({
  provider,
  further = [],
}: SizingRequest): readonly SizingProvider[] => [provider, ...further];

/** The days of every kind. */
export class KindStores {
  readonly #stores: readonly DayStore[];

  constructor(request: SizingRequest) {
    this.#stores = providersOf(request).map((provider) => new DayStore(provider));
  }

  /** As a `DayStore` has them; with several kinds, days of another kind come between these and those after. */
  async days(from: number, count: number, after = 0): Promise<Peaks[]> {
    const all: Peaks[] = [];
    for (const store of this.#stores)
      all.push(await store.days(from, count, this.#stores.length === 1 ? after : 0));
    return all;
  }
}
