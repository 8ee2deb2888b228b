/** Handling: staff's cost of placing one order, checking it in and putting it away, whatever its size. */
import { chargeAt } from './charge.js';

/** Staff time bears no tax here. */
export const handlingCharge = chargeAt({
  id: 'handling',
  name: 'Own handling',
  landed: false,
  taxed: false,
  rates: ({ handlingMinor }) => ({ fixedMinor: handlingMinor, perCartonMinor: 0, perKgMinor: 0 }),
});
