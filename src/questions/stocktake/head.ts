import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const stocktake = {
  name: 'stocktake',
  describe: 'From a count of your cups and glasses: what has gone, how fast, and what to order now',
  settings: {
    ...sizing,
    counts: {
      as: 'file',
      required: true,
      most: 1_000_000,
      describe: 'Count as CSV: ware, counted, and if known broken, retired, delivered',
    },
    since: {
      as: 'day',
      required: true,
      describe: 'Day of the last count, or of the first delivery, YYYY-MM-DD',
    },
    last: {
      as: 'pieces',
      describe:
        'Pieces at that count, such as cup=60,saucer=48; else those on hand in the scenario, else the holding',
    },
    date: { as: 'day', describe: 'Day of this count, YYYY-MM-DD; else today' },
  },
} as const satisfies Head;
