import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const collections = {
  name: 'collections',
  describe: 'Sets of vessels side by side: stock, cost over the years, racks, strength, grip, heat',
  writes: true,
  settings: {
    ...sizing,
    date: {
      as: 'day',
      describe: 'Day of the order, YYYY-MM-DD; else that of the scenario, else today',
    },
  },
  beside: (scenario) => Object.values(scenario.collections ?? {}).map(({ file }) => file),
} as const satisfies Head;
