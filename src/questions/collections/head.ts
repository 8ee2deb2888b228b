import type { Head } from '../question.js';
import { orderDay, sizing } from '../settings.js';

export const collections = {
  name: 'collections',
  describe: 'Sets of vessels side by side: stock, cost over the years, racks, strength, grip, heat',
  writes: true,
  settings: {
    ...sizing,
    date: orderDay,
  },
  beside: (scenario) => Object.values(scenario.collections ?? {}).map(({ file }) => file),
} as const satisfies Head;
