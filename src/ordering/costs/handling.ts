/** Handling: staff's cost of placing one order, checking it in and putting it away, whatever its size. */
import type { Consignment } from '../supply.js';

/** Handling of one consignment, minor units; staff time bears no tax here. */
export const handling = (consignment: Consignment): number =>
  consignment.lines.length === 0 ? 0 : consignment.handlingMinor;
