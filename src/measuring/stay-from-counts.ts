/**
 * How long parties stay, from counts of those who come and go, without following anyone.
 *
 * Little's law (J. Little, Operations Research 9, 1961): the party-minutes spent in the room are the parties times
 * their mean stay. The counts give the party-minutes: each party that came adds the time to the end of the morning,
 * each that went takes its own away, each at the middle of its slot. Parties that still sit at the end have not had their whole stay:
 * the mean is that at which the expected party-minutes up to the end, E min(stay, time left), are those counted. With
 * nobody left at the end this is Little's law itself. Several mornings are one sum: their party-minutes and what is expected of them.
 */
import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import { exp } from '../elementary/exp.js';
import { log, log1p } from '../elementary/log.js';
import { square } from '../elementary/powers.js';
import { studentTQuantile } from '../statistics/student-t-quantile.js';

export interface Counts {
  readonly slotMinutes: number;
  /** Parties that sat down with their drinks, and parties that left, by slot. */
  readonly came: readonly number[];
  readonly went: readonly number[];
  /** Parties that sat there when the count began. */
  readonly before: number;
}

export interface Stay {
  /** Parties that came. */
  readonly parties: number;
  /** Minutes; `low` and `high` are the 95 % interval. */
  readonly mean: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
  /** Party-minutes over parties, as they stand: the same where nobody is left at the end. */
  readonly plain: number;
}

const LONGEST_MEAN = 24 * 60;
const CONFIDENCE = 0.95;

/** Mean and second moment of min(stay, most), stays lognormal. */
export function cutMoments(
  mean: number,
  cv: number,
  most: number,
): { first: number; second: number } {
  if (most <= 0) return { first: 0, second: 0 };
  const spread = log1p(square(cv));
  const sd = Math.sqrt(spread);
  const middle = log(mean) - spread / 2;
  const beyond = 1 - lognormalCdf(most, middle, sd);
  return {
    first: mean * lognormalCdf(most, middle + spread, sd) + most * beyond,
    second:
      exp(2 * middle + 2 * spread) * lognormalCdf(most, middle + 2 * spread, sd) +
      square(most) * beyond,
  };
}

/**
 * @param cv of the stays, from timed ones or as assumed
 * @param timed how many timed stays the cv rests on; null: it is assumed
 * @returns null where nobody came, nobody was seen to leave, or the counts say more than they can hold
 */
export function stayFromCounts(
  mornings: readonly Counts[],
  cv: number,
  timed: number | null,
): Stay | null {
  const over = (of: (counts: Counts) => number): number => sum(mornings.map(of));
  const parties = over(({ came }) => sum(came));
  const gone = over(({ went }) => sum(went));
  if (parties === 0 || gone === 0) return null;
  const minutes = over((counts) => {
    const dot = (list: readonly number[]): number =>
      sum(list.map((count, slot) => count * leftAt(counts, slot)));
    return counts.before * endOf(counts) + dot(counts.came) - dot(counts.went);
  });
  if (minutes <= 0) return null;
  // Who sits there already stays on for what is left of a stay: mean (1 + cv²)/2 of it, as seen at a moment.
  const expected = (mean: number): number =>
    over(
      (counts) =>
        counts.before * Math.min(endOf(counts), (mean * (1 + square(cv))) / 2) +
        sum(
          counts.came.map((count, slot) =>
            count === 0 ? 0 : count * cutMoments(mean, cv, leftAt(counts, slot)).first,
          ),
        ),
    );
  if (expected(LONGEST_MEAN) <= minutes) return null;
  let [low, high] = [0, LONGEST_MEAN];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (expected(middle) < minutes) low = middle;
    else high = middle;
  }
  const mean = (low + high) / 2;
  const step = mean * 1e-3;
  const slope = (expected(mean + step) - expected(mean - step)) / (2 * step);
  const ofStays = over((counts) =>
    counts.came.reduce(
      (total, count, slot) => {
        if (count === 0) return total;
        const { first, second } = cutMoments(mean, cv, leftAt(counts, slot));
        return total + count * (second - square(first));
      },
      counts.before * square(cv * mean),
    ),
  );
  // Where in its slot a party came or went is not known: uniform, variance slot²/12.
  const ofSlots = over(
    ({ came, went, slotMinutes }) => ((sum(came) + sum(went)) * square(slotMinutes)) / 12,
  );
  const standardError = Math.sqrt(ofStays + ofSlots) / slope;
  // The spread of the stays is itself an estimate: of the timed stays, where there are any.
  const freedom = Math.max(2, (timed ?? parties) - 1);
  const reach = (studentTQuantile((1 + CONFIDENCE) / 2, freedom) * standardError) / mean;
  return {
    parties,
    mean,
    standardError,
    low: mean * exp(-reach),
    high: mean * exp(reach),
    plain: minutes / parties,
  };
}

const endOf = ({ came, slotMinutes }: Counts): number => came.length * slotMinutes;
/** Minutes from the middle of a slot to the end of the count. */
const leftAt = (counts: Counts, slot: number): number =>
  endOf(counts) - (slot + 0.5) * counts.slotMinutes;
const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);
