/** The charges of a consignment, in the order in which sheets show them. */
import type { Charge } from './charge.js';
import { freightCharge } from './freight.js';
import { handlingCharge } from './handling.js';

export const charges: readonly Charge[] = [freightCharge, handlingCharge];
