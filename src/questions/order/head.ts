import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const order = {
  name: 'order',
  describe: 'From par to an order sheet: spares, cartons, freight, reorder points',
  writes: true,
  settings: {
    ...sizing,
    date: {
      as: 'day',
      describe: 'Day of the order, YYYY-MM-DD; else that of the scenario, else today',
    },
  },
} as const satisfies Head;
