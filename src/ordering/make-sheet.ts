/** From par, losses and suppliers to the order sheet: the one place where the parts of an order meet. */
import { counted } from '../quantities/counted.js';
import type { DurationLaw } from '../engine/durations.js';
import { orderCautions } from './cautions.js';
import type { SolverLoader } from './choose-buy.js';
import { freight, isFree } from './costs/freight.js';
import { goods } from './costs/goods.js';
import { handling } from './costs/handling.js';
import { consignmentTotal } from './costs/index.js';
import { tax } from './costs/tax.js';
import { addDays } from './dates.js';
import { discountedOrder } from './economic-order.js';
import { landedBySize, landedLines, nextSteps, type LandedLine } from './landed.js';
import { DAY_MS, meanLeadDays } from './lead-time.js';
import type { LossRates } from './losses.js';
import type { OrderLine, OrderSheet, SheetConsignment, SupplierComparison } from './order-sheet.js';
import { cheapestFor, planOrders, type OrderPlan, type PlannedWare } from './plan.js';
import { ordersForPar } from './policy.js';
import { problem, type Outcome, type Warning } from './problems.js';
import type { SupplyModel } from './read-supply.js';
import { cartonsIn, massOf, quoteFor, stepAt, type Quote, type Supplier } from './supply.js';
import { shelfCourse } from './shelf-course.js';
import type { TakeawayLine } from './takeaway.js';

/** A ware as the rush leaves it, with its losses. */
export interface OrderedWare {
  readonly id: string;
  readonly name: string;
  readonly colour: string | null;
  readonly shape: 'cup' | 'glass' | 'saucer' | 'spoon' | 'plate' | null;
  /** Pieces that must stand clean at opening. */
  readonly par: number;
  /** Mean uses in the rush of a day. */
  readonly usesADay: number;
  readonly losses: Omit<LossRates, 'usesADay'>;
}

export interface SheetInput {
  readonly title: string;
  /** Day of the order, `YYYY-MM-DD`. */
  readonly date: string;
  readonly currency: string;
  readonly locale: string | null;
  readonly supply: SupplyModel;
  readonly ware: readonly OrderedWare[];
  readonly takeaway: readonly TakeawayLine[];
  /** Whether pieces are kept on the machine (for the caution). */
  readonly onMachine: boolean;
}

/** Lead time where nobody is asked to send a ware: stocked goods take 3 to 10 days (from memory). */
const UNQUOTED_LEAD: DurationLaw = { law: 'constant', ms: 10 * DAY_MS };
/** How long an order is to last where there is no price to weigh it by. */
const UNPRICED_COVER_DAYS = 182;

/** Uses a calendar day, over the whole day and the days the café is shut. */
export const usesACalendarDay = (
  usesInRush: number,
  supply: Pick<SupplyModel, 'rushShare' | 'openDaysAWeek'>,
): number => ((usesInRush / supply.rushShare) * supply.openDaysAWeek) / 7;

/** Makes the sheet, or says what stands in the way. */
export async function orderSheet(
  input: SheetInput,
  loadSolver: SolverLoader,
): Promise<Outcome<OrderSheet>> {
  const { supply } = input;
  const strangers = Object.keys(supply.onHand).filter(
    (id) => !input.ware.some((ware) => ware.id === id),
  );
  if (strangers.length > 0)
    return {
      ok: false,
      problems: strangers.map((id) =>
        problem(
          ['supply', 'onHand', id],
          id,
          'is not a ware of this scenario',
          'name a ware of the order',
        ),
      ),
    };
  const quoted = input.ware.filter((ware) =>
    supply.suppliers.some((supplier) => quoteFor(supplier, ware.id) !== undefined),
  );
  const planned = quoted.map((ware): PlannedWare => ({
    ware: ware.id,
    par: ware.par,
    rates: ratesOf(ware, supply),
  }));
  const joint =
    quoted.length === 0 ? null : await planOrders(planned, supply, input.date, loadSolver);
  if (joint !== null && !joint.ok) return joint;
  const alone = joint === null ? [] : await eachAlone(input, planned, joint.value, loadSolver);
  // Plans are cheapest but for a small gap, within which one supplier alone may be cheaper yet.
  const plan =
    joint === null
      ? null
      : [joint.value, ...alone.flatMap((one) => one.plan ?? [])].reduce((best, one) =>
          one.chosen.totalMinor < best.chosen.totalMinor ? one : best,
        );
  const opening = plan?.buy.consignments[0] ?? [];

  const landed = new Map<string, LandedLine>();
  for (const consignment of opening)
    for (const line of landedLines(consignment, supply.shareFreightBy)) landed.set(line.ware, line);
  const unpricedCover = Math.min(
    supply.horizonDays,
    Math.max(supply.reviewDays, UNPRICED_COVER_DAYS),
  );
  const coverOf = (ware: OrderedWare): number => plan?.coverDays[ware.id] ?? unpricedCover;
  const made = input.ware.map((ware) =>
    lineOf(
      ware,
      input,
      coverOf(ware),
      plan?.buy.lines.find((line) => line.ware === ware.id)?.supplier,
      landed.get(ware.id),
    ),
  );
  const lines = made.map(({ line }) => line);
  const consignments = opening.map((consignment): SheetConsignment => ({
    supplier: consignment.supplier.id,
    name: consignment.supplier.name,
    cartons: cartonsIn(consignment),
    massG: consignment.lines.every(({ quote }) => quote.cartonMassG !== null)
      ? massOf(consignment)
      : null,
    goodsMinor: goods(consignment),
    freightMinor: freight(consignment),
    freightStep: isFree(consignment.supplier, goods(consignment))
      ? 'free'
      : stepAt(consignment.supplier, cartonsIn(consignment)).name,
    taxRate: consignment.supplier.taxRate,
    taxMinor: tax(consignment),
    handlingMinor: handling(consignment),
    totalMinor: consignmentTotal(consignment),
    delivery: addDays(input.date, meanLeadDays(consignment.supplier.leadTime)),
    nextSteps: nextSteps(consignment),
  }));
  const total = (of: (consignment: SheetConsignment) => number): number =>
    consignments.reduce((sum, consignment) => sum + of(consignment), 0);
  return {
    ok: true,
    value: {
      title: input.title,
      date: input.date,
      currency: input.currency,
      locale: input.locale,
      confidence: supply.confidence,
      horizonDays: supply.horizonDays,
      reviewDays: supply.reviewDays,
      shareFreightBy: supply.shareFreightBy,
      lines,
      consignments,
      totals: {
        pieces: lines.reduce((sum, line) => sum + line.pieces, 0),
        cartons: total(({ cartons }) => cartons),
        goodsMinor: total(({ goodsMinor }) => goodsMinor),
        freightMinor: total(({ freightMinor }) => freightMinor),
        taxMinor: total(({ taxMinor }) => taxMinor),
        handlingMinor: total(({ handlingMinor }) => handlingMinor),
        totalMinor: total(({ totalMinor }) => totalMinor),
      },
      plan:
        joint === null || plan === null
          ? null
          : {
              chosen: plan.chosen,
              considered: joint.value.considered,
              proved: joint.value.considered.every(({ proved }) => proved),
            },
      suppliers: alone.map(({ comparison }) => comparison),
      takeaway: input.takeaway,
      warnings: [...made.flatMap(({ warnings }) => warnings), ...sheetWarnings(input, lines)],
      cautions: orderCautions({
        cartons: lines.some((line) => line.pieces > 0),
        machineTop: input.onMachine,
        china: input.ware.some(
          ({ shape }) => shape === 'cup' || shape === 'saucer' || shape === 'plate',
        ),
        glass: input.ware.some(({ shape }) => shape === 'glass'),
      }),
    },
  };
}

const ratesOf = (ware: OrderedWare, supply: SupplyModel): LossRates => ({
  ...ware.losses,
  usesADay: usesACalendarDay(ware.usesADay, supply),
});

function lineOf(
  ware: OrderedWare,
  input: SheetInput,
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
      spares: policy.spares,
      needed,
      pieces,
      supplier: supplier?.id ?? null,
      supplierName: supplier?.name ?? null,
      repeat: quote?.repeat ?? null,
      coverDays,
      cartonPieces: quote?.cartonPieces ?? null,
      cartons,
      cartonMinor: landed === undefined ? null : landed.goodsMinor / landed.cartons,
      goodsMinor: landed?.goodsMinor ?? null,
      freightMinor: landed?.freightMinor ?? null,
      taxMinor: landed?.taxMinor ?? null,
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
  const orderCost = supply.handlingMinor + supplier.freight[0]!.fixedMinor;
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

interface Alone {
  readonly comparison: SupplierComparison;
  /** null: it does not sell everything. */
  readonly plan: OrderPlan | null;
}

/** Each supplier with the whole plan to itself. */
async function eachAlone(
  input: SheetInput,
  wares: readonly PlannedWare[],
  joint: OrderPlan,
  loadSolver: SolverLoader,
): Promise<readonly Alone[]> {
  const all: Alone[] = [];
  for (const supplier of input.supply.suppliers) {
    const missing = wares
      .filter(({ ware }) => quoteFor(supplier, ware) === undefined)
      .map(({ ware }) => ware);
    const outcome =
      missing.length > 0 || input.supply.suppliers.length === 1
        ? null
        : await planOrders(
            wares,
            { ...input.supply, suppliers: [supplier] },
            input.date,
            loadSolver,
          );
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

function sheetWarnings(input: SheetInput, lines: readonly OrderLine[]): readonly Warning[] {
  const warnings: Warning[] = [];
  if (input.supply.suppliers.length > 0) {
    for (const line of lines)
      if (line.supplier === null)
        warnings.push({
          code: 'no-quote',
          path: 'supply.suppliers',
          message: `${line.name} is quoted by no supplier: ${counted(line.pieces, 'piece is', 'pieces are')} needed, without cartons, freight or cost`,
        });
  }
  for (const line of lines) {
    if (
      line.pieces > 0 &&
      line.needed > 0 &&
      line.pieces >= 2 * line.needed &&
      line.cartons !== null
    ) {
      warnings.push({
        code: 'large-carton',
        path: `supply.suppliers.${line.supplier}.quotes.${line.ware}`,
        message: `${line.name}: ${line.pieces} pieces must be bought where ${counted(line.needed, 'is', 'are')} needed; ask for a smaller carton or share one`,
      });
    }
  }
  return warnings;
}
