/**
 * From counts by day and slot to the demand of a scenario: arrivals, day factor, party sizes, menu.
 */
import { meanWithInterval } from '../statistics/mean-with-interval.js';
import { clock, isoDate } from './clock.js';
import type { TillMap } from './compile-map.js';
import type { DayFactor } from './day-factor.js';
import { fitDayFactor } from './day-factor.js';
import type { ChosenDays } from './days.js';
import { chooseDays } from './days.js';
import type { Goodness } from './goodness.js';
import { goodness } from './goodness.js';
import { mixedPoisson, quantileOf } from './mixed-poisson.js';
import type { SizeSum } from './party-size.js';
import { sizesCounted, sizesFromSums } from './party-size.js';
import type { Outcome } from './flaw.js';
import { fail, succeed } from './flaw.js';
import type { Tally, TillDay } from './tally.js';

/** With fewer days the spread between them cannot be told from chance. */
export const FEWEST_DAYS = 8;

/** The share of days between the two ends of a drawn band. */
const BAND = 0.9;

interface SlotFit {
  /** When the slot starts, HH:MM. */
  readonly starts: string;
  /** Expected parties: the mean of the days. */
  readonly parties: number;
  readonly standardError: number;
  /** Ends of the band that holds nine days in ten: as observed, and as the fit has it. */
  readonly observed: { readonly low: number; readonly high: number };
  readonly fitted: { readonly low: number; readonly high: number };
}

interface DayTotal {
  readonly date: string;
  readonly parties: number;
}

export interface GroupShare {
  /** Drinks of the base scenario; more than one where the till does not tell them apart. */
  readonly drinks: readonly string[];
  readonly items: readonly string[];
  readonly count: number;
  /** Of all drinks. */
  readonly share: number;
}

/** What a till export says of one kind of day: plain data, all that the summary, the drawing and the new scenario need. */
export interface TillFit {
  /** Name of the export, without folders. */
  readonly file: string;
  /** Kind of day in words. */
  readonly kind: string;
  /** First and last day used, year-month-day. */
  readonly from: string;
  readonly to: string;
  readonly days: number;
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly slotMinutes: number;
  readonly slots: readonly SlotFit[];
  readonly partiesADay: { readonly mean: number; readonly low: number; readonly high: number };
  readonly dayFactor: DayFactor;
  /** Shares of parties of 1, 2, 3 … guests with a drink each. */
  readonly partySize: readonly number[];
  /** How the sizes were come by: tickets seen one by one, or worked out from sums by slot. */
  readonly sizesBy: 'tickets' | 'sums';
  readonly drinksAParty: number;
  readonly groups: readonly GroupShare[];
  readonly totals: readonly DayTotal[];
  readonly goodness: Goodness;
  readonly chosen: Omit<ChosenDays, 'used'>;
  readonly reading: Omit<Tally, 'days'> & { readonly daysInExport: number };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function sizeCounts(days: readonly TillDay[]): number[] {
  const counts: number[] = [];
  for (const { sizes } of days) {
    sizes.forEach((tickets, size) => {
      counts[size] = (counts[size] ?? 0) + tickets;
    });
  }
  return Array.from(counts, (count) => count ?? 0);
}

function sizeSums(days: readonly TillDay[]): SizeSum[] {
  const joined = new Map<string, { parties: number; drinks: number; slots: number }>();
  for (const { parties, drinks } of days) {
    parties.forEach((count, slot) => {
      if (count === 0) return;
      const key = `${count} ${drinks[slot]}`;
      const entry = joined.get(key) ?? { parties: count, drinks: drinks[slot]!, slots: 0 };
      entry.slots += 1;
      joined.set(key, entry);
    });
  }
  return [...joined.values()];
}

function tooFewDays(map: TillMap, chosen: ChosenDays): Outcome<never> {
  const left = [
    ...(chosen.partial.length > 0 ? [`${chosen.partial.length} partial`] : []),
    ...(chosen.excepted.length > 0 ? [`${chosen.excepted.length} excepted`] : []),
    ...(chosen.otherKind > 0 ? [`${chosen.otherKind} of another kind`] : []),
  ];
  const without = left.length > 0 ? `, with ${left.join(', ')} left out` : '';
  return fail({
    about: 'map',
    path: ['days'],
    value: undefined,
    rule: `fits ${chosen.used.length} day${chosen.used.length === 1 ? '' : 's'} of the export (${map.days.name}${without}), but under ${FEWEST_DAYS} days the difference between days cannot be told from chance`,
    remedy: 'export a longer period, or include more days',
  });
}

/**
 * Fit the kind of day that the map chooses.
 *
 * @param file Name of the export, for the record.
 * Refused: fewer than eight such days, or none with a drink in the hours.
 */
export function fitTill(tally: Tally, map: TillMap, file: string): Outcome<TillFit> {
  const chosen = chooseDays(tally, map);
  const { used, ...leftOut } = chosen;
  if (used.length < FEWEST_DAYS) return tooFewDays(map, chosen);
  const totals = used.map((day) => ({ date: isoDate(day.day), parties: sum(day.parties) }));
  const parties = sum(totals.map((total) => total.parties));
  if (parties === 0) {
    return fail({
      about: 'map',
      path: ['drinks'],
      value: undefined,
      rule: `are on no ticket of these days between ${clock(map.fromMinute)} and ${clock(map.toMinute)}`,
      remedy: 'check the names against the items of the export, and the hours',
    });
  }

  const dayFactor = fitDayFactor(totals.map((total) => total.parties));
  const tail = (1 - BAND) / 2;
  const slots = used[0]!.parties.map((_, slot): SlotFit => {
    const counts = used.map((day) => day.parties[slot]!);
    const { mean, standardError } = meanWithInterval(counts);
    const chances = mixedPoisson(mean, dayFactor.cv);
    const seen = Array.from(
      { length: Math.max(...counts) + 1 },
      (_, parties) => counts.filter((count) => count === parties).length / counts.length,
    );
    return {
      starts: clock(map.fromMinute + slot * map.slotMinutes),
      parties: mean,
      standardError: standardError ?? 0,
      observed: { low: quantileOf(seen, tail), high: quantileOf(seen, 1 - tail) },
      fitted: { low: quantileOf(chances, tail), high: quantileOf(chances, 1 - tail) },
    };
  });
  const drinks = sum(used.map((day) => sum(day.drinks)));
  const aDay = meanWithInterval(totals.map((total) => total.parties));
  const { days: daysInExport, ...reading } = tally;
  return succeed({
    file,
    kind: map.days.name,
    from: totals[0]!.date,
    to: totals[totals.length - 1]!.date,
    days: used.length,
    fromMinute: map.fromMinute,
    toMinute: map.toMinute,
    slotMinutes: map.slotMinutes,
    slots,
    partiesADay: { mean: aDay.mean, low: aDay.low ?? aDay.mean, high: aDay.high ?? aDay.mean },
    dayFactor,
    partySize:
      tally.form === 'tickets' ? sizesCounted(sizeCounts(used)) : sizesFromSums(sizeSums(used)),
    sizesBy: tally.form === 'tickets' ? 'tickets' : 'sums',
    drinksAParty: drinks / parties,
    groups: map.groups.map((group, at) => {
      const count = sum(used.map((day) => day.byGroup[at]!));
      return { ...group, count, share: count / drinks };
    }),
    totals,
    goodness: goodness(
      used.map((day) => day.parties),
      dayFactor.cv,
    ),
    chosen: leftOut,
    reading: { ...reading, daysInExport: daysInExport.size },
  });
}
