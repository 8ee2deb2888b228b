/**
 * A buy: which supplier sends how many cartons of each ware, in one round of ordering or in several, and
 * what that costs.
 *
 * A ware is bought from one supplier only: pieces of two makers seldom match, stack or share a saucer.
 */
import { holding, type Spares } from './costs/holding.js';
import { consignmentTotal } from './costs/index.js';
import { goods } from './costs/goods.js';
import { problem } from './problems.js';
import type { Fault } from '../quantities/flaw.js';
import { quoteFor, type BuyLine, type Consignment, type Quote, type Supplier } from './supply.js';

/**
 * One way of buying a ware from one supplier: lead time, repeat supply and how often it is ordered make the
 * pieces needed differ.
 */
export interface SupplyOption {
  readonly supplier: string;
  /** Rounds in which it is ordered, ascending; in no others. */
  readonly orderRounds: readonly number[];
  /** Whether each of these rounds brings at least a carton; otherwise only what is needed. */
  readonly eachTime: boolean;
  /** Pieces that must have been bought by each round, all rounds up to it together; never falling, the last above 0. */
  readonly pieces: readonly number[];
  /** For the cost of holding; null: free. */
  readonly spares: Spares | null;
}

export interface BuyNeed {
  readonly ware: string;
  /** Exactly one of these is taken. */
  readonly options: readonly SupplyOption[];
}

export interface BuyTask {
  readonly suppliers: readonly Supplier[];
  readonly needs: readonly BuyNeed[];
  readonly rounds: number;
  readonly handlingMinor: number;
}

export interface Buy {
  readonly lines: readonly BuyLine[];
  /** By round, one a supplier. */
  readonly consignments: readonly (readonly Consignment[])[];
  readonly holdingMinor: number;
  /** All consignments and holding. */
  readonly totalMinor: number;
  /** Whether a solver proved that no other buy is cheaper. */
  readonly proved: boolean;
  /** Of one that is not proved: a cost that no other is below; absent or null: not known. */
  readonly leastMinor?: number | null;
}

/** A need in one round alone, without holding: pieces by supplier. */
export const needNow = (ware: string, pieces: Readonly<Record<string, number>>): BuyNeed => ({
  ware,
  options: Object.entries(pieces).map(([supplier, count]) => ({
    supplier,
    orderRounds: [0],
    eachTime: false,
    pieces: [count],
    spares: null,
  })),
});

/** Indices of the options that can be had: their supplier quotes the ware. */
export const openOptions = (task: BuyTask, need: BuyNeed): readonly number[] =>
  need.options.flatMap(({ supplier }, index) => {
    const found = task.suppliers.find(({ id }) => id === supplier);
    return found !== undefined && quoteFor(found, need.ware) !== undefined ? [index] : [];
  });

/** Supplier and quote of an option that is open. */
export function sourceOf(
  task: BuyTask,
  ware: string,
  option: SupplyOption,
): { readonly supplier: Supplier; readonly quote: Quote } {
  const supplier = task.suppliers.find(({ id }) => id === option.supplier)!;
  return { supplier, quote: quoteFor(supplier, ware)! };
}

/** The consignments that the lines make in a round, one a supplier, in the order of suppliers. */
export function consignmentsOf(
  task: BuyTask,
  lines: readonly BuyLine[],
  round: number,
): readonly Consignment[] {
  return task.suppliers
    .map((supplier) => ({
      supplier,
      handlingMinor: task.handlingMinor,
      lines: lines
        .filter((line) => line.supplier === supplier.id && line.cartons[round]! > 0)
        .map((line) => ({ quote: quoteFor(supplier, line.ware)!, cartons: line.cartons[round]! })),
    }))
    .filter((consignment) => consignment.lines.length > 0);
}

/** Costs a set of lines; `proved` is for the caller to say. */
export function buyOf(task: BuyTask, lines: readonly BuyLine[], proved: boolean): Buy {
  const consignments = Array.from({ length: task.rounds }, (_, round) =>
    consignmentsOf(task, lines, round),
  );
  const held = lines.reduce((sum, line) => {
    const option = task.needs.find(({ ware }) => ware === line.ware)?.options[line.option];
    if (option === undefined || option.spares === null) return sum;
    const { cartonPieces } = sourceOf(task, line.ware, option).quote;
    return (
      sum +
      holding(
        option.spares,
        line.cartons.map((cartons) => cartons * cartonPieces),
      )
    );
  }, 0);
  const holdingMinor = Math.round(held);
  return {
    lines,
    consignments,
    holdingMinor,
    proved,
    totalMinor:
      holdingMinor +
      consignments.flat().reduce((sum, consignment) => sum + consignmentTotal(consignment), 0),
  };
}

/** Everything that keeps lines from being a buy for the task; empty: it may be sent. */
export function buyProblems(task: BuyTask, lines: readonly BuyLine[]): readonly Fault[] {
  const problems: Fault[] = [];
  for (const need of task.needs) {
    const own = lines.filter(
      (line) => line.ware === need.ware && line.cartons.some((cartons) => cartons > 0),
    );
    if (own.length !== 1)
      problems.push(
        problem(
          ['supply', need.ware],
          own.length,
          'suppliers send this ware',
          'buy each ware from exactly one supplier',
        ),
      );
    else problems.push(...lineProblems(task, need, own[0]!));
  }
  for (let round = 0; round < task.rounds; round++) {
    for (const consignment of consignmentsOf(task, lines, round)) {
      const { supplier } = consignment;
      const value = goods(consignment);
      if (value < supplier.minimumOrderMinor)
        problems.push(
          problem(
            ['supply', 'suppliers', supplier.id],
            value,
            `minor units of goods are below the minimum order (${supplier.minimumOrderMinor})`,
            'add cartons',
          ),
        );
    }
  }
  return problems;
}

function lineProblems(task: BuyTask, need: BuyNeed, line: BuyLine): readonly Fault[] {
  const option = need.options[line.option];
  if (
    option === undefined ||
    option.supplier !== line.supplier ||
    !openOptions(task, need).includes(line.option)
  )
    return [
      problem(
        ['supply', need.ware],
        line.supplier,
        'does not sell this ware so',
        'take a supplier that quotes it',
      ),
    ];
  const { quote } = sourceOf(task, need.ware, option);
  const problems: Fault[] = [];
  let bought = 0;
  line.cartons.forEach((cartons, round) => {
    bought += cartons * quote.cartonPieces;
    const at = ['supply', need.ware, round];
    const due = option.orderRounds.includes(round);
    if (bought < option.pieces[round]!)
      problems.push(
        problem(
          at,
          bought,
          `pieces are fewer than the ${option.pieces[round]} needed`,
          'add cartons',
        ),
      );
    if (cartons > 0 && !due)
      problems.push(
        problem(
          at,
          cartons,
          'cartons are ordered when none are due',
          'order them in a round that is',
        ),
      );
    if (
      cartons < (due && option.eachTime ? Math.max(1, quote.minimumCartons) : 0) ||
      (cartons > 0 && cartons < quote.minimumCartons)
    )
      problems.push(
        problem(
          at,
          cartons,
          `cartons are fewer than the least (${quote.minimumCartons})`,
          'add cartons',
        ),
      );
  });
  return problems;
}

/**
 * More cartons than this of a ware in one round are never in a cheapest buy: they alone cover all that will
 * be needed and pass every price break, freight step, free-freight value and minimum order, so one fewer
 * would do and cost less.
 */
export function mostCartons(task: BuyTask, ware: string, option: SupplyOption): number {
  const { supplier, quote } = sourceOf(task, ware, option);
  const cheapest = Math.min(...quote.prices.map((price) => price.cartonMinor));
  return Math.max(
    Math.ceil(option.pieces.at(-1)! / quote.cartonPieces),
    quote.minimumCartons,
    ...quote.prices.map((price) => price.fromCartons),
    ...supplier.freight.map((step) => step.fromCartons),
    Math.ceil((supplier.freeFromMinor ?? 0) / cheapest),
    Math.ceil(supplier.minimumOrderMinor / cheapest),
  );
}
