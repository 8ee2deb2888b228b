/** Tax: the supplier's rate on goods and freight together. */
import type { Consignment } from '../supply.js';
import { freight } from './freight.js';
import { goods } from './goods.js';

/** Tax on a consignment, minor units (half a unit rounds up). */
export const tax = (consignment: Consignment): number =>
  Math.round((goods(consignment) + freight(consignment)) * consignment.supplier.taxRate);
