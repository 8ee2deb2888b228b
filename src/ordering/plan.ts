/**
 * The plan over the horizon: how many orders, from whom, how large — the landed cost of all of them with
 * holding, subject to the par standing until every delivery with the chosen probability.
 *
 * The horizon is cut into rounds of equal length. A ware may be ordered every round, every second, third ...
 * or once; each way asks for the holding that lasts from one of its orders to the delivery of the next, and
 * then for what has been lost on average, at least a carton each time. It has one supplier throughout, and one that
 * does not repeat it must send the whole range at once. Which way and which supplier for each ware is
 * one integer programme over all rounds (`chooseBuy`), so ware that travels together shares freight. This is
 * solved for several numbers of rounds; the cheapest is taken, and the others kept to show what they cost.
 */
import type { Buy, BuyNeed, BuyTask, SupplyOption } from './buy.js';
import {
  chooseBuy,
  USUAL_EFFORT,
  USUAL_PROOF,
  type Effort,
  type SolverLoader,
} from './choose-buy.js';
import { consignmentTotal } from './costs/index.js';
import { daysBetween } from './dates.js';
import { smallestHolding } from './holding-target.js';
import { DAYS_A_YEAR, expectedLosses, type LossRates } from './losses.js';
import { openingHolding, repeats } from './policy.js';
import { unsold } from './problems.js';
import type { Outcome } from '../quantities/flaw.js';
import type { SupplyModel } from './supply-model.js';
import { priceAt, quoteFor, type Quote, type Supplier } from './supply.js';

export interface PlannedWare {
  readonly ware: string;
  readonly par: number;
  readonly rates: LossRates;
  /** Places that each keep a par and spares of their own, which `par` and `rates` are the sums of; absent: spares are kept together. */
  readonly places?: readonly Pick<PlannedWare, 'par' | 'rates'>[];
}

/** Pieces to hold in all, where each place holds its own. */
const heldIn = (
  { par, rates, places = [{ par, rates }] }: PlannedWare,
  holding: (place: Pick<PlannedWare, 'par' | 'rates'>) => number,
): number => places.reduce((sum, place) => sum + holding(place), 0);

export interface OrderRounds {
  /** Rounds of ordering, and days from one to the next. */
  readonly rounds: number;
  readonly roundDays: number;
  /** Rounds in which anything is ordered. */
  readonly orders: number;
  readonly openingMinor: number;
  /** All later orders together. */
  readonly laterMinor: number;
  readonly holdingMinor: number;
  readonly totalMinor: number;
  /** Whether the solver proved it cheapest for this number of rounds, within `PLAN_GAP`. */
  readonly proved: boolean;
  /** A cost that no plan with this number of rounds is below; null: not known. */
  readonly leastMinor: number | null;
}

export interface OrderPlan {
  readonly chosen: OrderRounds;
  readonly considered: readonly OrderRounds[];
  /** Lines and consignments by round; the first is the opening order. */
  readonly buy: Buy;
  /** Everything in one order, where that was among the plans. */
  readonly once: Buy | null;
  /** Days from one order of a ware to the next; the horizon where there is only one. */
  readonly coverDays: Readonly<Record<string, number>>;
}

/** Numbers of rounds that are tried. */
const ROUND_COUNTS = [1, 2, 3, 4];
/** Plans within this part of the cheapest count as cheapest: losses are not known better than that. */
export const PLAN_GAP = 0.005;

/**
 * @param wares what must stand, and what is lost of it
 * @param supply suppliers and rules (`readSupply`)
 * @param date day of the opening order, `YYYY-MM-DD`
 * @param loadSolver loads the solver, or null to do without (then nothing is proved cheapest)
 * @param effort what the solver may spend on all numbers of rounds together
 */
export async function planOrders(
  wares: readonly PlannedWare[],
  supply: SupplyModel,
  date: string,
  loadSolver: SolverLoader,
  effort: Effort = { left: USUAL_EFFORT, proof: USUAL_PROOF },
): Promise<Outcome<OrderPlan>> {
  const without = wares.filter(
    ({ ware }) => !supply.suppliers.some((supplier) => quoteFor(supplier, ware) !== undefined),
  );
  if (without.length > 0) return { ok: false, problems: without.map(unsold) };
  const counts =
    supply.orders !== null
      ? [supply.orders]
      : ROUND_COUNTS.filter(
          (rounds) => rounds === 1 || supply.horizonDays / rounds >= supply.reviewDays,
        );
  let best = null as OrderPlan | null;
  let once: Buy | null = null;
  const considered: OrderRounds[] = [];
  for (const rounds of counts) {
    const task = taskFor(rounds, wares, supply, date);
    const beat = best === null ? Infinity : best.chosen.totalMinor * (1 - PLAN_GAP);
    const outcome = await chooseBuy(task, loadSolver, PLAN_GAP, effort, beat);
    if (!outcome.ok) return outcome;
    const buy = outcome.value;
    const roundDays = supply.horizonDays / rounds;
    const chosen: OrderRounds = {
      rounds,
      roundDays,
      orders: buy.consignments.filter((round) => round.length > 0).length,
      openingMinor: orderCost(buy, 0, 1),
      laterMinor: orderCost(buy, 1, rounds),
      holdingMinor: buy.holdingMinor,
      totalMinor: buy.totalMinor,
      proved: buy.proved,
      leastMinor: buy.proved
        ? Math.floor(buy.totalMinor * (1 - PLAN_GAP))
        : (buy.leastMinor ?? null),
    };
    considered.push(chosen);
    if (rounds === 1) once = buy;
    // Fewer rounds unless more really pay.
    if (best !== null && chosen.totalMinor >= best.chosen.totalMinor * (1 - PLAN_GAP)) continue;
    const cover = buy.lines.map((line) => {
      const { orderRounds } = task.needs.find(({ ware }) => ware === line.ware)!.options[
        line.option
      ]!;
      return [line.ware, ((orderRounds[1] ?? rounds) - orderRounds[0]!) * roundDays] as const;
    });
    best = { chosen, considered, buy, once, coverDays: Object.fromEntries(cover) };
  }
  return { ok: true, value: best! };
}

const orderCost = (buy: Buy, from: number, to: number): number =>
  buy.consignments
    .slice(from, to)
    .flat()
    .reduce((sum, consignment) => sum + consignmentTotal(consignment), 0);

function taskFor(
  rounds: number,
  wares: readonly PlannedWare[],
  supply: SupplyModel,
  date: string,
): BuyTask {
  const needs = wares.flatMap((ware): readonly BuyNeed[] => {
    const options = supply.suppliers.flatMap((supplier) => {
      const quote = quoteFor(supplier, ware.ware);
      return quote === undefined ? [] : optionsFrom(supplier, quote, ware, rounds, supply, date);
    });
    // What is on hand may last the horizon, whoever would send the rest.
    return options.every(({ pieces }) => pieces.at(-1)! <= 0)
      ? []
      : [{ ware: ware.ware, options: options.map(atLeastOne) }];
  });
  return { suppliers: supply.suppliers, needs, rounds, handlingMinor: supply.handlingMinor };
}

/** Where one way needs nothing but another does, it still sends a piece, so that the two can be compared. */
const atLeastOne = (option: SupplyOption): SupplyOption => ({
  ...option,
  pieces: option.pieces.map((pieces, round) =>
    round === option.pieces.length - 1 ? Math.max(1, pieces) : Math.max(0, pieces),
  ),
});

/** The ways of buying a ware from a supplier: once, or every so many rounds. */
function optionsFrom(
  supplier: Supplier,
  quote: Quote,
  ware: PlannedWare,
  rounds: number,
  supply: SupplyModel,
  date: string,
): readonly SupplyOption[] {
  const roundDays = supply.horizonDays / rounds;
  const onHand = supply.onHand[ware.ware] ?? 0;
  const pieceMinor = priceAt(quote, 1).cartonMinor / quote.cartonPieces;
  const soldDays =
    quote.repeat === 'assured'
      ? Infinity
      : quote.repeat === 'none'
        ? 0
        : daysBetween(date, quote.repeat.until);
  const ways = Array.from({ length: rounds }, (_, index) => index + 1).filter(
    (every) =>
      every === rounds || (rounds % every === 0 && repeats(quote.repeat, date, every * roundDays)),
  );
  return ways.map((every): SupplyOption => {
    const hold = heldIn(ware, (place) =>
      openingHolding({
        ...place,
        leadTime: supplier.leadTime,
        coverDays: every * roundDays,
        confidence: supply.confidence,
        repeat: quote.repeat,
        horizonDays: supply.horizonDays,
        date,
      }),
    );
    const lostARound = expectedLosses(ware.rates, hold, roundDays).total;
    const orderRounds = Array.from({ length: rounds / every }, (_, index) => index * every).filter(
      (round) => round === 0 || round * roundDays <= soldDays,
    );
    const last = orderRounds.at(-1)!;
    // The last order that can be placed has to last to the end.
    const lastHold =
      last + every < rounds
        ? heldIn(ware, ({ par, rates }) =>
            smallestHolding(
              par,
              rates,
              [{ days: supply.horizonDays - last * roundDays, weight: 1 }],
              supply.confidence,
            ),
          )
        : hold;
    const pieces = Array.from({ length: rounds }, (_, round) => {
      const ordered = orderRounds.findLast((one) => one <= round)!;
      return Math.ceil(
        (ordered < last ? hold : Math.max(hold, lastHold)) + ordered * lostARound - onHand - 1e-9,
      );
    });
    return {
      supplier: supplier.id,
      orderRounds,
      eachTime: orderRounds.length > 1,
      pieces,
      spares: {
        start: onHand - ware.par,
        lostARound,
        pieceMinorARound: (pieceMinor * supply.holdingPerYear * roundDays) / DAYS_A_YEAR,
      },
    };
  });
}

/** The supplier with the lowest first price of a piece; for ware of which enough is on hand. */
export function cheapestFor(suppliers: readonly Supplier[], ware: string): Supplier {
  const able = suppliers.filter((supplier) => quoteFor(supplier, ware) !== undefined);
  const pieceMinor = (supplier: Supplier): number =>
    priceAt(quoteFor(supplier, ware)!, 1).cartonMinor / quoteFor(supplier, ware)!.cartonPieces;
  return able.reduce((best, supplier) =>
    pieceMinor(supplier) < pieceMinor(best) ? supplier : best,
  );
}
