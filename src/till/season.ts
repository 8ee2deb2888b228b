/** Whether days grow or fall over the weeks, and whether months differ: on means of whole weeks, so that one odd day counts little. */
import { mean } from 'simple-statistics';
import { holm } from '../statistics/holm.js';
import { isoDate } from './clock.js';
import { differ, trendOf } from './trend.js';

/** A day's parties as a share of the mean of its kind. */
export interface DayLevel {
  readonly day: number;
  readonly level: number;
}

/** Weeks with a day of the export that a trend, or months, need before they are tested. */
export const WEEKS_FOR_TREND = 8;
export const WEEKS_FOR_SEASON = 26;
/** What comes back each year needs two of them. */
const WEEKS_OF_TWO_YEARS = 104;
const RECENT_WEEKS = 4;

export interface Season {
  /** Weeks with a day, and from the first to the last. */
  readonly weeks: number;
  readonly span: number;
  readonly trend: {
    /** Change a week, as a share of the mean. */
    readonly aWeek: number;
    readonly p: number;
    readonly found: boolean;
    /** The last weeks, as a multiple of the mean of all. */
    readonly recent: number;
  } | null;
  readonly months: {
    readonly p: number;
    readonly found: boolean;
    /** Month, 0 for January, and its level as a multiple of the mean. */
    readonly busiest: { readonly month: number; readonly times: number };
    /** Two years or more were seen. */
    readonly returns: boolean;
  } | null;
}

/** @param days at least one */
export function seasonOf(days: readonly DayLevel[]): Season {
  const byWeek = new Map<number, number[]>();
  for (const { day, level } of days) {
    const week = Math.floor((day + 3) / 7);
    byWeek.set(week, [...(byWeek.get(week) ?? []), level]);
  }
  const weeks = [...byWeek]
    .map(([week, levels]) => ({ week, level: mean(levels) }))
    .toSorted((one, other) => one.week - other.week);
  const span = weeks.at(-1)!.week - weeks[0]!.week + 1;
  const all = mean(weeks.map(({ level }) => level));
  const line =
    weeks.length < WEEKS_FOR_TREND
      ? null
      : trendOf(weeks.map(({ week, level }) => ({ day: 7 * week, parties: level })));
  const middle = mean(weeks.map(({ week }) => week));
  const byMonth = Array.from({ length: 12 }, (): number[] => []);
  for (const { week, level } of weeks) {
    // What a straight line explains is not a season; a week belongs to the month of its Thursday.
    const flat = level - (line?.aWeek ?? 0) * (week - middle);
    byMonth[Number(isoDate(7 * week).slice(5, 7)) - 1]!.push(flat);
  }
  const told = weeks.length < WEEKS_FOR_SEASON ? null : differ(byMonth);
  const chances = [line, told].flatMap((one) => (one === null ? [] : [one.p]));
  const found = holm(chances);
  const levels = byMonth.map((month) => (month.length < 2 ? 0 : mean(month)));
  const month = levels.indexOf(Math.max(...levels));
  return {
    weeks: weeks.length,
    span,
    trend:
      line === null
        ? null
        : {
            aWeek: line.shareAWeek,
            p: line.p,
            found: found[0]!,
            recent: mean(weeks.slice(-RECENT_WEEKS).map(({ level }) => level)) / all,
          },
    months:
      told === null
        ? null
        : {
            p: told.p,
            found: found.at(-1)!,
            busiest: { month, times: levels[month]! / all },
            returns: span >= WEEKS_OF_TWO_YEARS,
          },
  };
}
