import type { ShareInterval } from '../statistics/exact-binomial-interval.js';
import { leastSampleForBound } from '../statistics/least-sample-for-bound.js';

/** The cost is steady when its standard error, as a share of it, is below this. */
export const STEADY = 0.005;

/** What the person who buys should know before trusting the stock. */
export interface SizingWarning {
  readonly code: 'promise-missed' | 'cost-unsteady' | 'few-days' | 'not-cheapest';
  readonly message: string;
  /** Nothing in the scenario is at fault. */
  readonly path: '';
}

export interface SizingDoubts {
  readonly level: number;
  /** Days chosen on, how many of them could be missed and how many are. */
  readonly days: number;
  readonly k: number;
  readonly missed: number;
  /** The level on fresh days; null if there are none. */
  readonly kept: ShareInterval | null;
  readonly costError: number | null;
  /** By how much of its cost the stock might be dearer than the cheapest. */
  readonly gap: number;
}

/** Everything that is doubtful about a sized stock, worst first. */
export function sizingWarnings({
  level,
  days,
  k,
  missed,
  kept,
  costError,
  gap,
}: SizingDoubts): SizingWarning[] {
  const warnings: SizingWarning[] = [];
  const warn = (code: SizingWarning['code'], message: string) =>
    warnings.push({ code, message, path: '' });
  if (kept !== null && kept.high < level) {
    warn(
      'promise-missed',
      `${percent(level)} of rushes were promised; on fresh days ${percent(kept.share)} kept it (${percent(kept.low)} to ${percent(kept.high)}): choose on more days, or promise less`,
    );
  }
  if (missed > k) {
    warn(
      'promise-missed',
      `no stock that was tried kept the promise on the days it was chosen on: ${missed} of ${days} ran out of something, ${k} may`,
    );
  }
  const enough = leastSampleForBound(level);
  if (days < enough) {
    warn(
      'few-days',
      `${days} days say little about a level of ${percent(level)}: from ${enough} days on the largest need seen is an upper bound with 95 % confidence`,
    );
  }
  if (costError !== null && costError >= STEADY) {
    warn(
      'cost-unsteady',
      `another ${days} days would give a cost that differs by about ±${percent(costError)}: choose on more days for a steadier one`,
    );
  }
  if (gap > 0) {
    warn(
      'not-cheapest',
      `the search for the cheapest stock was given up; another that keeps the promise may cost up to ${percent(gap)} less`,
    );
  }
  return warnings;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
