/** Three sizes of the same order side by side: only until more can come, as ordered, and for the whole horizon at once. */
import { bridgeOf, type Bridge } from './bridge.js';
import { needNow, type Buy } from './buy.js';
import { chooseBuy, type SolverLoader } from './choose-buy.js';
import type { Bridges, OrderLine } from './order-sheet.js';
import { PLAN_GAP, planOrders, type OrderPlan, type PlannedWare } from './plan.js';
import { openingHolding } from './policy.js';
import type { SupplyModel } from './supply-model.js';
import { quoteFor } from './supply.js';

/**
 * @param wares what suppliers quote
 * @param lines all lines of the sheet; those of no supplier are the same in each way
 */
export async function bridgesOf(
  lines: readonly OrderLine[],
  wares: readonly PlannedWare[],
  plan: OrderPlan | null,
  supply: SupplyModel,
  date: string,
  loadSolver: SolverLoader,
): Promise<Bridges> {
  const ordered = bridgeOf(lines, plan?.buy.consignments[0] ?? []);
  if (plan === null) return { ordered, smallest: null, horizon: null };
  const holdFor = (line: OrderLine, supplierId: string, coverDays: number): number => {
    const supplier = supply.suppliers.find(({ id }) => id === supplierId)!;
    const ware = wares.find((one) => one.ware === line.ware)!;
    return openingHolding({
      par: line.par,
      rates: ware.rates,
      leadTime: supplier.leadTime,
      coverDays,
      confidence: supply.confidence,
      repeat: quoteFor(supplier, line.ware)!.repeat,
      horizonDays: supply.horizonDays,
      date,
    });
  };
  const way = (buy: Buy, coverDays: number): Bridge =>
    bridgeOf(
      lines.map((line) => {
        const bought = buy.lines.find(({ ware }) => ware === line.ware);
        const supplier = bought?.supplier ?? line.supplier;
        // Of no supplier, or enough of it there already.
        if (supplier === null || (bought === undefined && line.pieces === 0)) return line;
        const hold = holdFor(line, supplier, coverDays);
        const consigned = buy.consignments[0]!.flatMap((one) => one.lines).find(
          ({ quote }) => quote.ware === line.ware,
        );
        return {
          par: line.par,
          onHand: line.onHand,
          untilDelivery: Math.min(hold, line.untilDelivery),
          hold,
          pieces: consigned === undefined ? 0 : consigned.cartons * consigned.quote.cartonPieces,
        };
      }),
      buy.consignments[0]!,
    );
  const needs = lines
    .filter(({ ware }) => wares.some((one) => one.ware === ware))
    .flatMap((line) => {
      const pieces = supply.suppliers
        .filter((supplier) => quoteFor(supplier, line.ware) !== undefined)
        .map(({ id }) => [id, holdFor(line, id, supply.reviewDays) - line.onHand] as const);
      return pieces.every(([, count]) => count <= 0)
        ? []
        : [
            needNow(
              line.ware,
              Object.fromEntries(pieces.map(([id, count]) => [id, Math.max(1, count)])),
            ),
          ];
    });
  const smallest = await chooseBuy(
    { suppliers: supply.suppliers, needs, rounds: 1, handlingMinor: supply.handlingMinor },
    loadSolver,
    PLAN_GAP,
  );
  // Only where the scenario fixes another number of orders is it not known yet.
  const once =
    plan.once === null
      ? await planOrders(wares, { ...supply, orders: 1 }, date, loadSolver)
      : { ok: true as const, value: { buy: plan.once } };
  return {
    ordered,
    smallest: smallest.ok ? way(smallest.value, supply.reviewDays) : null,
    horizon: once.ok ? way(once.value.buy, supply.horizonDays) : null,
  };
}
