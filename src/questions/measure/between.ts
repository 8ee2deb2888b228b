/** What mornings say of each input, side by side: where they differ by more than chance. */
import { atan2 } from '../../elementary/angles.js';
import { log } from '../../elementary/log.js';
import { chanceOfDifference, type MorningSays } from '../../measuring/between-mornings.js';
import { holm } from '../../statistics/holm.js';
import type { Difference } from './answer.js';
import type { Found } from './found.js';

const NORMAL = 1.96;

export interface Morning {
  readonly date: string;
  /** What this morning alone says. */
  readonly found: readonly Found[];
}

export interface Differences {
  /** Inputs that two mornings or more give. */
  readonly compared: number;
  readonly differ: readonly Difference[];
}

type Told = Exclude<Found, { readonly why: string }>;

/** All inputs are tested together: where nothing differs, some are named in at most 5 % of cases (Holm). */
export function differencesBetween(mornings: readonly Morning[]): Differences {
  const paths = [...new Set(mornings.flatMap(({ found }) => found.map(({ path }) => path)))];
  const tested = paths.flatMap((path): Difference[] => {
    const told = mornings.flatMap(({ date, found }) => {
      const one = found.find((each): each is Told => each.path === path && !('why' in each));
      const says = one === undefined ? null : saysOf(one);
      return one === undefined || says === null ? [] : [{ date, one, says }];
    });
    if (told.length < 2) return [];
    return [
      {
        path,
        unit: told[0]!.one.unit,
        p: chanceOfDifference(told.map(({ says }) => says)),
        mornings: told.map(({ date, one: { mean } }) => ({ date, mean })),
      },
    ];
  });
  const stands = holm(tested.map(({ p }) => p));
  return { compared: tested.length, differ: tested.filter((_, at) => stands[at]) };
}

/** Shares on the scale of the arcsine, on which their error hangs on the count alone; times and sizes on that of the logarithm. */
function saysOf({ unit, mean, low, high, n }: Told): MorningSays | null {
  if (unit === 'share')
    return {
      value: atan2(Math.sqrt(mean), Math.sqrt(Math.max(0, 1 - mean))),
      standardError: 1 / (2 * Math.sqrt(n)),
    };
  if (low === null || high === null || low <= 0 || high <= low) return null;
  return { value: log(mean), standardError: log(high / low) / (2 * NORMAL) };
}

/** Where mornings differ, the range of what is pooled holds what each of them says. */
export function rangeOverMornings(one: Found, differences: Differences | null): Found {
  if ('why' in one || one.low === null || one.high === null || one.written === undefined)
    return one;
  const differs = differences?.differ.find(({ path }) => path === one.path);
  if (differs === undefined) return one;
  const means = differs.mornings.map(({ mean }) => mean);
  const [low, high] = [Math.min(one.low, ...means), Math.max(one.high, ...means)];
  return { ...one, low, high, range: [one.written(low), one.written(high)] };
}
