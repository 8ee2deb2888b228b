/**
 * Whether one kind of day differs from another beyond chance, by shuffling which day is of which kind: if the kinds are
 * one, every deal of the days is as likely as the one seen (R. Fisher, The Design of Experiments, 1935). Whole days are
 * dealt, so that their own levels and whims count as chance.
 */
import { mean, sampleVariance } from 'simple-statistics';
import { exp } from '../elementary/exp.js';
import { square } from '../elementary/powers.js';
import { Stream, streamKey } from '../engine/streams.js';
import { studentTQuantile } from '../statistics/student-t-quantile.js';
import { fitDayFactor } from './day-factor.js';
import type { TillDay } from './tally.js';

/** Parties a day; when they come; what they drink; how many drinks a party has; how much days differ. */
export const aspects = ['volume', 'shape', 'mix', 'sizes', 'spread'] as const;
export type Aspect = (typeof aspects)[number];

/** Chances of a difference as large by luck alone; none where there is nothing to compare. */
export type Chances = Readonly<Partial<Record<Aspect, number>>>;

const DEALS = 1999;
/** A difference smaller than this part of itself is rounding. */
const DUST = 1 + 1e-9;

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);
export const partiesOf = ({ parties }: TillDay): number => sum(parties);

/** Adds up lists of all days and of those dealt to the first kind. */
function sums(lists: readonly (readonly number[])[]) {
  const all = lists[0]!.map((_, at) => lists.reduce((total, list) => total + list[at]!, 0));
  const dealt = (first: readonly number[]): number[] => {
    const found = all.map(() => 0);
    for (const day of first) lists[day]!.forEach((one, at) => (found[at]! += one));
    return found;
  };
  return { all, dealt };
}

type Statistic = (first: readonly number[]) => number;

/** Pearson's X² of two rows of counts. */
function table(lists: readonly (readonly number[])[]): Statistic | null {
  const { all, dealt } = sums(lists);
  const n = sum(all);
  if (all.filter((count) => count > 0).length < 2) return null;
  return (first) => {
    const counts = dealt(first);
    const own = sum(counts);
    if (own === 0 || own === n) return 0;
    return (
      counts.reduce(
        (x2, count, at) =>
          x2 + (all[at]! > 0 ? square(count - (own * all[at]!) / n) / all[at]! : 0),
        0,
      ) /
      (own * (n - own))
    );
  };
}

/** The square of Welch's t: means of values whose spreads may differ. */
function welch(values: readonly number[]): Statistic {
  const { all, dealt } = sums(values.map((one) => [one, one * one]));
  const part = (n: number, [x, xx]: readonly number[]) => ({
    mean: x! / n,
    error: Math.max(0, (xx! - (x! * x!) / n) / (n - 1) / n),
  });
  return (first) => {
    const own = dealt(first);
    const n = first.length;
    const a = part(n, own);
    const b = part(values.length - n, [all[0]! - own[0]!, all[1]! - own[1]!]);
    return square(a.mean - b.mean) / (a.error + b.error + 1e-12);
  };
}

/** The squared difference of two ratios of sums over its variance, but for a factor. */
function ratio(pairs: readonly (readonly [number, number])[]): Statistic | null {
  const { all, dealt } = sums(pairs);
  if (pairs.every(([above, below]) => above === below)) return null;
  return (first) => {
    const [above, below] = dealt(first) as [number, number];
    const rest = [all[0]! - above, all[1]! - below] as const;
    if (below === 0 || rest[1] === 0) return 0;
    return square(above / below - rest[0] / rest[1]) / (1 / below + 1 / rest[1]);
  };
}

/** How far the larger of two variances is above the smaller, of values about 0. */
function variances(values: readonly number[]): Statistic {
  const { all, dealt } = sums(values.map((one) => [one * one]));
  return (first) => {
    const own = dealt(first)[0]! / first.length;
    const rest = (all[0]! - dealt(first)[0]!) / (values.length - first.length);
    return own === 0 || rest === 0 ? Infinity : Math.max(own / rest, rest / own);
  };
}

/**
 * Totals about the mean of their kind, in the standard deviations that one day factor for both would give them: so that
 * neither the mean nor the luck of small counts is taken for a spread.
 */
function residuals(groups: readonly (readonly TillDay[])[]): number[] {
  const found = groups.map((days) => {
    const totals = days.map(partiesOf);
    return { totals, mean: mean(totals), factor: fitDayFactor(totals).cv };
  });
  const days = sum(groups.map((group) => group.length));
  const common = sum(found.map(({ factor, totals }) => square(factor) * totals.length)) / days;
  return found.flatMap(({ totals, mean: middle }) => {
    const deviation =
      Math.sqrt(middle + common * middle * middle) * Math.sqrt(1 - 1 / totals.length);
    return totals.map((one) => (one - middle) / deviation);
  });
}

/**
 * @param kind at least two days, as `base`, not all without parties
 * @param seed names the deals: the same days give the same chances
 */
export function compareKinds(
  kind: readonly TillDay[],
  base: readonly TillDay[],
  seed: string,
  deals = DEALS,
): Chances {
  const days = [...kind, ...base];
  const statistics: Readonly<Record<Aspect, Statistic | null>> = {
    volume: welch(days.map(partiesOf)),
    shape: table(days.map(({ parties }) => parties)),
    mix: table(days.map(({ byGroup }) => byGroup)),
    sizes: ratio(days.map((day) => [sum(day.drinks), partiesOf(day)] as const)),
    spread: variances(residuals([kind, base])),
  };
  const used = aspects.flatMap((aspect) => {
    const statistic = statistics[aspect];
    return statistic === null ? [] : [{ aspect, statistic, asFar: 1 }];
  });
  const seen = kind.map((_, at) => at);
  const observed = used.map(({ statistic }) => statistic(seen));
  const stream = new Stream(streamKey(seed, 'deals of days'));
  const deck = days.map((_, at) => at);
  for (let deal = 0; deal < deals; deal += 1) {
    for (let at = 0; at < kind.length; at += 1) {
      const other = at + Math.floor(stream.uniform() * (deck.length - at));
      [deck[at], deck[other]] = [deck[other]!, deck[at]!];
    }
    const first = deck.slice(0, kind.length);
    used.forEach((one, at) => {
      if (one.statistic(first) * DUST >= observed[at]!) one.asFar += 1;
    });
  }
  return Object.fromEntries(used.map(({ aspect, asFar }) => [aspect, asFar / (deals + 1)]));
}

/**
 * How many times the parties of `base` come on a day of the kind, with a 95 % interval: relative errors of both means,
 * squares added, on the scale of the logarithm, Student's t with Welch's degrees of freedom (B. Welch, Biometrika 34, 1947).
 */
export function timesThe(
  kind: readonly TillDay[],
  base: readonly TillDay[],
): { readonly times: number; readonly low: number; readonly high: number } {
  const part = (days: readonly TillDay[]) => {
    const totals = days.map(partiesOf);
    const middle = mean(totals);
    const relative = sampleVariance(totals) / totals.length / square(middle);
    return { middle, relative, free: days.length - 1 };
  };
  const [a, b] = [part(kind), part(base)];
  const times = a.middle / b.middle;
  const all = a.relative + b.relative;
  if (all === 0) return { times, low: times, high: times };
  const freedom = square(all) / (square(a.relative) / a.free + square(b.relative) / b.free);
  const reach = exp(studentTQuantile(0.975, freedom) * Math.sqrt(all));
  return { times, low: times / reach, high: times * reach };
}
