/**
 * When to order a ware again and up to how many: from the par, the losses and the supplier's lead time.
 *
 * The pieces are counted every review. Two spells matter:
 * - from a review at which nothing is ordered, the next chance is one review on, and its delivery a lead
 *   time later: fewer than the *reorder point* are ordered now, so that the par holds over review + lead time;
 * - an order is meant to last the *cover*: it goes up to the number from which the par holds over cover +
 *   lead time.
 * Both numbers are the smallest that keep the par with the chosen probability (`smallestHolding`).
 */
import type { DurationLaw } from '../engine/durations.js';
import { meanOf, quantileOf } from './counts-of-pieces.js';
import { addDays, daysBetween } from './dates.js';
import { after, chanceParHolds, smallestHolding } from './holding-target.js';
import { leadTimes, type WeightedDays } from './lead-time.js';
import {
  DAYS_A_YEAR,
  expectedLosses,
  lossDistribution,
  lossesAtMost,
  type LossRates,
} from './losses.js';
import type { Warning } from '../quantities/flaw.js';
import type { RepeatSupply } from './schema.js';

export interface PolicyInput {
  readonly ware: string;
  /** As people call it; absent: the id. */
  readonly name?: string;
  /** Pieces that must stand clean at opening. */
  readonly par: number;
  readonly rates: LossRates;
  readonly leadTime: DurationLaw;
  /** Days between counts; 0 = every piece is missed at once. */
  readonly reviewDays: number;
  /** Days an order is meant to last, at least the review. */
  readonly coverDays: number;
  /** Probability that the par holds until a delivery, 0 < confidence < 1. */
  readonly confidence: number;
  readonly repeat: RepeatSupply;
  /** How long the range is to be kept, days. */
  readonly horizonDays: number;
  /** Day of the first order, `YYYY-MM-DD`. */
  readonly date: string;
  /** Pieces really held after the first delivery, where cartons bring more than is needed. */
  readonly held?: number;
}

export interface NextOrder {
  readonly expected: string;
  /** 5 % of the time it comes before this. */
  readonly earliest: string;
  /** 95 % of the time it has come by this; null: not within the horizon. */
  readonly latest: string | null;
  /** Expected days from delivery of the first order. */
  readonly days: number;
}

export interface OrderPolicy {
  readonly ware: string;
  readonly par: number;
  /** Order at the count that finds fewer than this; null: no repeat, so nothing to order. */
  readonly reorderPoint: number | null;
  /** Pieces an order goes up to: the par and its spares. */
  readonly orderUpTo: number;
  /** Pieces held after the first delivery, at least `orderUpTo`. */
  readonly held: number;
  /** Probability that `held` stays at or above the par until the next delivery. */
  readonly chance: number;
  /** The least that an order will be for: from one below the reorder point. */
  readonly reorderQuantity: number | null;
  readonly spares: {
    readonly total: number;
    /** Within reach of the machine: enough until the next count. */
    readonly besideMachine: number;
    readonly inStore: number;
  };
  /** null: no repeat, or not expected within the horizon. */
  readonly nextOrder: NextOrder | null;
  /** Pieces to buy once for the whole horizon, where supply is not repeated. */
  readonly lifeOfRange: number | null;
  /** Where supply ends on a day: order by then, up to so many. */
  readonly lastOrder: { readonly by: string; readonly upTo: number } | null;
  /** Mean losses over a year from the full holding. */
  readonly lossesAYear: ReturnType<typeof expectedLosses>;
  /** Mean pieces lost over the cover, and the number not exceeded with the confidence. */
  readonly lossesOverCover: { readonly mean: number; readonly quantile: number };
  readonly warnings: readonly Warning[];
}

/** Whether the supply can still be repeated when the order after this one is due. */
export function repeats(repeat: RepeatSupply, date: string, coverDays: number): boolean {
  if (repeat === 'assured') return true;
  if (repeat === 'none') return false;
  return daysBetween(date, repeat.until) >= coverDays;
}

type HoldingInput = Omit<PolicyInput, 'ware' | 'reviewDays' | 'held'>;

/** How long the opening holding has to last. */
function spellsOf(input: HoldingInput): readonly WeightedDays[] {
  // An order that covers the horizon is the last: nothing need arrive after it.
  const last =
    !repeats(input.repeat, input.date, input.coverDays) || input.coverDays >= input.horizonDays;
  return last
    ? [{ days: input.horizonDays, weight: 1 }]
    : after(input.coverDays, leadTimes(input.leadTime));
}

/** Pieces to hold after the first delivery: until the next order's delivery, or for the horizon where there will be none. */
export const openingHolding = (input: HoldingInput): number =>
  smallestHolding(input.par, input.rates, spellsOf(input), input.confidence);

/** The ordering rules of one ware. */
export function ordersForPar(input: PolicyInput): OrderPolicy {
  const { ware, par, rates, confidence, repeat, horizonDays, date, reviewDays } = input;
  const repeated = repeats(repeat, date, input.coverDays);
  const orderUpTo = openingHolding(input);
  const held = Math.max(orderUpTo, input.held ?? 0);
  const lead = leadTimes(input.leadTime);
  // Without reviews an order goes out at the loss that passes the point, so that loss is on top.
  const reorderPoint = repeated
    ? Math.min(
        orderUpTo,
        smallestHolding(par, rates, after(reviewDays, lead), confidence) +
          (reviewDays === 0 ? 1 : 0),
      )
    : null;
  const total = held - par;
  const besideMachine = Math.min(
    total,
    quantileOf(lossDistribution(rates, held, reviewDays), confidence),
  );
  const overCover = lossDistribution(rates, held, Math.min(input.coverDays, horizonDays));
  const lastOrder =
    typeof repeat === 'object' && repeated && daysBetween(date, repeat.until) < horizonDays
      ? {
          by: repeat.until,
          upTo: smallestHolding(
            par,
            rates,
            [{ days: horizonDays - daysBetween(date, repeat.until), weight: 1 }],
            confidence,
          ),
        }
      : null;
  return {
    ware,
    par,
    reorderPoint,
    orderUpTo,
    held,
    chance: chanceParHolds(par, held, rates, spellsOf(input)),
    reorderQuantity: reorderPoint === null ? null : orderUpTo - reorderPoint + 1,
    spares: { total, besideMachine, inStore: total - besideMachine },
    nextOrder: reorderPoint === null ? null : nextOrder(input, held, reorderPoint),
    lifeOfRange: repeated ? null : orderUpTo,
    lastOrder,
    lossesAYear: expectedLosses(rates, held, DAYS_A_YEAR),
    lossesOverCover: { mean: meanOf(overCover), quantile: quantileOf(overCover, confidence) },
    warnings: warningsOf(input, repeated, orderUpTo, lastOrder),
  };
}

/**
 * The review that first finds fewer than the reorder point. Losses only grow, so "not yet at review k" is
 * "at most (held − point) lost by then", and the expected review is the sum of these chances over k ≥ 0.
 */
function nextOrder(input: PolicyInput, held: number, reorderPoint: number): NextOrder | null {
  const every = Math.max(1, input.reviewDays);
  const reviews = Math.floor(input.horizonDays / every);
  let expected = 0;
  let [earliest, latest] = [reviews, null as number | null];
  let notYet = 1;
  for (let review = 0; review < reviews * 20 && notYet > 1e-6; review++) {
    notYet = lossesAtMost(input.rates, held, review * every, held - reorderPoint);
    expected += notYet;
    if (notYet > 0.95) earliest = review + 1;
    if (latest === null && notYet <= 0.05) latest = review;
  }
  if (expected * every > input.horizonDays) return null;
  const day = (review: number): string => addDays(input.date, review * every);
  return {
    expected: day(expected),
    earliest: day(earliest),
    latest: latest === null || latest > reviews ? null : day(latest),
    days: expected * every,
  };
}

function warningsOf(
  input: PolicyInput,
  repeated: boolean,
  orderUpTo: number,
  lastOrder: OrderPolicy['lastOrder'],
): readonly Warning[] {
  const path = `ware.${input.ware}`;
  const years = Number((input.horizonDays / DAYS_A_YEAR).toFixed(1));
  const name = input.name ?? input.ware;
  const keep = `${years} ${years === 1 ? 'year' : 'years'} that you keep this range`;
  if (!repeated) {
    const why =
      input.repeat === 'none'
        ? 'the supplier does not guarantee to sell it again'
        : `supply ends on ${(input.repeat as { until: string }).until}, before the next order`;
    return [
      {
        code: 'life-of-range',
        path,
        message: `${name}: ${why}, so ${orderUpTo} pieces must last for the ${keep}; if more break than assumed, you cannot buy more later`,
      },
    ];
  }
  if (lastOrder !== null)
    return [
      {
        code: 'supply-ends',
        path,
        message: `${name}: supply ends on ${lastOrder.by}; order enough before then to have ${lastOrder.upTo} pieces, which must last for the ${keep}`,
      },
    ];
  return [];
}
