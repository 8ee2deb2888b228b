import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const compare = {
  name: 'compare',
  describe:
    'More cups, another machine or another habit, side by side: the alternatives of a scenario, else the usual questions',
  writes: true,
  settings: {
    ...sizing,
    days: { ...sizing.days, from: 100 },
    map: {
      as: 'flag',
      describe: 'Add the trade-off map: machines, their class, clearing rounds, racks',
    },
    moves: { as: 'flag', describe: 'Add what moves the order: each input over its range' },
    uncertainty: {
      as: 'whole',
      from: 10,
      to: 10_000,
      describe: 'Draws of all inputs from their ranges together, such as 40',
    },
    'equal-guests': {
      as: 'flag',
      describe: 'Seat every guest in every alternative, so that all serve the same ones',
    },
  },
  offers: [
    {
      id: 'alternatives',
      title: 'What would be better: another machine, habit or shape of cup',
    },
    {
      id: 'map',
      title: 'What one more machine or rack is worth in cups',
      applies: ({ washing }) => Array.isArray(washing.machines),
    },
    { id: 'moves', title: 'What moves the order most, and what to measure first' },
  ],
} as const satisfies Head;
