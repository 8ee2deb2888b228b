/** Supply as orders use it. */
import type { Supplier } from './supply.js';

/** What is known of a ware outside the supply slice. */
export interface SuppliedWare {
  readonly id: string;
  readonly massG: number | null;
}

export interface SupplyContext {
  /** Currency of the scenario, ISO 4217. */
  readonly currency: string;
  readonly staffHourMinor: number;
  readonly ware: readonly SuppliedWare[];
}

/** The rules of ordering, with defaults filled in. */
export interface SupplyModel {
  readonly suppliers: readonly Supplier[];
  readonly horizonDays: number;
  /** Orders over the horizon; null: the cheapest number. */
  readonly orders: number | null;
  readonly reviewDays: number;
  readonly confidence: number;
  /** What the confidence is about: each ware by itself, or all of them at once. */
  readonly promise: 'each' | 'together';
  readonly openDaysAWeek: number;
  readonly rushShare: number;
  readonly handlingMinor: number;
  readonly holdingPerYear: number;
  readonly shareFreightBy: 'value' | 'mass';
  readonly onHand: Readonly<Record<string, number>>;
}

/** What holds where the scenario is silent. All of it is assumed, from no source. */
export const SUPPLY_DEFAULTS = {
  horizonDays: 730,
  reviewDays: 28,
  confidence: 0.95,
  openDaysAWeek: 7,
  rushShare: 1,
  holdingPerYear: 0.1,
} as const;
