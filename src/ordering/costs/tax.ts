/** Tax: the supplier's rate on goods and taxed charges together. */
import type { Consignment } from '../supply.js';
import { charges } from './charges.js';
import { goods } from './goods.js';

/** Tax on a consignment, minor units (half a unit rounds up). */
export const tax = (consignment: Consignment): number =>
  Math.round(
    charges.reduce(
      (sum, { taxed, minor }) => (taxed ? sum + minor(consignment) : sum),
      goods(consignment),
    ) * consignment.supplier.taxRate,
  );
