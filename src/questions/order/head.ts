import type { Head } from '../question.js';
import { allowingForInputs, orderDay, sizing } from '../settings.js';

export const order = {
  name: 'order',
  describe: 'From par to an order sheet: spares, cartons, freight, reorder points',
  writes: true,
  settings: {
    ...sizing,
    date: orderDay,
    ...allowingForInputs,
  },
  offers: [{ id: 'order', title: 'The order: cartons, freight, spares until the next delivery' }],
  workbook: true,
} as const satisfies Head;
