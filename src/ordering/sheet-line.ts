/** One line of the order sheet: from a ware, its losses and its supplier to pieces, cartons and the rule for reordering. */
import type { DurationLaw } from '../engine/durations.js';
import { charges } from './costs/charges.js';
import { addDays } from './dates.js';
import { discountedOrder } from './economic-order.js';
import { landedBySize, type LandedLine } from './landed.js';
import { DAY_MS, meanLeadDays } from './lead-time.js';
import type { LossRates } from './losses.js';
import type { OrderLine } from './order-sheet.js';
import { cheapestFor } from './plan.js';
import { openingHolding, ordersForPar } from './policy.js';
import type { Warning } from '../quantities/flaw.js';
import type { SupplyModel } from './supply-model.js';
import { quoteFor, type Quote, type Supplier } from './supply.js';
import { shelfCourse } from './shelf-course.js';

/** A ware as the rush leaves it, with its losses. */
export interface OrderedWare {
  readonly id: string;
  readonly name: string;
  readonly colour: string | null;
  readonly shape: 'cup' | 'glass' | 'saucer' | 'spoon' | 'plate' | null;
  /** Pieces that must be clean at opening. */
  readonly par: number;
  /** Mean uses in the rush of a day. */
  readonly usesADay: number;
  readonly losses: Omit<LossRates, 'usesADay'>;
}

interface LineInput {
  /** Day of the order, `YYYY-MM-DD`. */
  readonly date: string;
  readonly supply: SupplyModel;
}

/** Lead time where nobody is asked to send a ware: stocked goods take 3 to 10 days (from memory). */
export const UNQUOTED_LEAD_DAYS = 10;
export const UNQUOTED_LEAD: DurationLaw = { law: 'constant', ms: UNQUOTED_LEAD_DAYS * DAY_MS };

/** Uses a calendar day, over the whole day and the days the café is shut. */
export const usesACalendarDay = (
  usesInRush: number,
  supply: Pick<SupplyModel, 'rushShare' | 'openDaysAWeek'>,
): number => ((usesInRush / supply.rushShare) * supply.openDaysAWeek) / 7;

/** Loss rates of a ware in use, a calendar day. */
export const ratesOf = (ware: OrderedWare, supply: SupplyModel): LossRates => ({
  ...ware.losses,
  usesADay: usesACalendarDay(ware.usesADay, supply),
});

/** One ware of the sheet, with its ordering rules and what is unwise about it. */
export function lineOf(
  ware: OrderedWare,
  input: LineInput,
  coverDays: number,
  supplierId: string | undefined,
  landed: LandedLine | undefined,
): { readonly line: OrderLine; readonly warnings: readonly Warning[] } {
  const { supply, date } = input;
  const quotedBy = supply.suppliers.some((one) => quoteFor(one, ware.id) !== undefined);
  const supplier =
    supply.suppliers.find(({ id }) => id === supplierId) ??
    (quotedBy ? cheapestFor(supply.suppliers, ware.id) : undefined);
  const quote = supplier === undefined ? undefined : quoteFor(supplier, ware.id)!;
  const rates = ratesOf(ware, supply);
  const leadTime = supplier?.leadTime ?? UNQUOTED_LEAD;
  const onHand = supply.onHand[ware.id] ?? 0;
  const rules = {
    ware: ware.id,
    name: ware.name,
    par: ware.par,
    rates,
    leadTime,
    reviewDays: supply.reviewDays,
    coverDays,
    confidence: supply.confidence,
    repeat: quote?.repeat ?? ('assured' as const),
    horizonDays: supply.horizonDays,
    date,
  };
  const { orderUpTo } = ordersForPar(rules);
  const needed = Math.max(0, orderUpTo - onHand);
  // Without a quote there are no cartons: as many pieces as are needed.
  const pieces = landed?.pieces ?? (quote === undefined ? needed : 0);
  const policy = ordersForPar({ ...rules, held: onHand + pieces });
  const reorder = policy.reorderQuantity === null ? null : Math.max(1, policy.reorderQuantity);
  const cartonsOf = (count: number): number | null =>
    quote === undefined
      ? null
      : Math.max(quote.minimumCartons, Math.ceil(count / quote.cartonPieces));
  // Enough until a delivery that is ordered at the next count; the rest lasts the cover.
  const untilDelivery = Math.min(
    policy.orderUpTo,
    openingHolding({ ...rules, coverDays: supply.reviewDays, repeat: 'assured' }),
  );
  const reorderCartons = reorder === null ? null : cartonsOf(reorder);
  const cartons = quote === undefined ? null : (landed?.cartons ?? 0);
  const delivery = addDays(date, meanLeadDays(leadTime));
  return {
    warnings: policy.warnings,
    line: {
      ware: ware.id,
      name: ware.name,
      colour: ware.colour,
      par: ware.par,
      onHand,
      hold: policy.orderUpTo,
      untilDelivery,
      chance: policy.chance,
      spares: policy.spares,
      needed,
      pieces,
      supplier: supplier?.id ?? null,
      supplierName: supplier?.name ?? null,
      repeat: quote?.repeat ?? null,
      coverDays,
      cartonPieces: quote?.cartonPieces ?? null,
      cartonMassG: quote?.cartonMassG ?? null,
      cartons,
      cartonMinor: landed === undefined ? null : landed.goodsMinor / landed.cartons,
      goodsMinor: landed?.goodsMinor ?? null,
      freightMinor: landed?.freightMinor ?? null,
      taxMinor: landed?.taxMinor ?? null,
      costs: landed?.costs ?? [],
      landedMinor: landed?.landedMinor ?? null,
      landedPerPieceMinor: landed?.landedPerPieceMinor ?? null,
      reorderPoint: policy.reorderPoint,
      orderUpTo: policy.orderUpTo,
      reorder:
        reorder === null
          ? null
          : {
              pieces: reorderCartons === null ? reorder : reorderCartons * quote!.cartonPieces,
              cartons: reorderCartons,
            },
      nextOrder: policy.nextOrder,
      lifeOfRange: policy.lifeOfRange,
      lastOrder: policy.lastOrder,
      lossesAYear: policy.lossesAYear,
      economicOrder:
        supplier === undefined || quote === undefined || policy.reorderPoint === null
          ? null
          : economicOrderOf(supplier, quote, policy.lossesAYear.total, supply),
      course: shelfCourse({
        policy,
        rates,
        leadTime,
        reviewDays: supply.reviewDays,
        horizonDays: supply.horizonDays,
        date: delivery,
      }),
      landedBySize:
        supplier === undefined || quote === undefined
          ? []
          : landedBySize(
              supplier,
              quote,
              Math.min(
                60,
                Math.max(
                  12,
                  2 * (cartons ?? 0),
                  ...quote.prices.map(({ fromCartons }) => fromCartons + 1),
                ),
              ),
            ),
    },
  };
}

/** The best order size of one ware by itself: its losses, the cost of one consignment, its price breaks. */
function economicOrderOf(
  supplier: Supplier,
  quote: Quote,
  lostAYear: number,
  supply: SupplyModel,
): OrderLine['economicOrder'] {
  const orderCost = charges.reduce(
    (sum, { rates }) => sum + (rates?.({ ...supply, supplier }).fixedMinor ?? 0),
    supplier.freight[0]!.fixedMinor,
  );
  if (!(lostAYear > 0) || !(supply.holdingPerYear > 0) || orderCost === 0) return null;
  const breaks = quote.prices.map(({ fromCartons, cartonMinor }, index) => ({
    from: index === 0 ? 0 : fromCartons * quote.cartonPieces,
    price: cartonMinor / quote.cartonPieces,
  }));
  const { quantity } = discountedOrder({
    orderCost,
    demandPerYear: lostAYear,
    holdingRate: supply.holdingPerYear,
    breaks,
  }).best;
  const pieces = Math.max(1, Math.round(quantity));
  return { pieces, years: pieces / lostAYear };
}
