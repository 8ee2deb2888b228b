/** What recorded days say of a promise: its share of safe days with an interval for few, correlated days, and causes. */
import { square } from '../../elementary/powers.js';
import { holm } from '../../statistics/holm.js';
import { weekdayOf } from '../../till/clock.js';
import { testTable } from '../../till/goodness.js';
import type { TillDay } from '../../till/tally.js';
import { differ, trendOf, widerSpread, type Trend } from '../../till/trend.js';
import { seasonOf } from '../../till/season.js';
import type { Backtest, Cause, CauseName } from './answer.js';

const ALPHA = 0.05;

/**
 * How many independent days these are worth, by the correlation of one day's total with the next (a first-order
 * autoregression: G. Bayley and J. Hammersley, JRSS Supplement 8, 1946). A negative correlation is not counted.
 */
export function effectiveDays(totals: readonly number[]): number {
  const n = totals.length;
  const mean = totals.reduce((sum, one) => sum + one, 0) / n;
  const variance = totals.reduce((sum, one) => sum + square(one - mean), 0);
  if (n < 3 || variance === 0) return n;
  const next = totals
    .slice(1)
    .reduce((sum, one, at) => sum + (one - mean) * (totals[at]! - mean), 0);
  const correlation = Math.max(0, Math.min(0.9, next / variance));
  return Math.max(1, (n * (1 - correlation)) / (1 + correlation));
}

/** A day of the till, its kind, and its parties as if all days were of one level. */
export interface Levelled {
  readonly day: TillDay;
  readonly kind: string;
  readonly level: number;
}

interface Causes {
  readonly causes: Cause[];
  readonly trend: Trend | null;
  readonly season: Backtest['season'];
}

/** @param tried how many of them were tried, the last */
export function causesOf(all: readonly Levelled[], tried: number): Causes {
  const levels = all.map(({ level }) => level);
  const trend = trendOf(all.map(({ day, level }) => ({ day: day.day, parties: level })));
  const tested: [CauseName, number][] = [];
  if (trend !== null) tested.push(['drift', trend.p]);
  // Each about its own mean, so that a drift is not taken for a wider spread.
  const spread = widerSpread(levels.slice(0, all.length - tried), levels.slice(-tried));
  if (spread !== null) tested.push(['spread', spread]);
  const weekdays = differ(
    Array.from({ length: 7 }, (_, weekday) =>
      all.filter(({ day }) => weekdayOf(day.day) === weekday).map(({ level }) => level),
    ),
  );
  if (weekdays !== null) tested.push(['weekdays', weekdays.p]);
  const shape = shapeChance(all.slice(-tried));
  if (shape !== null) tested.push(['shape', shape]);
  const { months } = seasonOf(all.map(({ day, level }) => ({ day: day.day, level })));
  if (months !== null) tested.push(['season', months.p]);
  const found = holm(
    tested.map(([, p]) => p),
    ALPHA,
  );
  const causes = tested.map(([cause, p], at): Cause => ({ cause, p, found: found[at]! }));
  return {
    causes: causes.toSorted((one, other) => one.p - other.p),
    trend,
    season: months === null ? null : { ...months.busiest, p: months.p },
  };
}

/** Chance that days of each kind differ so in when parties come; of several kinds the smallest, times their number. */
function shapeChance(tried: readonly Levelled[]): number | null {
  const kinds = [...new Set(tried.map(({ kind }) => kind))];
  const chances = kinds.flatMap((kind) => {
    const own = tried.filter((one) => one.kind === kind);
    const told = testTable(own.map(({ day }) => day.parties));
    return told === null ? [] : [told.p];
  });
  return chances.length === 0 ? null : Math.min(1, chances.length * Math.min(...chances));
}
