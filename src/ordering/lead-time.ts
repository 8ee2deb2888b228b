/**
 * Time from ordering to delivery, as whole days with weights.
 *
 * The file gives a law of durations (constant, exponential, lognormal, gamma, or a list that was
 * measured). A spread is cut into days: a delivery within day d counts as d days. Measured times are
 * taken as they are, each with equal weight.
 */
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import { expm1 } from '../elementary/exp.js';
import { log, log1p } from '../elementary/log.js';
import { square } from '../elementary/powers.js';
import { meanMs, type DurationLaw } from '../engine/durations.js';

export const DAY_MS = 86_400_000;

/** One possible lead time and its probability; a list of them sums to 1. */
export interface WeightedDays {
  readonly days: number;
  readonly weight: number;
}

/** Weights below this are dropped (then scaled back to 1). */
const TAIL = 1e-9;

/** All lead times that can happen, in ascending order of days. */
export function leadTimes(law: DurationLaw): readonly WeightedDays[] {
  switch (law.law) {
    case 'constant':
      return [{ days: law.ms / DAY_MS, weight: 1 }];
    case 'measured':
      return measured(law.valuesMs);
    case 'exponential':
      return inWholeDays((day) => -expm1((-day * DAY_MS) / law.meanMs));
    case 'gamma':
      return inWholeDays(
        gammaCdf.factory(square(law.meanMs / law.sdMs), (law.meanMs * DAY_MS) / square(law.sdMs)),
      );
    case 'lognormal': {
      const spread = log1p(square(law.sdMs / law.meanMs));
      return inWholeDays(
        lognormalCdf.factory(log(law.meanMs / DAY_MS) - spread / 2, Math.sqrt(spread)),
      );
    }
  }
}

/** Mean lead time, days. */
export const meanLeadDays = (law: DurationLaw): number => meanMs(law) / DAY_MS;

/** The longest lead time worth planning for: the 99th percentile, days. */
export function longestLeadDays(law: DurationLaw): number {
  let sum = 0;
  const all = leadTimes(law);
  return (all.find(({ weight }) => (sum += weight) >= 0.99) ?? all[all.length - 1]!).days;
}

function measured(valuesMs: readonly number[]): readonly WeightedDays[] {
  const times = new Map<number, number>();
  for (const ms of valuesMs) times.set(ms, (times.get(ms) ?? 0) + 1);
  return [...times]
    .sort(([a], [b]) => a - b)
    .map(([ms, seen]) => ({ days: ms / DAY_MS, weight: seen / valuesMs.length }));
}

function inWholeDays(upTo: (day: number) => number): readonly WeightedDays[] {
  const days: WeightedDays[] = [];
  let before = 0;
  for (let day = 1; before < 1 - TAIL; day++) {
    const reached = upTo(day);
    if (reached - before > TAIL) days.push({ days: day, weight: reached - before });
    before = reached;
  }
  const kept = days.reduce((sum, { weight }) => sum + weight, 0);
  return days.map((day) => ({ days: day.days, weight: day.weight / kept }));
}
