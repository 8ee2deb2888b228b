/**
 * Pieces on the shelf over the months, when orders go out by the rule: exact, nothing is drawn.
 *
 * At each review the pieces held and on their way (the position) are brought back to the holding if they are fewer
 * than the reorder point. What stands at a later time is the position after the last review whose order
 * has come by then, less what has been lost since that review. So the law of the position is carried from
 * review to review, and the losses since are taken from it. The lead time is taken at its mean.
 */
import type { DurationLaw } from '../engine/durations.js';
import { meanOf, quantileOf, type PieceCounts } from './counts-of-pieces.js';
import { addDays } from './dates.js';
import { meanLeadDays } from './lead-time.js';
import { lossDistribution, type LossRates } from './losses.js';
import type { OrderPolicy } from './policy.js';

export interface ShelfPoint {
  readonly date: string;
  readonly day: number;
  /** Mean pieces, and the 5 % and 95 % quantile. */
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

export interface ShelfCourse {
  readonly ware: string;
  readonly par: number;
  readonly reorderPoint: number | null;
  readonly points: readonly ShelfPoint[];
  /** Mean number of orders that go out within the horizon, after the first. */
  readonly ordersExpected: number;
}

export interface ShelfCourseInput {
  readonly policy: OrderPolicy;
  readonly rates: LossRates;
  readonly leadTime: DurationLaw;
  readonly reviewDays: number;
  readonly horizonDays: number;
  /** Day on which the first order is on the shelf. */
  readonly date: string;
}

/** Points between two reviews. */
const POINTS_A_REVIEW = 4;
/** Positions less likely than this are left out. */
const NEGLIGIBLE = 1e-12;

/** The course from the first delivery to the horizon: at that delivery, then four points a review, and at the horizon. */
export function shelfCourse(input: ShelfCourseInput): ShelfCourse {
  const { policy, rates, horizonDays, date } = input;
  const every = Math.max(1, input.reviewDays);
  const lead = Math.round(meanLeadDays(input.leadTime));
  const losses = lossTable(rates);
  const { positions, ordersExpected } = positionsAtReviews(
    policy,
    losses,
    every,
    Math.floor(horizonDays / every),
  );
  const at = (day: number): ShelfPoint => {
    const review = Math.max(0, Math.min(positions.length - 1, Math.floor((day - lead) / every)));
    const standing = standingAfter(positions[review]!, (held) =>
      losses(held, day - review * every),
    );
    return {
      date: addDays(date, day),
      day,
      mean: meanOf(standing),
      low: quantileOf(standing, 0.05),
      high: quantileOf(standing, 0.95),
    };
  };
  const days = new Set<number>([0]);
  // On the grid of deliveries, so that the time since a review takes few values.
  for (
    let step = 1 - POINTS_A_REVIEW * Math.ceil(lead / every);
    lead + (step * every) / POINTS_A_REVIEW < horizonDays;
    step++
  ) {
    const day = lead + (step * every) / POINTS_A_REVIEW;
    if (day > 0) days.add(day);
  }
  days.add(horizonDays);
  return {
    ware: policy.ware,
    par: policy.par,
    reorderPoint: policy.reorderPoint,
    points: [...days].map(at),
    ordersExpected,
  };
}

/** The law of the position just after each review; orders placed at the horizon or later are of no use. */
function positionsAtReviews(
  policy: OrderPolicy,
  losses: LossTable,
  every: number,
  reviews: number,
): { readonly positions: readonly PieceCounts[]; readonly ordersExpected: number } {
  const start = Array.from({ length: policy.held + 1 }, () => 0);
  start[policy.held] = 1;
  const positions: PieceCounts[] = [start];
  let ordersExpected = 0;
  for (let review = 1; review < reviews; review++) {
    const counted = [...standingAfter(positions[review - 1]!, (held) => losses(held, every))];
    if (policy.reorderPoint !== null) {
      const fewer = counted.slice(0, policy.reorderPoint).reduce((sum, p) => sum + p, 0);
      counted.fill(0, 0, Math.min(counted.length, policy.reorderPoint));
      counted[policy.orderUpTo]! += fewer;
      ordersExpected += fewer;
    }
    positions.push(counted);
  }
  return { positions, ordersExpected };
}

/** What is left of each position after losses that depend on it; never below none. */
function standingAfter(position: PieceCounts, lost: (held: number) => PieceCounts): PieceCounts {
  const left = Array.from({ length: position.length }, () => 0);
  position.forEach((chance, held) => {
    if (chance < NEGLIGIBLE) return;
    lost(held).forEach((p, gone) => (left[Math.max(0, held - gone)]! += chance * p));
  });
  return left;
}

type LossTable = (held: number, days: number) => PieceCounts;

/** Losses by pieces held and days, each worked out once. */
function lossTable(rates: LossRates): LossTable {
  const known = new Map<string, PieceCounts>();
  return (held, days) => {
    const key = `${held} ${days}`;
    const counts = known.get(key) ?? lossDistribution(rates, held, days);
    known.set(key, counts);
    return counts;
  };
}
