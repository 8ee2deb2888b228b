/** Whether days change: a trend in the totals, and kinds of day that differ. */
import { mean } from 'simple-statistics';
import { square } from '../elementary/powers.js';
import { regularisedIncompleteBeta } from '../statistics/regularised-incomplete-beta.js';

export interface DayCount {
  /** Days since 1970-01-01. */
  readonly day: number;
  readonly parties: number;
}

export interface Trend {
  /** Parties more a day with every week, and as a share of the mean. */
  readonly aWeek: number;
  readonly shareAWeek: number;
  /** Chance of a slope as steep by luck alone; two-sided. */
  readonly p: number;
}

/** Chance that Student's t is at least as far from 0 (DLMF 8.17.5). */
const farAsT = (t: number, freedom: number): number =>
  regularisedIncompleteBeta(freedom / (freedom + square(t)), freedom / 2, 0.5);

/** Chance that F is at least as large. */
const largeAsF = (f: number, between: number, within: number): number =>
  regularisedIncompleteBeta(within / (within + between * f), within / 2, between / 2);

/** A straight line through the totals by least squares; null for fewer than four days. */
export function trendOf(days: readonly DayCount[]): Trend | null {
  const n = days.length;
  if (n < 4) return null;
  const [x, y] = [mean(days.map(({ day }) => day)), mean(days.map(({ parties }) => parties))];
  const sum = (of: (one: DayCount) => number): number =>
    days.reduce((total, one) => total + of(one), 0);
  const sxx = sum(({ day }) => square(day - x));
  if (sxx === 0 || y === 0) return null;
  const slope = sum(({ day, parties }) => (day - x) * (parties - y)) / sxx;
  const rest = sum(({ day, parties }) => square(parties - y - slope * (day - x)));
  const error = Math.sqrt(rest / (n - 2) / sxx);
  return {
    aWeek: 7 * slope,
    shareAWeek: (7 * slope) / y,
    p: error === 0 ? (slope === 0 ? 1 : 0) : farAsT(slope / error, n - 2),
  };
}

export interface Differ {
  /** Chance of means as far apart by luck alone. */
  readonly p: number;
  readonly means: readonly number[];
}

/** One-way analysis of variance of groups of totals (R. Fisher, 1925); null where there are not two groups of two. */
export function differ(groups: readonly (readonly number[])[]): Differ | null {
  const used = groups.filter((group) => group.length >= 2);
  if (used.length < 2) return null;
  const all = used.flat();
  const grand = mean([...all]);
  const means = used.map((group) => mean([...group]));
  const between = used.reduce(
    (sum, group, at) => sum + group.length * square(means[at]! - grand),
    0,
  );
  const within = used.reduce(
    (sum, group, at) => sum + group.reduce((total, one) => total + square(one - means[at]!), 0),
    0,
  );
  const [b, w] = [used.length - 1, all.length - used.length];
  return {
    p: within === 0 ? (between === 0 ? 1 : 0) : largeAsF(between / b / (within / w), b, w),
    means,
  };
}

/** Chance that later totals vary so much more than earlier ones by luck alone: the ratio of variances, F. Null below three of each. */
export function widerSpread(earlier: readonly number[], later: readonly number[]): number | null {
  if (earlier.length < 3 || later.length < 3) return null;
  const variance = (values: readonly number[]): number => {
    const middle = mean([...values]);
    return values.reduce((sum, one) => sum + square(one - middle), 0) / (values.length - 1);
  };
  const before = variance(earlier);
  return before === 0
    ? null
    : largeAsF(variance(later) / before, later.length - 1, earlier.length - 1);
}
