/**
 * What a rush leaves behind. Days are numbered; any run of days can be done anywhere and the results
 * merge exactly, as everything gathered is a whole number, a largest or a list by day.
 */
import type { ListedDay } from './listed-day.js';
import type { CafeModel } from './model.js';

/** Sums over days, whole numbers all: pieces, guests, drinks, milliseconds. */
export const SUMS = [
  'days',
  'safeDays',
  'parties',
  'guestsSeated',
  'guestsTookAway',
  'guestsLeft',
  'guestsTakeawayInstead',
  'houseDrinks',
  'shortDrinks',
  'takeawayDrinks',
  'paperFallBacks',
  'unserved',
  'waitedMs',
  'drinksStarted',
  'machineMs',
  'makerMs',
  'seatMs',
  'clearerMs',
  'handMs',
  'handlingMs',
  'polishMs',
  'loads',
  'racks',
  'ownRacks',
  'fillPermille',
  'trips',
  'fetchTrips',
  'fetchWaits',
  'runMs',
] as const;
export type SumName = (typeof SUMS)[number];

/** What a run of days leaves behind. */
export interface DaysRun {
  readonly from: number;
  readonly days: number;
  /** Largest number of pieces off the shelf: peaks[day × ware + w]. */
  readonly peaks: Uint16Array;
  /** Most racks in use: rackPeaks[day × kinds + k]. */
  readonly rackPeaks: Uint16Array;
  /** By day: guests at the door, and share of the seats held in the fullest quarter hour, in thousandths (0 where unlimited). */
  readonly guestsAtDoor: Int32Array;
  readonly seatPermille: Uint16Array;
  readonly sums: Readonly<Record<SumName, number>>;
  /** By ware: uses, drinks short charged to it, and piece-milliseconds by place (ware × PLACE_COUNT + place). */
  readonly uses: Float64Array;
  readonly short: Float64Array;
  readonly pieceMs: Float64Array;
  /** By ware: pieces brought up from the reserve, where the shelf is two places. */
  readonly fetched: Float64Array;
  /** By drink on the menu: takeaway cups ordered, and those that stood in for house ware. */
  readonly away: Float64Array;
  readonly paper: Float64Array;
  /** One entry a day, only at a given stock. */
  readonly byDay: readonly DayAtStock[];
}

/** A day at a given stock. */
export interface DayAtStock {
  readonly short: readonly number[];
  /** ms from opening; -1: never short. */
  readonly firstShortMs: number;
  readonly left: number;
  readonly takeawayInstead: number;
  readonly unserved: number;
}

export interface RushTask {
  readonly model: CafeModel;
  readonly seed: string;
  readonly from: number;
  readonly days: number;
  /** Pieces by ware; null: unlimited ware. */
  readonly stock: readonly number[] | null;
  /** Given days in place of drawn ones: day number `from + i` is listed[from + i]. */
  readonly listed: readonly ListedDay[] | null;
  /** Keep an entry a day (memory grows with days). */
  readonly byDay: boolean;
}

/** Put runs of adjoining days together, in any order of completion; the same bytes as one run. */
export function mergeDays(parts: readonly DaysRun[]): DaysRun {
  const inOrder = [...parts].sort((a, b) => a.from - b.from);
  const first = inOrder[0];
  if (first === undefined) throw new RangeError('no days to merge');
  const days = inOrder.reduce((sum, part) => sum + part.days, 0);
  const peaks = new Uint16Array(inOrder.reduce((sum, part) => sum + part.peaks.length, 0));
  const rackPeaks = new Uint16Array(inOrder.reduce((sum, part) => sum + part.rackPeaks.length, 0));
  const guestsAtDoor = new Int32Array(days);
  const seatPermille = new Uint16Array(days);
  const sums = { ...first.sums };
  for (const name of SUMS) sums[name] = 0;
  const uses = new Float64Array(first.uses.length);
  const short = new Float64Array(first.short.length);
  const pieceMs = new Float64Array(first.pieceMs.length);
  const fetched = new Float64Array(first.fetched.length);
  const away = new Float64Array(first.away.length);
  const paper = new Float64Array(first.paper.length);
  let peakAt = 0;
  let rackAt = 0;
  let expected = first.from;
  for (const part of inOrder) {
    if (part.from !== expected)
      throw new RangeError(`days ${expected} to ${part.from - 1} are missing`);
    expected = part.from + part.days;
    guestsAtDoor.set(part.guestsAtDoor, part.from - first.from);
    seatPermille.set(part.seatPermille, part.from - first.from);
    peaks.set(part.peaks, peakAt);
    peakAt += part.peaks.length;
    rackPeaks.set(part.rackPeaks, rackAt);
    rackAt += part.rackPeaks.length;
    for (const name of SUMS) sums[name] += part.sums[name];
    addInto(uses, part.uses);
    addInto(short, part.short);
    addInto(pieceMs, part.pieceMs);
    addInto(fetched, part.fetched);
    addInto(away, part.away);
    addInto(paper, part.paper);
  }
  return {
    from: first.from,
    days,
    peaks,
    rackPeaks,
    guestsAtDoor,
    seatPermille,
    sums,
    uses,
    short,
    pieceMs,
    fetched,
    away,
    paper,
    byDay: inOrder.flatMap((part) => part.byDay),
  };
}

/** Adds number by number. */
export function addInto(total: Float64Array, part: Float64Array): void {
  for (let index = 0; index < total.length; index += 1) total[index] = total[index]! + part[index]!;
}
