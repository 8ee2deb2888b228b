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
  /** The confidence with which the level was to be held; null where none was asked for. */
  readonly assured: number | null;
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
  assured,
  costError,
  gap,
}: SizingDoubts): SizingWarning[] {
  const warnings: SizingWarning[] = [];
  const warn = (code: SizingWarning['code'], message: string) =>
    warnings.push({ code, message, path: '' });
  if (kept !== null && assured !== null) {
    if (kept.low < level)
      warn(
        'promise-missed',
        `no stock tried holds ${percent(level)} with ${percent(assured)} confidence: the last one is at or above ${percent(kept.low)} with it; ask for less, or choose on more days`,
      );
  } else if (kept !== null && kept.high < level) {
    warn(
      'promise-missed',
      `on the days it was tested on, nothing ran out on ${percent(kept.share)} (${percent(kept.low)} to ${percent(kept.high)}), less than the ${percent(level)} asked for: choose on more days, or ask for less`,
    );
  }
  if (missed > k) {
    warn(
      'promise-missed',
      `no stock tried meets the service level even on the days it was chosen on: something ran out on ${missed} of ${count(days)}, and at most ${k} may`,
    );
  }
  const enough = leastSampleForBound(level);
  if (days < enough) {
    warn(
      'few-days',
      `${count(days)} ${days === 1 ? 'day is' : 'days are'} too few for a level of ${percent(level)}: use at least ${count(enough)} days, from which the largest need seen is an upper bound with 95 % confidence`,
    );
  }
  if (costError !== null && costError >= STEADY) {
    warn(
      'cost-unsteady',
      `with another ${count(days)} days the cost could differ by about ${percent(costError)} either way: use more days for a steadier figure`,
    );
  }
  if (gap > 0) {
    warn(
      'not-cheapest',
      `the search for the cheapest stock stopped early; another stock that meets the service level may cost up to ${percent(gap)} less`,
    );
  }
  return warnings;
}

/** With commas, without `toLocaleString`: the engine takes milliseconds to load what it knows of languages. */
const count = (days: number): string => String(days).replace(/\B(?=(?:\d{3})+$)/g, ',');

/** With a decimal; a share so near to all that it would read as all keeps its digits. */
function percent(share: number): string {
  const rounded = (100 * share).toFixed(1);
  return `${rounded === '100.0' && share < 1 ? Number((100 * share).toPrecision(8)) : rounded} %`;
}
