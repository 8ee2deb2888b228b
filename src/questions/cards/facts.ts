/**
 * What the trainer's cards need and an answer does not hold: what slipping rounds would cost, where the
 * pieces stand, how long a load takes, and what is lost in a week.
 */
import { meanMs, scaledLaw } from '../../engine/durations.js';
import { expectedLosses } from '../../ordering/losses.js';
import { usesACalendarDay } from '../../ordering/sheet-line.js';
import { SUPPLY_DEFAULTS } from '../../ordering/supply-model.js';
import { storageLayout, type StorageLayout } from '../../ordering/storage.js';
import { minorPerUnit } from '../../quantities/money.js';
import type { Answer } from '../size/answer.js';
import { storedWare } from '../order/stored-ware.js';
import { lossesOf } from '../order/study.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Runner } from '../../cafe/runner.js';
import { onEveryKind } from '../../scenario/kinds.js';
import { meanDayOf } from '../size/year.js';
import { calendarOf } from '../../scenario/calendar.js';
import type { Scenario } from '../../scenario/scenario.js';
import { study } from '../size/study.js';

/** The house with its clearing slower, against the house as it is, on the same days. */
export interface SlowerClearing {
  /** Minutes from one round to the next, slower and as it is; null: tables are cleared at once. */
  readonly everyMinutes: number;
  readonly insteadOfMinutes: number | null;
  /** Pieces of all ware needed more for the same promise, and what they cost in whole currency units; below 0: fewer. */
  readonly extraPieces: number;
  readonly extraCost: number;
  readonly ware: readonly { readonly ware: string; readonly extraPieces: number }[];
  /** Guests a rush turned away more: where they find no table they need no cups either. */
  readonly extraTurnedAway: number;
  /** Days both were chosen on. */
  readonly days: number;
}

export interface SlowerOptions {
  /** Absent: those of the scenario. */
  readonly seed?: string;
  readonly level?: number;
  /** Absent: 300. */
  readonly days?: number;
}

const DAYS = 300;
/** Rounds that stand for slow clearing where tables are cleared at once: the usual ones (from memory). */
const ROUNDS_INSTEAD_MS = 600_000;
const MINUTE_MS = 60_000;

/** Clearing half as often; where it is done at once, rounds every ten minutes whose trips take no time, so that only the wait is shown. */
function slowed({ clearing }: Scenario): Exclude<Scenario['clearing'], 'atOnce'> {
  if (clearing === 'atOnce')
    return {
      every: { law: 'constant', ms: ROUNDS_INSTEAD_MS },
      clearers: null,
      tripPieces: null,
      trip: { law: 'constant', ms: 0 },
    };
  return { ...clearing, every: scaledLaw(clearing.every, 2) };
}

/**
 * Sizes the house twice with the same seed on the same few days: as it is, and with slower clearing.
 * @throws RangeError as `study` does
 */
export async function slowerClearing(
  scenario: Scenario,
  runner: Runner,
  options: SlowerOptions = {},
): Promise<SlowerClearing> {
  const { days = DAYS, ...asked } = options;
  // One day certifies: the difference between the two is asked for here, not their levels.
  const sized = async (one: Scenario): Promise<Answer> =>
    (await study(one, runner, { ...asked, days, certifyOn: 1, piecesPerRack: piecesPerRackOf }))
      .answer;
  const clearing = slowed(scenario);
  const perUnit = minorPerUnit(scenario.currency);
  const now = await sized(scenario);
  const slow = await sized(onEveryKind(scenario, (one) => ({ ...one, clearing: slowed(one) })));
  const ware = now.stock.map((line, index) => ({
    ware: line.ware,
    extraPieces: slow.stock[index]!.pieces - line.pieces,
  }));
  return {
    everyMinutes: meanMs(clearing.every) / MINUTE_MS,
    insteadOfMinutes:
      scenario.clearing === 'atOnce' ? null : meanMs(scenario.clearing.every) / MINUTE_MS,
    extraPieces: ware.reduce((sum, { extraPieces }) => sum + extraPieces, 0),
    // Both are whole minor units; the difference of two floats is not.
    extraCost: Math.round((slow.cost - now.cost) * perUnit) / perUnit,
    ware,
    extraTurnedAway: slow.guests.turnedAway - now.guests.turnedAway,
    days,
  };
}

/**
 * Where the pieces of the answer stand; null where the scenario says nothing of storage. The same layout as the order's.
 * @throws RangeError for an answer without evidence, which tells the busiest hour
 */
export function storageOf(scenario: Scenario, answer: Answer): StorageLayout | null {
  if (scenario.storage === undefined) return null;
  if (answer.evidence === undefined)
    throw new RangeError(
      'the machine top needs an answer whose days were watched: ask the study with watch: 100 or more',
    );
  return storageLayout(scenario.storage, storedWare(scenario, answer));
}

const usesOf = (answer: Answer, id: string): number =>
  meanDayOf(answer).uses.find(({ ware }) => ware === id)?.aDay ?? 0;

/** Mean pieces lost of a ware over `days` of the calendar, the stock of the answer held: broken or chipped, and gone (walked off or retired). */
export function lossesOver(
  scenario: Scenario,
  answer: Answer,
  id: string,
  days: number,
): { readonly broken: number; readonly gone: number } {
  const { rushShare = SUPPLY_DEFAULTS.rushShare } = scenario.supply ?? {};
  const openDaysAWeek = calendarOf(scenario).daysAWeek;
  const usesADay = usesACalendarDay(usesOf(answer, id), { openDaysAWeek, rushShare });
  const held = answer.stock.find(({ ware }) => ware === id)?.pieces ?? 0;
  const { breakage, walkOff, retirement } = expectedLosses(
    { ...lossesOf(scenario, id), usesADay },
    held,
    days,
  );
  return { broken: breakage, gone: walkOff + retirement };
}

export interface LoadTimes {
  /** Mean ms of hands (loading and unloading) and of the machine (with them) for one load. */
  readonly handsMs: number;
  readonly machineMs: number;
  /** Racks the machine takes at once. */
  readonly racks: number;
  /** Water of a load, ml; null: not known. */
  readonly waterMl: number | null;
}

/** A load of the first machine of the scenario; it takes the same whatever is in the rack. */
export function loadTimes({ washing }: Scenario): LoadTimes {
  const machine = Array.isArray(washing.machines)
    ? washing.machines[0]
    : washing.machines.unlimited;
  if (machine === undefined) return { handsMs: 0, machineMs: 0, racks: 1, waterMl: null };
  const handsMs = meanMs(machine.loading) + meanMs(machine.unloading);
  return {
    handsMs,
    machineMs: handsMs + meanMs(machine.cycle),
    racks: machine.racks,
    waterMl: machine.water ?? null,
  };
}
