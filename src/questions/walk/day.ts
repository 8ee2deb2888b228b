/**
 * A walk through a day: one drawn or listed day, moment by moment, as plain data that can be sent to
 * whoever draws it. Counts stand in columns; what lasts (a party's visit, a trip, a rack's way round,
 * a machine's stage) is reported once, with the moments from which and until which it holds.
 *
 * A moment is the state after all events of one instant; instants after which nothing looks different are
 * left out. "Until" is the first moment at which it no longer holds, one past the last moment if it always does.
 */
import type { ListedDay } from '../../cafe/listed-day.js';
import type { CafeModel } from '../../cafe/model.js';
import { PLACE_COUNT, PLACES, SHELF } from '../../cafe/places.js';
import { prepared } from '../size/evidence.js';
import type { WalkParty, WalkRack, WalkShortage, WalkStage, WalkTrip } from './parts.js';
import { recorded } from './recorder.js';

export interface DayWalk {
  readonly day: number;
  /** Ids of ware, of families of ware that share racks, and names of the places. */
  readonly wares: readonly string[];
  readonly families: readonly string[];
  readonly places: readonly string[];
  /** By ware: pieces that fill a rack, family. */
  readonly perRack: readonly number[];
  readonly familyOf: readonly number[];
  /** Pieces by ware; with unlimited ware, the most that were ever off the shelf. */
  readonly stock: readonly number[];
  /** Seats of the house, and machines; null: as many as are needed. */
  readonly seats: number | null;
  readonly machines: number;
  readonly closingMs: number;
  /** ms from opening, ascending; the first is the opening. */
  readonly times: Float64Array;
  /** Pieces: counts[(moment × wares + ware) × places + place]. */
  readonly counts: Int32Array;
  /** By moment: drinks waiting for a maker or ware, parties waiting for seats, makers at work, racks of food ware that wait. */
  readonly drinksWaiting: Uint16Array;
  readonly partiesWaiting: Uint16Array;
  readonly makersBusy: Uint16Array;
  readonly foodRacksWaiting: Uint16Array;
  readonly parties: readonly WalkParty[];
  readonly trips: readonly WalkTrip[];
  readonly racks: readonly WalkRack[];
  readonly stages: readonly WalkStage[];
  readonly shortages: readonly WalkShortage[];
  /** By ware: the most pieces off the shelf, and the moment at which that was first so. */
  readonly peaks: readonly number[];
  readonly tightest: readonly number[];
  /** The ware with the largest share of its stock off the shelf at its peak; of equals the one short more often, then the first. */
  readonly scarcest: number;
  /** The moment at which the scarcest ware is scarcest. */
  readonly tightestIndex: number;
  /** -1: nothing was short. */
  readonly firstShortIndex: number;
}

export interface WalkOptions {
  readonly model: CafeModel;
  readonly seed: string;
  /** Number of the day, from 0. */
  readonly day: number;
  /** Pieces by ware; null: unlimited ware. */
  readonly stock: readonly number[] | null;
  /** Given days in place of drawn ones. */
  readonly listed: readonly ListedDay[] | null;
}

/**
 * Walk through a day. The same options give the same walk.
 * @throws RangeError for a day that is not a whole number from 0, or not among the listed ones
 */
export function walkDay({ model, seed, day, stock, listed }: WalkOptions): DayWalk {
  const last = listed === null ? Number.MAX_SAFE_INTEGER : listed.length - 1;
  if (!Number.isInteger(day) || day < 0 || day > last)
    throw new RangeError(
      `day: ${day} is not a day there is; ${listed === null ? 'give a whole number from 0' : `the listed days are 0 to ${last}`}`,
    );
  const { floor, guests } = prepared({ model, seed, listed });
  guests(day);
  const recorder = recorded(floor, day, stock);
  const wares = model.ware.length;
  const peaks = model.ware.map((_, ware) => floor.ledger.peak(ware));
  const pieces = stock === null ? peaks : stock.slice(0, wares);
  const { moments } = recorder;
  const counts = moments.counts();
  if (stock === null) {
    for (let row = 0; row < counts.length; row += PLACE_COUNT) {
      let off = 0;
      for (let place = SHELF + 1; place < PLACE_COUNT; place += 1) off += counts[row + place]!;
      counts[row + SHELF] = peaks[(row / PLACE_COUNT) % wares]! - off;
    }
  }
  const scarcest = scarcestOf(peaks, pieces, floor.counter.short);
  const { tightest } = recorder;
  return {
    day,
    wares: model.ware.map(({ id }) => id),
    families: model.families.map(({ id }) => id),
    places: [...PLACES],
    perRack: model.ware.map(({ perRack }) => perRack),
    familyOf: model.ware.map(({ family }) => family),
    stock: pieces,
    seats: model.seats.count,
    machines: floor.washing.machines.list.length,
    closingMs: model.closingMs,
    times: Float64Array.from(moments.times),
    counts,
    drinksWaiting: moments.column('drinksWaiting'),
    partiesWaiting: moments.column('partiesWaiting'),
    makersBusy: moments.column('makersBusy'),
    foodRacksWaiting: moments.column('foodRacksWaiting'),
    parties: recorder.parties,
    trips: recorder.trips,
    racks: recorder.racks,
    stages: recorder.stages,
    shortages: recorder.shortages,
    peaks,
    tightest,
    scarcest,
    tightestIndex: tightest[scarcest] ?? 0,
    firstShortIndex: recorder.shortages[0]?.moment ?? -1,
  };
}

function scarcestOf(
  peaks: readonly number[],
  stock: readonly number[],
  short: ArrayLike<number>,
): number {
  const share = (ware: number): number => peaks[ware]! / Math.max(stock[ware]!, 0.5);
  return peaks.reduce(
    (best, _, ware) =>
      share(ware) > share(best) || (share(ware) === share(best) && short[ware]! > short[best]!)
        ? ware
        : best,
    0,
  );
}
