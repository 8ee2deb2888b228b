/** Freight: fixed, per carton and per kilogram at the step that holds; nothing from the free-freight value on. */
import { cartonsIn, massOf, stepAt, type Consignment, type Supplier } from '../supply.js';
import { atRates, type Charge } from './charge.js';
import { goods } from './goods.js';

export const isFree = (supplier: Supplier, goodsMinor: number): boolean =>
  supplier.freeFromMinor !== null && goodsMinor >= supplier.freeFromMinor;

/** Freight of a consignment, minor units, before tax. */
export function freight(consignment: Consignment): number {
  if (isFree(consignment.supplier, goods(consignment))) return 0;
  const cartons = cartonsIn(consignment);
  return atRates(stepAt(consignment.supplier, cartons), cartons, massOf(consignment));
}

export const freightCharge: Charge = {
  id: 'freight',
  name: 'Freight',
  landed: true,
  taxed: true,
  minor: freight,
  rates: null,
};
