/** Who sells what, and on what terms: plain data with no units left to convert. Money is whole minor units of one currency. */
import type { DurationLaw } from '../engine/durations.js';
import type { RepeatSupply } from './schema.js';

/** What a carton costs from a number of cartons on; it holds for all cartons of the order (all-units). */
export interface CartonPrice {
  readonly fromCartons: number;
  readonly cartonMinor: number;
}

export interface Quote {
  readonly ware: string;
  readonly cartonPieces: number;
  readonly minimumCartons: number;
  /** Gross mass of a carton, g; null where neither the quote nor the ware tells it. */
  readonly cartonMassG: number | null;
  /** Ascending; the first holds from 1 carton. */
  readonly prices: readonly CartonPrice[];
  readonly repeat: RepeatSupply;
}

/** A freight rate that holds for consignments from so many cartons up to the next step. */
export interface FreightStep {
  readonly fromCartons: number;
  readonly name: string;
  readonly fixedMinor: number;
  readonly perCartonMinor: number;
  readonly perKgMinor: number;
}

export interface Supplier {
  readonly id: string;
  readonly name: string;
  readonly leadTime: DurationLaw;
  readonly minimumOrderMinor: number;
  /** Ascending; the first holds from 1 carton. */
  readonly freight: readonly FreightStep[];
  /** Value of goods from which freight is free; null: never. */
  readonly freeFromMinor: number | null;
  readonly taxRate: number;
  readonly quotes: readonly Quote[];
}

/** Cartons of one ware from its supplier, by round of ordering. */
export interface BuyLine {
  readonly ware: string;
  readonly supplier: string;
  /** Which of the ware's options this is, by index. */
  readonly option: number;
  readonly cartons: readonly number[];
}

/** What one supplier sends at once. */
export interface Consignment {
  readonly supplier: Supplier;
  readonly lines: readonly { readonly quote: Quote; readonly cartons: number }[];
  /** Staff's cost of placing this order, checking it in and putting it away, minor units. */
  readonly handlingMinor: number;
}

/** A supplier's quote for a ware, or undefined. */
export const quoteFor = (supplier: Supplier, ware: string): Quote | undefined =>
  supplier.quotes.find((quote) => quote.ware === ware);

/** The carton price that holds for so many cartons. */
export function priceAt(quote: Quote, cartons: number): CartonPrice {
  return quote.prices.findLast((price) => cartons >= price.fromCartons) ?? quote.prices[0]!;
}

/** The freight step that holds for so many cartons. */
export function stepAt(supplier: Supplier, cartons: number): FreightStep {
  return supplier.freight.findLast((step) => cartons >= step.fromCartons) ?? supplier.freight[0]!;
}

export const cartonsIn = (consignment: Consignment): number =>
  consignment.lines.reduce((sum, line) => sum + line.cartons, 0);

/** Gross mass, g; cartons of unknown mass count as nothing (their quotes may not be charged by mass). */
export const massOf = (consignment: Consignment): number =>
  consignment.lines.reduce((sum, line) => sum + line.cartons * (line.quote.cartonMassG ?? 0), 0);
