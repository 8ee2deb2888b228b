/** The same order from each supplier alone, for the comparison side by side. */
import { USUAL_EFFORT, type SolverLoader } from './choose-buy.js';
import type { SupplierComparison } from './order-sheet.js';
import { planOrders, type OrderPlan, type PlannedWare } from './plan.js';
import type { SupplyModel } from './supply-model.js';
import { quoteFor } from './supply.js';

export interface Alone {
  readonly comparison: SupplierComparison;
  /** null: it does not sell everything. */
  readonly plan: OrderPlan | null;
}

/** Each supplier with the whole plan to itself; all together cost the solver half of what the plan does. */
export async function eachAlone(
  supply: SupplyModel,
  date: string,
  wares: readonly PlannedWare[],
  joint: OrderPlan,
  loadSolver: SolverLoader,
): Promise<readonly Alone[]> {
  const all: Alone[] = [];
  for (const supplier of supply.suppliers) {
    const missing = wares
      .filter(({ ware }) => quoteFor(supplier, ware) === undefined)
      .map(({ ware }) => ware);
    const outcome =
      missing.length > 0 || supply.suppliers.length === 1
        ? null
        : await planOrders(wares, { ...supply, suppliers: [supplier] }, date, loadSolver, {
            left: USUAL_EFFORT / 2 / supply.suppliers.length,
          });
    const plan = missing.length > 0 ? null : outcome?.ok ? outcome.value : joint;
    const lines = supplier.quotes
      .filter(({ ware }) => wares.some((one) => one.ware === ware))
      .map((quote) => ({
        ware: quote.ware,
        pieces: quote.cartonPieces,
        pieceMinor: quote.prices[0]!.cartonMinor / quote.cartonPieces,
        repeat: quote.repeat,
      }));
    const alone =
      plan === null
        ? null
        : {
            orders: plan.chosen.orders,
            openingMinor: plan.chosen.openingMinor,
            totalMinor: plan.chosen.totalMinor,
          };
    all.push({
      plan,
      comparison: { supplier: supplier.id, name: supplier.name, missing, alone, lines },
    });
  }
  return all;
}
