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
  offers: [
    {
      id: 'collections',
      title: 'Other sets of vessels side by side',
      applies: ({ collections }) => Object.keys(collections ?? {}).length > 0,
    },
  ],
  beside: (scenario) => Object.values(scenario.collections ?? {}).map(({ file }) => file),
} as const satisfies Head;
