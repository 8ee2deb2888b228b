import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const racks = {
  name: 'racks',
  describe: 'How many pieces a rack holds, with drawings, and washing in the rush',
  writes: true,
  settings: {
    ware: { as: 'word', describe: 'Id of one item, to show that item alone' },
    seed: sizing.seed,
    'lift-from': {
      as: 'length',
      describe: 'Height a full rack is lifted from, such as "90 cm"',
    },
    'lift-to': { as: 'length', describe: 'Height it is lifted to, such as "45 cm"' },
    reach: { as: 'length', describe: 'Hands ahead of the ankles, such as "40 cm"' },
  },
  offers: [{ id: 'racks', title: 'How cups and glasses fill the racks' }],
} as const satisfies Head;
