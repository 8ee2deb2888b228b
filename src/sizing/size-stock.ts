import { exactBinomialInterval } from '../statistics/exact-binomial-interval.js';
import type { ShareInterval } from '../statistics/exact-binomial-interval.js';
import { allowedMisses } from '../statistics/quantile-of-counts.js';
import { choose, largestError, missedOn, missesFor, type Chosen } from './choose-stock.js';
import { marginalStock, mostNeeded } from './marginal-stock.js';
import type { Peaks } from './peaks.js';
import { KindStores, type SizingRequest } from './sizing-request.js';
import { sizingWarnings, STEADY } from './sizing-warnings.js';
import type { SizingWarning } from './sizing-warnings.js';

/** The share of fresh rushes in which nothing ran out, with its exact interval. */
export interface CertifiedLevel {
  readonly level: number;
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
}

/** What is known of a stock on one kind of day. */
export interface SizedKind {
  readonly certified: CertifiedLevel | null;
  /** Days of those chosen on that the stock was allowed to miss, and those it does miss. */
  readonly k: number;
  readonly missed: number;
  /** Peaks of the days chosen on, and of the fresh ones. */
  readonly peaks: Peaks;
  readonly fresh: Peaks | null;
}

export interface SizedStock {
  /** Pieces by ware, and what they cost in minor units. */
  readonly stock: readonly number[];
  readonly cost: number;
  /** By ware: what it would need if running out of the others did not matter, and the interval of that number; of the kind of day that needs most. */
  readonly alone: readonly number[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
  /** Days of each kind. */
  readonly chosenOn: number;
  readonly certifiedOn: number;
  /** By kind of day, and which of them is carried least. */
  readonly kinds: readonly SizedKind[];
  readonly tightest: number;
  /** Of the kind carried least. */
  readonly certified: CertifiedLevel | null;
  readonly k: number;
  readonly peaks: Peaks;
  readonly fresh: Peaks | null;
  /** Whether the stock is proven the cheapest that misses so few of them. */
  readonly proven: boolean;
  /** Bootstrap standard error of the cost as a share of it, the largest of any kind's own stock; null where days are listed. */
  readonly costError: number | null;
  readonly warnings: readonly SizingWarning[];
}

const FIRST_DAYS = 1000;
const CAP = 8000;

/** Days that are run in all where the number to choose on is given: those, and the fresh ones that certify. */
export const daysOfSizing = (chosenOn: number): number => chosenOn + Math.max(FIRST_DAYS, chosenOn);

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
  const { level, certifyOn } = request;
  const cap = request.days ?? (certifyOn === undefined ? (request.cap ?? CAP) : FIRST_DAYS);
  if (!(level > 0 && level < 1) || !wholeDays(cap) || !wholeDays(certifyOn ?? FIRST_DAYS)) {
    throw new RangeError(
      `sizing needs 0 < level < 1 and at least one day; given ${level}, ${cap} days${certifyOn === undefined ? '' : ` and ${certifyOn} to certify on`}`,
    );
  }
  const stores = new KindStores(request);
  let days = Math.min(cap, request.days ?? FIRST_DAYS);
  if (request.certify === false) {
    const peaks = await stores.days(0, days);
    const misses = peaks.map(() => allowedMisses(days, level));
    return sized(request, peaks, await choose(request, peaks, misses), null);
  }

  for (let used = 0; ;) {
    const toCertify = (): number => certifyOn ?? Math.max(FIRST_DAYS, days);
    // However the cost turns out, as many days again follow, to choose on or to certify on; unless the cap cuts the doubling short.
    const following = (): number => (days < cap && cap < 2 * days ? 0 : toCertify());
    let peaks = await stores.days(0, days, following());
    let error = largestError(request, peaks);
    while (error >= STEADY && days < cap) {
      days = Math.min(cap, 2 * days);
      peaks = await stores.days(0, days, following());
      error = largestError(request, peaks);
    }
    const chosen = await choose(request, peaks, missesFor(request, peaks, level));
    const from = Math.max(used, days);
    const certifiedOn = toCertify();
    used = from + certifiedOn;
    const fresh = await stores.days(from, certifiedOn);
    const missed = await missedOn(request, fresh, chosen.stock, from);
    const kept = missed.map((count) =>
      exactBinomialInterval(certifiedOn - count, certifiedOn, request.confidence),
    );
    if (kept.some(({ high }) => high < level) && days < cap) days = Math.min(cap, 2 * days);
    else return sized(request, peaks, chosen, { fresh, kept, error });
  }
}

const wholeDays = (days: number): boolean => Number.isInteger(days) && days >= 1;

interface Certificate {
  /** By kind. */
  readonly fresh: readonly Peaks[];
  readonly kept: readonly ShareInterval[];
  readonly error: number;
  /** The confidence that the low end was to be held with; absent where none was asked for. */
  readonly assured?: number;
}

/** All that is reported of a stock, with its doubts. */
export function sized(
  request: SizingRequest,
  peaks: readonly Peaks[],
  chosen: Chosen,
  certificate: Certificate | null,
): SizedStock {
  const { level } = request;
  const each = mostNeeded(peaks.map((one) => marginalStock(one, level, request.confidence)));
  const kinds = peaks.map((one, at): SizedKind => {
    const kept = certificate?.kept[at];
    return {
      certified:
        kept === undefined
          ? null
          : { level: kept.share, low: kept.low, high: kept.high, confidence: kept.confidence },
      k: chosen.k[at],
      missed: chosen.missed[at],
      peaks: one,
      fresh: certificate?.fresh[at] ?? null,
    };
  });
  const carried = ({ certified, missed }: SizedKind): number => certified?.level ?? -missed;
  const tightest = kinds.reduce(
    (least, kind, at) => (carried(kind) < carried(kinds[least]) ? at : least),
    0,
  );
  const { certified, k, missed } = kinds[tightest];
  const overMissed = kinds.find((kind) => kind.missed > kind.k);
  return {
    stock: chosen.stock,
    cost: chosen.cost,
    alone: each.map((ware) => ware.pieces),
    low: each.map((ware) => ware.low),
    high: each.map((ware) => ware.high),
    chosenOn: peaks[0].days,
    certifiedOn: certificate?.fresh[0].days ?? 0,
    kinds,
    tightest,
    certified,
    k,
    peaks: peaks[tightest],
    fresh: certificate?.fresh[tightest] ?? null,
    proven: chosen.proven,
    costError: certificate?.error ?? null,
    warnings: sizingWarnings({
      level,
      days: peaks[0].days,
      k: overMissed?.k ?? k,
      missed: overMissed?.missed ?? missed,
      kept: certificate?.kept[tightest] ?? null,
      assured: certificate?.assured ?? null,
      costError: certificate?.error ?? null,
      gap: chosen.proven || chosen.bound === 0 ? 0 : 1 - chosen.bound / chosen.cost,
    }),
  };
}
