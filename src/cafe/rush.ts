/**
 * The rush: run days and gather what matters. Days are numbered; any run of days can be done anywhere
 * and the results merge exactly, as everything gathered is a whole number, a largest or a list by day.
 */
import { Day } from './day.js';
import { Demand } from './demand.js';
import { Floor } from './floor.js';
import { fillDay, type ListedDay } from './listed-day.js';
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

const LARGEST_PEAK = 65_535;

/** Name of the error where a scenario asks for more pieces than can be counted: by its name, as a thread hands on no class of ours. */
export const TOO_MANY_PIECES = 'TooManyPieces';

const tooManyPieces = (ware: string, pieces: number, day: number): RangeError =>
  Object.assign(
    new RangeError(
      `ware "${ware}": ${pieces} pieces are off the shelf at once on day ${day}, and at most ${LARGEST_PEAK} can be counted; check the guests per hour, the dwell and the washing for a typing mistake`,
    ),
    { name: TOO_MANY_PIECES },
  );

/** What a run of days needs, kept for the next one: nothing of a day lingers in it, and a warm floor is twice as fast as a new one. */
interface House {
  readonly seed: string;
  readonly floor: Floor;
  readonly demand: Demand;
  readonly day: Day;
}

const houses = new WeakMap<CafeModel, House>();

function houseOf(model: CafeModel, seed: string): House {
  const known = houses.get(model);
  if (known !== undefined && known.seed === seed) return known;
  const house = {
    seed,
    floor: new Floor(model, seed),
    demand: new Demand(model, seed),
    day: new Day(),
  };
  houses.set(model, house);
  return house;
}

/** Run the days of a task in this thread. Throws a RangeError named TOO_MANY_PIECES when a peak passes 65,535 pieces. */
export function runDays(task: RushTask): DaysRun {
  const { model, seed, from, days, stock, listed } = task;
  const { floor, demand, day } = houseOf(model, seed);
  const wares = model.ware.length;
  const kinds = model.rackKinds.length;
  const peaks = new Uint16Array(days * wares);
  const rackPeaks = new Uint16Array(days * kinds);
  const guestsAtDoor = new Int32Array(days);
  const seatPermille = new Uint16Array(days);
  const sums = Object.fromEntries(SUMS.map((name) => [name, 0])) as Record<SumName, number>;
  const uses = new Float64Array(wares);
  const short = new Float64Array(wares);
  const pieceMs = new Float64Array(wares * PLACE_COUNT);
  const away = new Float64Array(model.menu.length);
  const paper = new Float64Array(model.menu.length);
  const byDay: DayAtStock[] = [];
  for (let index = 0; index < days; index += 1) {
    const number = from + index;
    if (listed === null) demand.draw(number, day);
    else fillDay(listed[number]!, model.menu, day);
    floor.run(day, number, stock);
    const { ledger, counter, seats, bench } = floor;
    for (let ware = 0; ware < wares; ware += 1) {
      const peak = ledger.peak(ware);
      if (peak > LARGEST_PEAK) throw tooManyPieces(model.ware[ware]!.id, peak, number);
      peaks[index * wares + ware] = peak;
      uses[ware] = uses[ware]! + ledger.uses[ware]!;
      short[ware] = short[ware]! + counter.short[ware]!;
      for (let place = 1; place < PLACE_COUNT; place += 1) {
        const cell = ware * PLACE_COUNT + place;
        pieceMs[cell] = pieceMs[cell]! + ledger.pieceMs(ware, place);
      }
    }
    for (let kind = 0; kind < kinds; kind += 1)
      rackPeaks[index * kinds + kind] = Math.min(LARGEST_PEAK, bench.mostInUse[kind]!);
    for (let party = 0; party < day.parties; party += 1)
      guestsAtDoor[index] = guestsAtDoor[index]! + day.size[party]!;
    seatPermille[index] = seats.fullestPermille();
    if (task.byDay) {
      byDay.push({
        short: [...counter.short],
        firstShortMs: counter.firstShort,
        left: seats.partiesLeft,
        takeawayInstead: seats.partiesTakeawayInstead,
        unserved: counter.unserved,
      });
    }
    addInto(away, counter.awayByKind);
    addInto(paper, counter.paperByKind);
    addDay(sums, floor);
  }
  return {
    from,
    days,
    peaks,
    rackPeaks,
    guestsAtDoor,
    seatPermille,
    sums,
    uses,
    short,
    pieceMs,
    away,
    paper,
    byDay,
  };
}

function addDay(sums: Record<SumName, number>, floor: Floor): void {
  const { counter, seats, washing, makers, clearers, hands, clearing } = floor;
  sums.days += 1;
  sums.safeDays += counter.shortDrinks === 0 ? 1 : 0;
  sums.parties += floor.day.parties;
  sums.guestsSeated += seats.guestsSeated;
  sums.guestsTookAway += floor.visits.guestsTookAway;
  sums.guestsLeft += seats.guestsLeft;
  sums.guestsTakeawayInstead += seats.guestsTakeawayInstead;
  sums.houseDrinks += counter.houseDrinks;
  sums.shortDrinks += counter.shortDrinks;
  sums.takeawayDrinks += counter.takeawayDrinks;
  sums.paperFallBacks += counter.paperFallBacks;
  sums.unserved += counter.unserved;
  sums.waitedMs += counter.waitedMs;
  sums.drinksStarted += counter.started;
  sums.machineMs += washing.machines.busyMs;
  sums.makerMs += makers.busyMs;
  sums.seatMs += seats.seatMs();
  sums.clearerMs += clearers.busyMs;
  sums.handMs += hands.busyMs;
  sums.handlingMs += washing.handlingMs;
  sums.polishMs += floor.polishing.handMs;
  sums.loads += washing.loads;
  sums.racks += washing.racks;
  sums.ownRacks += washing.ownRacks;
  sums.fillPermille += washing.fillPermille;
  sums.trips += clearing.trips;
  sums.fetchTrips += floor.storage?.trips ?? 0;
  sums.fetchWaits += floor.storage?.waits ?? 0;
  sums.runMs += floor.now;
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
    away,
    paper,
    byDay: inOrder.flatMap((part) => part.byDay),
  };
}

function addInto(total: Float64Array, part: Float64Array): void {
  for (let index = 0; index < total.length; index += 1) total[index] = total[index]! + part[index]!;
}
