/**
 * What a rush leaves behind. Days are numbered; any run of days can be done anywhere and the results
 * merge exactly, as everything gathered is a whole number, a largest or a list by day.
 */
import type { ListedDay } from './listed-day.js';
import type { CafeModel } from './model.js';
import { PLACE_COUNT } from './places.js';

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

/** A run of days in which nothing has been counted yet: so many ware, kinds of rack and drinks on the menu. */
export function emptyRun(from: number, days: number, wares: number, kinds: number, drinks: number) {
  return {
    from,
    days,
    peaks: new Uint16Array(days * wares),
    rackPeaks: new Uint16Array(days * kinds),
    guestsAtDoor: new Int32Array(days),
    seatPermille: new Uint16Array(days),
    sums: Object.fromEntries(SUMS.map((name) => [name, 0])) as Record<SumName, number>,
    uses: new Float64Array(wares),
    short: new Float64Array(wares),
    pieceMs: new Float64Array(wares * PLACE_COUNT),
    fetched: new Float64Array(wares),
    away: new Float64Array(drinks),
    paper: new Float64Array(drinks),
    byDay: [] as DayAtStock[],
  } satisfies DaysRun;
}

/** Columns of a run that add up over days. */
const ADDED = ['uses', 'short', 'pieceMs', 'fetched', 'away', 'paper'] as const;

/** Put runs of adjoining days together, in any order of completion; the same bytes as one run. */
export function mergeDays(parts: readonly DaysRun[]): DaysRun {
  const inOrder = [...parts].sort((a, b) => a.from - b.from);
  const first = inOrder[0];
  if (first === undefined) throw new RangeError('no days to merge');
  if (inOrder.length === 1) return first;
  let expected = first.from;
  for (const part of inOrder) {
    if (part.from !== expected)
      throw new RangeError(`days ${expected} to ${part.from - 1} are missing`);
    expected += part.days;
  }
  const whole = new DaysTogether(first.from, expected - first.from);
  for (const part of inOrder) whole.add(part);
  return whole.result();
}

/** Days put together part by part as they come, in order, so that nobody need keep the parts. */
export class DaysTogether {
  private all: ReturnType<typeof emptyRun> | null = null;

  /** @param days in all */
  constructor(
    private readonly from: number,
    private readonly days: number,
  ) {}

  add(part: DaysRun): void {
    const wares = part.uses.length;
    const kinds = part.days === 0 ? 0 : part.rackPeaks.length / part.days;
    const all = (this.all ??= emptyRun(this.from, this.days, wares, kinds, part.away.length));
    const at = part.from - this.from;
    all.peaks.set(part.peaks, at * wares);
    all.rackPeaks.set(part.rackPeaks, at * kinds);
    all.guestsAtDoor.set(part.guestsAtDoor, at);
    all.seatPermille.set(part.seatPermille, at);
    for (const name of SUMS) all.sums[name] += part.sums[name];
    for (const name of ADDED) addInto(all[name], part[name]);
    for (const day of part.byDay) all.byDay.push(day);
  }

  /** @throws RangeError where no days were added */
  result(): DaysRun {
    if (this.all === null) throw new RangeError('no days to merge');
    return this.all;
  }
}

/** Adds number by number. */
export function addInto(total: Float64Array, part: Float64Array): void {
  for (let index = 0; index < total.length; index += 1) total[index] = total[index]! + part[index]!;
}
