import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const size = {
  name: 'size',
  describe: 'How many pieces of each item the café needs, and how sure that is',
  settings: {
    ...sizing,
    confidence: {
      as: 'share',
      describe:
        'How sure it must be that the level is held, such as 97.5%: more pieces, at least the level',
    },
    stock: {
      as: 'pieces',
      describe: 'Turn the question round: how safe is this stock? Such as cup=40,saucer=60',
    },
    day: {
      as: 'file',
      most: 200_000_000,
      describe: 'File of listed days (JSON) to use instead of random ones',
    },
    habits: {
      as: 'flag',
      only: 'text',
      describe: 'Add how far the answer moves when a habit, such as clearing rounds, is 20 % off',
    },
    'allow-for-inputs': {
      as: 'flag',
      only: 'text',
      describe: 'Add the stock that holds the level wherever the inputs lie in their ranges',
    },
    peaks: {
      as: 'flag',
      only: 'text',
      describe: 'With --json: add the peaks of every day chosen on',
    },
  },
} as const satisfies Head;
