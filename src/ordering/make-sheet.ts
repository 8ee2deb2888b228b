/** From par, losses and suppliers to the order sheet: the one place where the parts of an order meet. */
import { power } from '../elementary/powers.js';
import { counted } from '../quantities/counted.js';
import { bridgesOf } from './bridges.js';
import { orderCautions } from './cautions.js';
import type { SolverLoader } from './choose-buy.js';
import { charges } from './costs/charges.js';
import { isFree } from './costs/freight.js';
import { costsOf, namedCosts, sumOfCosts } from './costs/index.js';
import { addDays } from './dates.js';
import { landedLines, stepsWorthNaming, type LandedLine } from './landed.js';
import { meanLeadDays } from './lead-time.js';
import type { OrderLine, OrderSheet, SheetConsignment } from './order-sheet.js';
import { PLAN_GAP, planOrders, type OrderRounds, type PlannedWare } from './plan.js';
import { problem } from './problems.js';
import type { Outcome, Warning } from '../quantities/flaw.js';
import type { SupplyModel } from './supply-model.js';
import { lineOf, ratesOf, type OrderedWare } from './sheet-line.js';
import { cartonsIn, massOf, quoteFor, stepAt, type Consignment } from './supply.js';
import { eachAlone } from './suppliers-alone.js';
import type { TakeawayLine } from './takeaway.js';

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

/** How long an order is to last where there is no price to weigh it by. */
const UNPRICED_COVER_DAYS = 182;

/** Makes the sheet, or says what stands in the way. */
export async function orderSheet(
  given: SheetInput,
  loadSolver: SolverLoader,
): Promise<Outcome<OrderSheet>> {
  // Losses of different ware are independent: n chances of p^(1/n) are p together.
  const confidence =
    given.supply.promise === 'together'
      ? power(given.supply.confidence, 1 / Math.max(1, given.ware.length))
      : given.supply.confidence;
  const input = { ...given, supply: { ...given.supply, confidence } };
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
  const alone =
    joint === null ? [] : await eachAlone(supply, input.date, planned, joint.value, loadSolver);
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
  const costs = costsOf(opening);
  return {
    ok: true,
    value: {
      title: input.title,
      date: input.date,
      currency: input.currency,
      locale: input.locale,
      confidence: given.supply.confidence,
      promise: supply.promise,
      chanceTogether: lines.reduce((product, { chance }) => product * chance, 1),
      horizonDays: supply.horizonDays,
      reviewDays: supply.reviewDays,
      shareFreightBy: supply.shareFreightBy,
      lines,
      consignments: opening.map((one) => consignmentOf(one, input.date)),
      totals: {
        pieces: lines.reduce((sum, line) => sum + line.pieces, 0),
        cartons: opening.reduce((sum, one) => sum + cartonsIn(one), 0),
        ...namedCosts(costs),
        totalMinor: sumOfCosts(costs),
        costs,
      },
      bridges: await bridgesOf(lines, planned, plan, supply, input.date, loadSolver),
      plan:
        joint === null || plan === null
          ? null
          : {
              chosen: plan.chosen,
              considered: joint.value.considered,
              proved: isProved(plan.chosen.totalMinor, joint.value.considered),
              gap: gapOf(plan.chosen.totalMinor, joint.value.considered),
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

/** How far below the plan the least cost may lie, by the bounds of all numbers of rounds. */
function gapOf(totalMinor: number, considered: readonly OrderRounds[]): number | null {
  const bounds = considered.map(({ leastMinor }) => leastMinor);
  if (totalMinor <= 0 || bounds.includes(null)) return null;
  return Math.max(0, 1 - Math.min(...bounds.map((bound) => bound!)) / totalMinor);
}

/** Whether no number of rounds is left in which much less could be paid. */
const isProved = (totalMinor: number, considered: readonly OrderRounds[]): boolean =>
  considered.every(({ proved }) => proved) ||
  // A bound is rounded down to a whole cent.
  (gapOf(totalMinor, considered) ?? 1) <= PLAN_GAP + 2 / totalMinor;

const consignmentOf = (consignment: Consignment, date: string): SheetConsignment => {
  const { supplier } = consignment;
  const costs = costsOf([consignment]);
  const { goodsMinor, freightMinor, taxMinor, handlingMinor } = namedCosts(costs);
  return {
    supplier: supplier.id,
    name: supplier.name,
    cartons: cartonsIn(consignment),
    massG: consignment.lines.every(({ quote }) => quote.cartonMassG !== null)
      ? massOf(consignment)
      : null,
    goodsMinor,
    freightMinor,
    freightStep: isFree(supplier, goodsMinor)
      ? 'free'
      : stepAt(supplier, cartonsIn(consignment)).name,
    freight: supplier.freight,
    freeFromMinor: supplier.freeFromMinor,
    taxRate: supplier.taxRate,
    taxMinor,
    handlingMinor,
    totalMinor: sumOfCosts(costs),
    costs,
    charges: charges.flatMap(({ id, taxed, rates }) =>
      rates === null ? [] : [{ id, taxed, rates: rates(consignment) }],
    ),
    delivery: addDays(date, meanLeadDays(supplier.leadTime)),
    nextSteps: stepsWorthNaming(consignment),
  };
};

function sheetWarnings(input: SheetInput, lines: readonly OrderLine[]): readonly Warning[] {
  const warnings: Warning[] = [];
  if (input.supply.suppliers.length > 0) {
    for (const line of lines)
      if (line.supplier === null)
        warnings.push({
          code: 'no-quote',
          path: 'supply.suppliers',
          message: `No supplier sells ${line.name}: ${counted(line.pieces, 'piece is', 'pieces are')} needed, but cartons, freight and cost are not known`,
        });
  }
  for (const line of lines) {
    if (
      line.pieces > 0 &&
      line.needed > 0 &&
      line.pieces >= 2 * line.needed &&
      line.cartons !== null
    ) {
      const path = `supply.suppliers.${line.supplier}.quotes.${line.ware}`;
      const { minimumCartons, cartonPieces } = quoteFor(
        input.supply.suppliers.find(({ id }) => id === line.supplier)!,
        line.ware,
      )!;
      const smallest = Math.max(minimumCartons, Math.ceil(line.needed / cartonPieces));
      const need = `${line.name}: you need ${counted(line.needed, 'piece')}`;
      warnings.push(
        line.cartons <= smallest
          ? {
              code: 'large-carton',
              path,
              message: `${need}, but the smallest order is ${line.pieces}; ask for a smaller carton, or share one with another café`,
            }
          : {
              code: 'more-than-needed',
              path,
              message: `${need}, and ${line.pieces} are ordered to reach a better price or freight, or the supplier's smallest order; order other ware in their place if you need it`,
            },
      );
    }
  }
  return warnings;
}
