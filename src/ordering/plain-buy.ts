/**
 * A buy without a solver: every ware in the way that is cheapest by itself, or all that one supplier sells from
 * it, each topped up for as long as that pays; the cheapest of these. Good, not proved.
 */
import {
  buyOf,
  buyProblems,
  consignmentsOf,
  openOptions,
  sourceOf,
  type Buy,
  type BuyNeed,
  type BuyTask,
} from './buy.js';
import { goods } from './costs/goods.js';
import { cartonsIn, type BuyLine, type Supplier } from './supply.js';

export function plainBuy(task: BuyTask): Buy {
  const startingWith = (prefer: Supplier | null): Scored => {
    const lines = task.needs.map((need) => {
      const open = openOptions(task, need);
      const preferred = open.filter((option) => need.options[option]!.supplier === prefer?.id);
      const choices = (preferred.length > 0 ? preferred : open).map((option) =>
        scored(task, [leastLine(task, need, option)]),
      );
      return choices.reduce((best, choice) =>
        choice.buy.totalMinor < best.buy.totalMinor ? choice : best,
      ).buy.lines[0]!;
    });
    return toppedUp(task, lines);
  };
  return [null, ...task.suppliers]
    .map(startingWith)
    .reduce((best, one) => (better(one, best) ? one : best)).buy;
}

/** The fewest cartons in every round after those that are settled `before`. */
function leastLine(
  task: BuyTask,
  need: BuyNeed,
  option: number,
  before: readonly number[] = [],
): BuyLine {
  const chosen = need.options[option]!;
  const { quote } = sourceOf(task, need.ware, chosen);
  let bought = 0;
  const cartons = Array.from({ length: task.rounds }, (_, round) => {
    const due = chosen.orderRounds.includes(round);
    // What is needed before the next round in which it is ordered must be there by now.
    const next = chosen.orderRounds.find((later) => later > round) ?? task.rounds;
    const short = due ? Math.ceil((chosen.pieces[next - 1]! - bought) / quote.cartonPieces) : 0;
    const least = due && chosen.eachTime ? Math.max(1, quote.minimumCartons) : 0;
    const now = before[round] ?? (short > 0 ? Math.max(short, quote.minimumCartons) : least);
    bought += now * quote.cartonPieces;
    return now;
  });
  return { ware: need.ware, supplier: chosen.supplier, option, cartons };
}

/** Raises one line in one round at a time to the next step, for as long as that mends a rule, or keeps them all and costs less. */
function toppedUp(task: BuyTask, lines: readonly BuyLine[]): Scored {
  let best = scored(task, lines);
  for (;;) {
    const tries = best.buy.lines.flatMap((line, index) => {
      const need = task.needs.find(({ ware }) => ware === line.ware)!;
      return need.options[line.option]!.orderRounds.flatMap((round) =>
        stepsUp(task, best.buy.lines, line, need, round).map((extra) => {
          const raised = leastLine(task, need, line.option, [
            ...line.cartons.slice(0, round),
            line.cartons[round]! + extra,
          ]);
          return scored(
            task,
            best.buy.lines.map((other, at) => (at === index ? raised : other)),
          );
        }),
      );
    });
    const next = tries.reduce((least, one) => (better(one, least) ? one : least), best);
    if (next === best) return best;
    best = next;
  }
}

/** Cartons more that bring a line in a round to one carton more, a price break, a freight step, free freight or the minimum order. */
function stepsUp(
  task: BuyTask,
  lines: readonly BuyLine[],
  line: BuyLine,
  need: BuyNeed,
  round: number,
): readonly number[] {
  const { supplier, quote } = sourceOf(task, need.ware, need.options[line.option]!);
  const now = consignmentsOf(task, lines, round).find(
    (consignment) => consignment.supplier === supplier,
  );
  const [value, cartons] = now === undefined ? [0, 0] : [goods(now), cartonsIn(now)];
  const upTo = (target: number): number[] =>
    quote.prices.map(({ cartonMinor }) => Math.ceil((target - value) / cartonMinor));
  const wanted = [
    1,
    ...quote.prices.map(({ fromCartons }) => fromCartons - line.cartons[round]!),
    ...supplier.freight.map(({ fromCartons }) => fromCartons - cartons),
    ...(supplier.freeFromMinor === null ? [] : upTo(supplier.freeFromMinor)),
    ...upTo(supplier.minimumOrderMinor),
  ];
  return [...new Set(wanted)].filter((extra) => extra > 0);
}

interface Scored {
  readonly buy: Buy;
  /** Rules broken. */
  readonly broken: number;
}

const scored = (task: BuyTask, lines: readonly BuyLine[]): Scored => ({
  buy: buyOf(task, lines, false),
  broken: buyProblems(task, lines).length,
});

const better = (a: Scored, b: Scored): boolean =>
  a.broken < b.broken || (a.broken === b.broken && a.buy.totalMinor < b.buy.totalMinor);
