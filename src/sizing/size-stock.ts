import { exactBinomialInterval } from '../statistics/exact-binomial-interval.js';
import type { ShareInterval } from '../statistics/exact-binomial-interval.js';
import { allowedMisses } from '../statistics/quantile-of-counts.js';
import { marginalStock } from './marginal-stock.js';
import { crossValidatedMisses } from './cross-validated-misses.js';
import { costError } from './cost-error.js';
import { DayStore } from './day-store.js';
import type { DayProvider } from './day-store.js';
import { leastCostStock } from './least-cost-stock.js';
import { countMisses } from './peaks.js';
import type { Peaks } from './peaks.js';
import { searchStock } from './search-stock.js';
import { sizingWarnings, STEADY } from './sizing-warnings.js';
import type { SizingWarning } from './sizing-warnings.js';

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

/** The share of fresh rushes in which nothing ran out, with its exact interval. */
export interface CertifiedLevel {
  readonly level: number;
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
}

export interface SizedStock {
  /** Pieces by ware, and what they cost in minor units. */
  readonly stock: readonly number[];
  readonly cost: number;
  /** By ware: what it would need if running out of the others did not matter, and the interval of that number. */
  readonly alone: readonly number[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
  readonly chosenOn: number;
  readonly certifiedOn: number;
  readonly certified: CertifiedLevel | null;
  /** Days of those chosen on that the stock was allowed to miss. */
  readonly k: number;
  /** Whether the stock is proven the cheapest that misses so few of them. */
  readonly proven: boolean;
  /** Bootstrap standard error of the cost as a share of it; null where days are listed. */
  readonly costError: number | null;
  /** Peaks of the days chosen on, and of the fresh ones. */
  readonly peaks: Peaks;
  readonly fresh: Peaks | null;
  readonly warnings: readonly SizingWarning[];
}

export const FIRST_DAYS = 1000;
const CAP = 8000;

/**
 * The cheapest stock that carries a share `level` of rushes, chosen on one set of days and certified on another.
 *
 * From 1,000 days on they are doubled, up to the cap, until the cost is steady. The stock is chosen with a
 * correction for fitting its own days, then met with as many fresh days, at least 1,000; the share of those in
 * which nothing runs out is the level that is reported. Should even the high end of its interval lie below the level,
 * the days are doubled again and the stock is certified on days never used before. At the cap, and with a fixed
 * number of days, a missed service level is a warning. Days 0, 1, 2 … are chosen on; the next ones not yet used certify.
 * With `certifyOn` the first choice is certified on so many days and reported, wide as its interval may be.
 *
 * @throws RangeError for a level outside 0…1, or no days
 */
export async function sizeStock(request: SizingRequest): Promise<SizedStock> {
  const { level, unitCostMinor, provider, uniform, certifyOn } = request;
  const cap = request.days ?? (certifyOn === undefined ? (request.cap ?? CAP) : FIRST_DAYS);
  if (!(level > 0 && level < 1) || !wholeDays(cap) || !wholeDays(certifyOn ?? FIRST_DAYS)) {
    throw new RangeError(
      `sizing needs 0 < level < 1 and at least one day; given ${level}, ${cap} days${certifyOn === undefined ? '' : ` and ${certifyOn} to certify on`}`,
    );
  }
  const store = new DayStore(provider);
  let days = Math.min(cap, request.days ?? FIRST_DAYS);
  if (request.certify === false) {
    const peaks = await store.days(0, days);
    return sized(request, peaks, await choose(request, peaks, allowedMisses(days, level)), null);
  }

  for (let used = 0; ;) {
    const toCertify = (): number => certifyOn ?? Math.max(FIRST_DAYS, days);
    // However the cost turns out, as many days again follow, to choose on or to certify on; unless the cap cuts the doubling short.
    const following = (): number => (days < cap && cap < 2 * days ? 0 : toCertify());
    let peaks = await store.days(0, days, following());
    let error = costError(peaks, unitCostMinor, level, uniform);
    while (error >= STEADY && days < cap) {
      days = Math.min(cap, 2 * days);
      peaks = await store.days(0, days, following());
      error = costError(peaks, unitCostMinor, level, uniform);
    }
    const chosen = await choose(request, peaks, crossValidatedMisses(peaks, unitCostMinor, level));
    const from = Math.max(used, days);
    const certifiedOn = toCertify();
    used = from + certifiedOn;
    const fresh = await store.days(from, certifiedOn);
    const missed =
      provider.misses === undefined
        ? countMisses(fresh, chosen.stock)
        : await provider.misses(chosen.stock, from, certifiedOn);
    const kept = exactBinomialInterval(certifiedOn - missed, certifiedOn, request.confidence);
    if (kept.high < level && days < cap) days = Math.min(cap, 2 * days);
    else return sized(request, peaks, chosen, { fresh, kept, error });
  }
}

const wholeDays = (days: number): boolean => Number.isInteger(days) && days >= 1;

interface Chosen {
  readonly stock: readonly number[];
  readonly cost: number;
  readonly k: number;
  readonly proven: boolean;
  readonly bound: number;
  /** Days of those chosen on that run out of something at this stock. */
  readonly missed: number;
}

/** The cheapest stock that misses at most k of these days. */
export async function choose(
  { unitCostMinor, provider }: SizingRequest,
  peaks: Peaks,
  k: number,
): Promise<Chosen> {
  const read = leastCostStock(peaks, unitCostMinor, k);
  if (provider.misses === undefined)
    return {
      stock: read.stock,
      cost: read.cost,
      k,
      proven: read.proven,
      bound: read.bound,
      missed: countMisses(peaks, read.stock),
    };
  const run = provider.misses.bind(provider);
  const byPeaks = (missed: number) =>
    missed === k ? read.stock : leastCostStock(peaks, unitCostMinor, missed).stock;
  const found = await searchStock({
    byPeaks,
    days: peaks.days,
    unitCostMinor,
    k,
    misses: (stock) => run(stock, 0, peaks.days),
  });
  return { stock: found.stock, cost: found.cost, k, proven: false, bound: 0, missed: found.misses };
}

interface Certificate {
  readonly fresh: Peaks;
  readonly kept: ShareInterval;
  readonly error: number;
  /** The confidence that the low end was to be held with; absent where none was asked for. */
  readonly assured?: number;
}

/** All that is reported of a stock, with its doubts. */
export function sized(
  request: SizingRequest,
  peaks: Peaks,
  chosen: Chosen,
  certificate: Certificate | null,
): SizedStock {
  const { level, provider } = request;
  const each = marginalStock(peaks, level, request.confidence);
  const kept = certificate?.kept ?? null;
  return {
    stock: chosen.stock,
    cost: chosen.cost,
    alone: each.map((ware) => ware.pieces),
    low: each.map((ware) => ware.low),
    high: each.map((ware) => ware.high),
    chosenOn: peaks.days,
    certifiedOn: certificate?.fresh.days ?? 0,
    certified:
      kept === null
        ? null
        : { level: kept.share, low: kept.low, high: kept.high, confidence: kept.confidence },
    k: chosen.k,
    proven: chosen.proven,
    costError: certificate?.error ?? null,
    peaks,
    fresh: certificate?.fresh ?? null,
    warnings: sizingWarnings({
      level,
      days: peaks.days,
      k: chosen.k,
      missed: chosen.missed,
      kept,
      assured: certificate?.assured ?? null,
      costError: certificate?.error ?? null,
      gap: chosen.proven || provider.misses !== undefined ? 0 : 1 - chosen.bound / chosen.cost,
    }),
  };
}
