/** Freight: fixed, per carton and per kilogram at the step that holds; nothing from the free-freight value on. */
import {
  cartonsIn,
  massOf,
  stepAt,
  type Consignment,
  type FreightStep,
  type Supplier,
} from '../supply.js';
import { goods } from './goods.js';

/** Freight of so many cartons and grams at one step, minor units (half a unit rounds up). */
const freightAt = (step: FreightStep, cartons: number, massG: number): number =>
  step.fixedMinor + cartons * step.perCartonMinor + Math.round((massG * step.perKgMinor) / 1000);

export const isFree = (supplier: Supplier, goodsMinor: number): boolean =>
  supplier.freeFromMinor !== null && goodsMinor >= supplier.freeFromMinor;

/** Freight of a consignment, minor units, before tax. */
export function freight(consignment: Consignment): number {
  if (isFree(consignment.supplier, goods(consignment))) return 0;
  const cartons = cartonsIn(consignment);
  return freightAt(stepAt(consignment.supplier, cartons), cartons, massOf(consignment));
}
