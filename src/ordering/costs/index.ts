/**
 * What a consignment costs, cost by cost. To add a cost that depends on a consignment: one file beside
 * this one and one line here; where it differs between ways of buying, `buy-programme.ts` must know it too.
 */
import type { Consignment } from '../supply.js';
import { freight } from './freight.js';
import { goods } from './goods.js';
import { handling } from './handling.js';
import { tax } from './tax.js';

export interface Cost {
  readonly id: string;
  readonly name: string;
  /** Whole minor units. */
  readonly minor: (consignment: Consignment) => number;
}

export const consignmentCosts: readonly Cost[] = [
  { id: 'goods', name: 'Goods', minor: goods },
  { id: 'freight', name: 'Freight', minor: freight },
  { id: 'tax', name: 'Tax', minor: tax },
  { id: 'handling', name: 'Placing and putting away', minor: handling },
];

/** All costs of a consignment, minor units. */
export const consignmentTotal = (consignment: Consignment): number =>
  consignmentCosts.reduce((sum, cost) => sum + cost.minor(consignment), 0);
