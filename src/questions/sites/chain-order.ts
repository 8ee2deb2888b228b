/**
 * One order for all sites: for each drop, cartons, price breaks and freight are those of all its sites together. Beside
 * it, what the sites would pay if each ordered for itself, and what one drop for all would cost.
 */
import type { SolverLoader } from '../../ordering/choose-buy.js';
import {
  costsOf,
  namedCosts,
  sumOfCosts,
  type CostAmount,
  type NamedCosts,
} from '../../ordering/costs/index.js';
import { addDays } from '../../ordering/dates.js';
import { landedLines } from '../../ordering/landed.js';
import { meanLeadDays } from '../../ordering/lead-time.js';
import { PLAN_GAP, planOrders, type OrderPlan, type PlannedWare } from '../../ordering/plan.js';
import type { Fault } from '../../quantities/flaw.js';
import type { SupplyModel } from '../../ordering/supply-model.js';
import { cartonsIn, quoteFor, type Supplier } from '../../ordering/supply.js';
import type { NamedWare } from './site-answer.js';
import { holdingOf, together, type SizedSite } from './chain.js';

/** Where the pieces that will be lost are kept until then. */
export type SparesAt = 'sites' | 'drop';

export interface DropLine {
  readonly ware: string;
  readonly par: number;
  readonly have: number;
  /** Pieces ordered: whole cartons; spares are what is beyond the par. */
  readonly pieces: number;
  readonly supplier: string | null;
  readonly cartons: number;
  readonly cartonPieces: number | null;
  readonly landedMinor: number;
}

export interface DropOrder {
  readonly drop: string;
  readonly sites: readonly string[];
  readonly lines: readonly DropLine[];
  readonly consignments: readonly (NamedCosts & {
    readonly supplier: string;
    readonly name: string;
    readonly cartons: number;
    readonly totalMinor: number;
    readonly costs: readonly CostAmount[];
    readonly delivery: string;
  })[];
  readonly cost: OrderCost;
}

/** What orders cost, minor units. */
export interface OrderCost {
  /** The first order. */
  readonly openingMinor: number;
  /** All orders over the horizon, with holding. */
  readonly totalMinor: number;
  /** Whether a solver proved them cheapest, but for `gap`. */
  readonly proved: boolean;
  /** Part of `totalMinor` by which it may lie above the least; null: nothing is ordered. Where nothing is proved, the least is what the pars cost at the lowest prices. */
  readonly gap: number | null;
}

export interface ChainOrder {
  readonly date: string;
  readonly sparesAt: SparesAt;
  readonly horizonDays: number;
  readonly drops: readonly DropOrder[];
  readonly cost: OrderCost;
  /** Every site for itself; null: too many sites to work that out. */
  readonly alone: OrderCost | null;
  /** All to one drop, where there are several; null where that is how it is. */
  readonly oneDrop: OrderCost | null;
  /** Ware that no supplier sells: not in the order. */
  readonly unsold: readonly string[];
}

export interface ChainOrderOptions {
  readonly date: string;
  readonly sparesAt: SparesAt;
  readonly loadSolver: SolverLoader;
}

/** With more sites, one order each is not worked out for the comparison. */
const MOST_ALONE = 400;

export type ChainOrderResult =
  | { readonly ok: true; readonly value: ChainOrder | null }
  | { readonly ok: false; readonly problems: readonly Fault[] };

/** @param supply of the base; what sites have comes from their rows */
export async function chainOrder(
  sites: readonly SizedSite[],
  ware: readonly NamedWare[],
  supply: SupplyModel,
  options: ChainOrderOptions,
): Promise<ChainOrderResult> {
  const sold = ware.filter(({ id }) => supply.suppliers.some((one) => quoteFor(one, id)));
  if (sold.length === 0 || sites.length === 0) return { ok: true, value: null };
  const planFor = (some: readonly SizedSite[]) => planOf(some, sold, supply, options);
  const names = [...new Set(sites.map(({ site }) => site.line.drop))];
  const drops: DropOrder[] = [];
  for (const drop of names) {
    const own = sites.filter(({ site }) => site.line.drop === drop);
    const plan = await planFor(own);
    if (!plan.ok) return plan;
    drops.push(dropOf(drop, own, plan, supply, options.date));
  }
  const costs = async (groups: readonly (readonly SizedSite[])[]): Promise<OrderCost> => {
    const each: OrderCost[] = [];
    for (const group of groups) {
      const plan = await planFor(group);
      if (plan.ok) each.push(costOf(plan, supply));
    }
    return sumOf(each);
  };
  return {
    ok: true,
    value: {
      date: options.date,
      sparesAt: options.sparesAt,
      horizonDays: supply.horizonDays,
      drops,
      cost: sumOf(drops.map(({ cost }) => cost)),
      alone:
        sites.length === 1 || sites.length > MOST_ALONE
          ? null
          : await costs(sites.map((one) => [one])),
      oneDrop: drops.length === 1 ? null : await costs([sites]),
      unsold: ware
        .filter(({ id }) => !sold.some((one) => one.id === id))
        .filter(({ id }) => sites.some(({ row }) => (row.pieces[id] ?? 0) > (row.have[id] ?? 0)))
        .map(({ id }) => id),
    },
  };
}

type Planned = {
  readonly ok: true;
  readonly wares: readonly (PlannedWare & { readonly have: number })[];
  readonly plan: OrderPlan;
};

async function planOf(
  sites: readonly SizedSite[],
  ware: readonly NamedWare[],
  supply: SupplyModel,
  { date, sparesAt, loadSolver }: ChainOrderOptions,
): Promise<Planned | { readonly ok: false; readonly problems: readonly Fault[] }> {
  const wares = ware.flatMap(({ id }) => {
    const places = sites.flatMap((site) => holdingOf(site, id, supply) ?? []);
    return places.length === 0
      ? []
      : [{ ware: id, ...together(places), ...(sparesAt === 'sites' ? { places } : {}) }];
  });
  const onHand = Object.fromEntries(wares.map((one) => [one.ware, one.have]));
  const plan = await planOrders(wares, { ...supply, onHand }, date, loadSolver);
  return plan.ok ? { ok: true, wares, plan: plan.value } : plan;
}

function dropOf(
  drop: string,
  sites: readonly SizedSite[],
  planned: Planned,
  supply: SupplyModel,
  date: string,
): DropOrder {
  const { wares, plan } = planned;
  const opening = plan.buy.consignments[0] ?? [];
  const landed = opening.flatMap((one) =>
    landedLines(one, supply.shareFreightBy).map((line) => ({ ...line, from: one.supplier })),
  );
  return {
    drop,
    sites: sites.map(({ site }) => site.line.id),
    lines: wares.map(({ ware, par, have }): DropLine => {
      const line = landed.find((one) => one.ware === ware);
      return {
        ware,
        par,
        have,
        pieces: line?.pieces ?? 0,
        supplier: line?.from.id ?? null,
        cartons: line?.cartons ?? 0,
        cartonPieces: line === undefined ? null : line.pieces / line.cartons,
        landedMinor: line?.landedMinor ?? 0,
      };
    }),
    consignments: opening.map((one) => {
      const costs = costsOf([one]);
      return {
        supplier: one.supplier.id,
        name: one.supplier.name,
        cartons: cartonsIn(one),
        ...namedCosts(costs),
        totalMinor: sumOfCosts(costs),
        costs,
        delivery: addDays(date, meanLeadDays(one.supplier.leadTime)),
      };
    }),
    cost: costOf(planned, supply),
  };
}

function costOf({ wares, plan: { chosen, considered } }: Planned, supply: SupplyModel): OrderCost {
  const proved = considered.every((one) => one.proved);
  const least = wares.reduce(
    (sum, { ware, par, have }) =>
      sum + Math.max(0, par - have) * lowestPrice(supply.suppliers, ware),
    0,
  );
  return {
    openingMinor: chosen.openingMinor,
    totalMinor: chosen.totalMinor,
    proved,
    gap: proved
      ? PLAN_GAP
      : chosen.totalMinor > 0
        ? Math.max(0, 1 - least / chosen.totalMinor)
        : null,
  };
}

/** A piece of this ware with tax costs no less from anybody in any quantity. */
const lowestPrice = (suppliers: readonly Supplier[], ware: string): number =>
  Math.min(
    ...suppliers.flatMap((supplier) => {
      const quote = quoteFor(supplier, ware);
      return quote === undefined
        ? []
        : quote.prices.map(
            ({ cartonMinor }) => (cartonMinor / quote.cartonPieces) * (1 + supplier.taxRate),
          );
    }),
  );

function sumOf(costs: readonly OrderCost[]): OrderCost {
  const sum = (of: (cost: OrderCost) => number): number =>
    costs.reduce((total, cost) => total + of(cost), 0);
  const totalMinor = sum((cost) => cost.totalMinor);
  return {
    openingMinor: sum((cost) => cost.openingMinor),
    totalMinor,
    proved: costs.every(({ proved }) => proved),
    gap: totalMinor === 0 ? null : sum((cost) => (cost.gap ?? 0) * cost.totalMinor) / totalMinor,
  };
}
