/** What recorded days say of a promise: its share of safe days with an interval for few, correlated days, and causes. */
import { square } from '../../elementary/powers.js';
import { holm } from '../../statistics/holm.js';
import { weekdayOf } from '../../till/clock.js';
import { testTable } from '../../till/goodness.js';
import type { TillDay } from '../../till/tally.js';
import { differ, trendOf, widerSpread, type Trend } from '../../till/trend.js';
import type { Cause, CauseName } from './answer.js';

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

const total = ({ parties }: TillDay): number => parties.reduce((sum, one) => sum + one, 0);

/** @param tried the last of all days */
export function causesOf(
  all: readonly TillDay[],
  tried: readonly TillDay[],
): { causes: Cause[]; trend: Trend | null } {
  const trend = trendOf(all.map((day) => ({ day: day.day, parties: total(day) })));
  const tested: [CauseName, number][] = [];
  if (trend !== null) tested.push(['drift', trend.p]);
  // Each about its own mean, so that a drift is not taken for a wider spread.
  const earlier = all.slice(0, all.length - tried.length);
  const spread = widerSpread(earlier.map(total), tried.map(total));
  if (spread !== null) tested.push(['spread', spread]);
  const weekdays = differ(
    Array.from({ length: 7 }, (_, weekday) =>
      all.filter(({ day }) => weekdayOf(day) === weekday).map(total),
    ),
  );
  if (weekdays !== null) tested.push(['weekdays', weekdays.p]);
  const shape = testTable(tried.map(({ parties }) => parties));
  if (shape !== null) tested.push(['shape', shape.p]);
  const found = holm(
    tested.map(([, p]) => p),
    ALPHA,
  );
  const causes = tested.map(([cause, p], at): Cause => ({ cause, p, found: found[at]! }));
  return { causes: causes.toSorted((one, other) => one.p - other.p), trend };
}
