/**
 * Which days of an export are fitted, and which are left out and why.
 */
import type { TillMap } from './compile-map.js';
import { clock, isoDate, weekdayOf } from './clock.js';
import { kindOfDay } from './kinds-of-day.js';
import type { Tally, TillDay } from './tally.js';

/**
 * A spell without any ticket in which the other days take so many makes a day partial. By chance alone
 * such a silence has a probability of e⁻¹² on an ordinary day and e⁻⁶ on one half as busy.
 */
const SILENT_TICKETS = 12;

interface PartialDay {
  readonly date: string;
  /** The longest silence, HH:MM. */
  readonly from: string;
  readonly to: string;
  /** Tickets that the days of this kind take in that spell on average. */
  readonly expected: number;
}

export interface ChosenDays {
  readonly used: readonly TillDay[];
  readonly partial: readonly PartialDay[];
  /** Days of the kind, from the first used to the last, without a single row: taken as closed. */
  readonly closed: number;
  /** Days that the map's list of exceptions takes out. */
  readonly excepted: readonly string[];
  /** Days with rows that are of another kind or outside the spells. */
  readonly otherKind: number;
}

/** The spell without tickets in which the most would have been expected. */
function longestSilence(
  tickets: readonly number[],
  usual: readonly number[],
): { from: number; to: number; expected: number } {
  let worst = { from: 0, to: 0, expected: 0 };
  let from = 0;
  let expected = 0;
  tickets.forEach((count, slot) => {
    if (count > 0) {
      from = slot + 1;
      expected = 0;
      return;
    }
    expected += usual[slot]!;
    if (expected > worst.expected) worst = { from, to: slot + 1, expected };
  });
  return worst;
}

/**
 * Choose the days the map asks for. Partial days are left out unless the map keeps them: they would pull
 * the mean down and push the spread between days up. A slot without rows on a trading day is a true zero.
 */
export function chooseDays(tally: Tally, map: TillMap): ChosenDays {
  const { weekdays, between, except, ofKinds } = map.days;
  const ofKind = (day: number): boolean =>
    (ofKinds === undefined || ofKinds.includes(kindOfDay(map.kinds, day))) &&
    weekdays.includes(weekdayOf(day)) &&
    (between.length === 0 || between.some((spell) => day >= spell.from && day <= spell.to));
  const kind = [...tally.days.values()]
    .filter(({ day }) => ofKind(day))
    .sort((one, other) => one.day - other.day);
  const open = kind.filter(({ day }) => !except.includes(day));
  const usual = Array.from(
    { length: (map.toMinute - map.fromMinute) / map.slotMinutes },
    (_, slot) => open.reduce((sum, day) => sum + day.tickets[slot]!, 0) / Math.max(1, open.length),
  );

  const partial: PartialDay[] = [];
  const used = open.filter((day) => {
    const silence = longestSilence(day.tickets, usual);
    if (map.keepPartialDays || silence.expected < SILENT_TICKETS) return true;
    const at = (slot: number): string => clock(map.fromMinute + slot * map.slotMinutes);
    partial.push({
      date: isoDate(day.day),
      from: at(silence.from),
      to: at(silence.to),
      expected: silence.expected,
    });
    return false;
  });

  let closed = 0;
  const last = kind[kind.length - 1]?.day ?? -1;
  for (let day = kind[0]?.day ?? 0; day <= last; day += 1) {
    if (ofKind(day) && !except.includes(day) && !tally.days.has(day)) closed += 1;
  }
  return {
    used,
    partial,
    closed,
    excepted: kind.filter(({ day }) => except.includes(day)).map(({ day }) => isoDate(day)),
    otherKind: tally.days.size - kind.length,
  };
}
