/** What a top-up costs: whole cartons from each ware's own supplier, with freight and tax. */
import { needNow } from './buy.js';
import { chooseBuy, type SolverLoader } from './choose-buy.js';
import { costsOf, namedCosts, sumOfCosts, type CostAmount } from './costs/index.js';
import { landedLines, type LandedLine } from './landed.js';
import type { SupplyModel } from './supply-model.js';
import { quoteFor } from './supply.js';

export interface TopUp {
  /** What suppliers sell, by ware; whole minor units. */
  readonly lines: readonly (LandedLine & { readonly supplier: string })[];
  readonly freightMinor: number;
  /** All costs, minor units. */
  readonly totalMinor: number;
  readonly costs: readonly CostAmount[];
}

/** @param wanted pieces by ware, with the supplier to ask */
export async function topUpOrder(
  wanted: readonly {
    readonly ware: string;
    readonly pieces: number;
    readonly supplier: string | null;
  }[],
  supply: SupplyModel,
  loadSolver: SolverLoader,
): Promise<TopUp> {
  const needs = wanted.flatMap(({ ware, pieces, supplier: id }) => {
    const supplier = supply.suppliers.find((one) => one.id === id);
    return pieces > 0 && supplier !== undefined && quoteFor(supplier, ware) !== undefined
      ? [needNow(ware, { [supplier.id]: pieces })]
      : [];
  });
  const buy = await chooseBuy(
    { suppliers: supply.suppliers, needs, rounds: 1, handlingMinor: supply.handlingMinor },
    loadSolver,
  );
  if (!buy.ok) throw new Error(buy.problems.map(({ message }) => message).join('\n'));
  const sent = buy.value.consignments[0] ?? [];
  const costs = costsOf(sent);
  return {
    lines: sent.flatMap((one) =>
      landedLines(one, supply.shareFreightBy).map((line) => ({
        ...line,
        supplier: one.supplier.name,
      })),
    ),
    freightMinor: namedCosts(costs).freightMinor,
    totalMinor: sumOfCosts(costs),
    costs,
  };
}
