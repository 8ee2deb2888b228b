/** What may be bought, one by one: cartons of a ware in one way, in one round, at one price, with the bounds that hold in any buy. */
import { mostCartons, openOptions, sourceOf, type BuyTask, type SupplyOption } from './buy.js';
import type { Supplier } from './supply.js';

/** Cartons of a ware by one of its options, in a round, at one of the prices. */
export interface Purchase {
  readonly ware: string;
  readonly option: number;
  readonly supplier: Supplier;
  readonly round: number;
  readonly cartonMinor: number;
  readonly cartonMassG: number;
  readonly cartonPieces: number;
  /** Names: of the option's choice, of the price's choice (the option's own where it needs none), of the cartons. */
  readonly assigned: string;
  readonly chosen: string;
  readonly cartons: string;
  readonly low: number;
  readonly high: number;
  /** Whether the option buys something in this round in any case. */
  readonly sure: boolean;
}

/** The choice of an option, by the numbers of its ware and of itself. */
export const assignedName = (w: number, option: number): string => `y${w}_${option}`;

/** Every purchase that a task allows, ware by ware. */
export function purchasesOf(task: BuyTask): readonly Purchase[] {
  return task.needs.flatMap((need, w) =>
    openOptions(task, need).flatMap((index) => {
      const option = need.options[index]!;
      return option.orderRounds.flatMap((round) => purchasesIn(task, need.ware, w, index, round));
    }),
  );
}

/** One purchase a price, of those prices at which a round of an option can be bought at all. */
function purchasesIn(
  task: BuyTask,
  ware: string,
  w: number,
  index: number,
  round: number,
): readonly Purchase[] {
  const option = task.needs[w]!.options[index]!;
  const { supplier, quote } = sourceOf(task, ware, option);
  const most = mostCartons(task, ware, option);
  const least = leastCartons(task, option, quote.cartonPieces, round);
  const assigned = assignedName(w, index);
  const priced = quote.prices
    .map(({ fromCartons, cartonMinor }, p) => ({
      cartonMinor,
      name: `${w}_${index}_${p}_${round}`,
      low: Math.max(quote.minimumCartons, fromCartons, least),
      high: Math.min(most, (quote.prices[p + 1]?.fromCartons ?? Infinity) - 1),
    }))
    .filter(({ low, high }) => low <= high);
  const sure = least > 0;
  // Where the option itself says all, the price needs no choice of its own.
  const plain = priced.length === 1 && (sure || priced[0]!.low <= 1);
  return priced.map(({ cartonMinor, name, low, high }) => ({
    ware,
    option: index,
    supplier,
    round,
    cartonMinor,
    cartonMassG: quote.cartonMassG ?? 0,
    cartonPieces: quote.cartonPieces,
    assigned,
    chosen: plain ? assigned : `z${name}`,
    cartons: `x${name}`,
    low: plain && !sure ? 0 : low,
    high,
    sure,
  }));
}

/** Cartons that an option brings in a round whatever else it does; 0: perhaps none. */
function leastCartons(
  task: BuyTask,
  { orderRounds, eachTime, pieces }: SupplyOption,
  cartonPieces: number,
  round: number,
): number {
  // Nothing was bought before the first order, so it brings all that is needed before the second.
  const first =
    round === orderRounds[0]
      ? Math.ceil(pieces[(orderRounds[1] ?? task.rounds) - 1]! / cartonPieces)
      : 0;
  return Math.max(eachTime ? 1 : 0, first);
}
