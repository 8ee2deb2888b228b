/** The order sheet as plain data: what terminal, CSV, workbook, page and reorder cards are made from. */
import type { Caution } from './cautions.js';
import type { Bridge } from './bridge.js';
import type { ChargeRates } from './costs/charge.js';
import type { CostAmount, NamedCosts } from './costs/index.js';
import type { LandedPoint, NextStep } from './landed.js';
import type { NextOrder, OrderPolicy } from './policy.js';
import type { Warning } from '../quantities/flaw.js';
import type { OrderRounds } from './plan.js';
import type { RepeatSupply } from './schema.js';
import type { ShelfCourse } from './shelf-course.js';
import type { FreightStep } from './supply.js';
import type { TakeawayLine } from './takeaway.js';

/** One ware of the sheet. Money is whole minor units; `null` money means that no supplier quotes it. */
export interface OrderLine {
  readonly ware: string;
  readonly name: string;
  readonly colour: string | null;
  /** Pieces that must be clean at opening. */
  readonly par: number;
  readonly onHand: number;
  /** Pieces to hold: par and spares, until the next delivery. */
  readonly hold: number;
  /** Of these, enough until a delivery that is ordered at the next count. */
  readonly untilDelivery: number;
  /** Probability that the pieces stay at or above the par until the next delivery. */
  readonly chance: number;
  readonly spares: OrderPolicy['spares'];
  /** Pieces needed, before cartons. */
  readonly needed: number;
  /** Pieces ordered: whole cartons. */
  readonly pieces: number;
  readonly supplier: string | null;
  readonly supplierName: string | null;
  readonly repeat: RepeatSupply | null;
  /** Days from one order of this ware to the next, as planned. */
  readonly coverDays: number;
  readonly cartonPieces: number | null;
  /** Gross mass of a carton, g. */
  readonly cartonMassG: number | null;
  readonly cartons: number | null;
  readonly cartonMinor: number | null;
  readonly goodsMinor: number | null;
  readonly freightMinor: number | null;
  readonly taxMinor: number | null;
  /** The landed costs one by one; empty where nothing is ordered from a supplier. */
  readonly costs: readonly CostAmount[];
  readonly landedMinor: number | null;
  /** For display, not for sums. */
  readonly landedPerPieceMinor: number | null;
  readonly reorderPoint: number | null;
  readonly orderUpTo: number;
  /** A reorder in pieces and whole cartons. */
  readonly reorder: { readonly pieces: number; readonly cartons: number | null } | null;
  readonly nextOrder: NextOrder | null;
  readonly lifeOfRange: number | null;
  readonly lastOrder: OrderPolicy['lastOrder'];
  readonly lossesAYear: OrderPolicy['lossesAYear'];
  /** Economic order size by itself, pieces; null where holding is free or nothing is lost. */
  readonly economicOrder: { readonly pieces: number; readonly years: number } | null;
  readonly course: ShelfCourse;
  /** Landed cost against order size at the chosen supplier; empty without one. */
  readonly landedBySize: readonly LandedPoint[];
}

export interface SheetConsignment extends NamedCosts {
  readonly supplier: string;
  readonly name: string;
  readonly cartons: number;
  readonly massG: number | null;
  /** Name of the freight step, or 'free'. */
  readonly freightStep: string;
  /** The supplier's terms, to price another size of the order with. */
  readonly freight: readonly FreightStep[];
  readonly freeFromMinor: number | null;
  readonly taxRate: number;
  readonly totalMinor: number;
  readonly costs: readonly CostAmount[];
  /** What the charges that go by rates come from, to price another size of the order with. */
  readonly charges: readonly ChargeRates[];
  /** Expected day of delivery. */
  readonly delivery: string;
  readonly nextSteps: readonly NextStep[];
}

/** All ware from one supplier alone, where that supplier sells it all; for the comparison side by side. */
export interface SupplierComparison {
  readonly supplier: string;
  readonly name: string;
  /** Ware it does not sell; empty: it can fill the order alone. */
  readonly missing: readonly string[];
  /** The order from it alone: orders over the horizon, the opening order, and all of them with holding, minor units; null where it does not sell all. */
  readonly alone: {
    readonly orders: number;
    readonly openingMinor: number;
    readonly totalMinor: number;
  } | null;
  readonly lines: readonly {
    readonly ware: string;
    readonly pieces: number;
    readonly pieceMinor: number;
    readonly repeat: RepeatSupply;
  }[];
}

/** Three sizes of the same order, from par to total. */
export interface Bridges {
  readonly ordered: Bridge;
  /** Enough until a delivery that is ordered at the next count; null without suppliers. */
  readonly smallest: Bridge | null;
  /** Everything for the horizon at once; null without suppliers. */
  readonly horizon: Bridge | null;
}

export interface OrderSheet {
  readonly title: string;
  readonly date: string;
  readonly currency: string;
  readonly locale: string | null;
  readonly confidence: number;
  /** What the probability asked for is about: each ware by itself, or all of them at once. */
  readonly promise: 'each' | 'together';
  /** Probability that all ware stays at or above its par until its next delivery; losses of one ware do not depend on those of another. */
  readonly chanceTogether: number;
  readonly horizonDays: number;
  readonly reviewDays: number;
  readonly shareFreightBy: 'value' | 'mass';
  readonly lines: readonly OrderLine[];
  readonly consignments: readonly SheetConsignment[];
  readonly totals: NamedCosts & {
    readonly pieces: number;
    readonly cartons: number;
    readonly totalMinor: number;
    readonly costs: readonly CostAmount[];
  };
  readonly bridges: Bridges;
  /** Rounds of ordering over the horizon, what other numbers would have cost, and whether all were proved cheapest; null without suppliers. */
  readonly plan: {
    readonly chosen: OrderRounds;
    readonly considered: readonly OrderRounds[];
    readonly proved: boolean;
    /** Part of the cost by which a cheaper plan may be below at most; null: not known. */
    readonly gap: number | null;
  } | null;
  readonly suppliers: readonly SupplierComparison[];
  readonly takeaway: readonly TakeawayLine[];
  readonly warnings: readonly Warning[];
  readonly cautions: readonly Caution[];
}
