import { expect, it } from 'vitest';
import type { OrderSheet } from '../../../src/ordering/order-sheet.js';
import { whySoMany } from '../../../src/questions/order/bridge.js';
import { formatsFor } from '../../../src/tell/format.js';

const formats = formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: null });
const text = (lines: readonly { cartons: number | null; coverDays: number }[]): string =>
  whySoMany(
    {
      lines,
      bridges: {
        ordered: { par: 9, sparesUntilDelivery: 0, sparesAfter: 5, onHand: 0, fromCartons: 0 },
      },
    } as unknown as OrderSheet,
    false,
    formats,
  );

it('the days that an order lasts are those of what is sold: what nobody sells is not in it', () => {
  const [sold, other, unsold] = [
    { cartons: 2, coverDays: 365 },
    { cartons: 1, coverDays: 120 },
    { cartons: null, coverDays: 182 },
  ];
  expect(text([sold, unsold])).toContain('for the rest of the 365 days that this order lasts');
  expect(text([sold, other, unsold])).toContain('the rest of the 120 to 365 days');
  expect(text([unsold])).toContain('the rest of the 182 days');
});
