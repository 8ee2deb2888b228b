import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const backtest = {
  name: 'backtest',
  describe:
    'How the stock would have done on recorded days: fitted to the earlier ones, tried on the later',
  writes: true,
  settings: {
    till: { as: 'file', required: true, describe: 'Export of the till (CSV)' },
    map: {
      as: 'file',
      most: 1_000_000,
      required: true,
      describe: 'What the columns mean and which days to fit (YAML)',
    },
    ...sizing,
    draws: {
      as: 'whole',
      from: 10,
      to: 2000,
      describe: 'How often each recorded day is run, with stays and habits drawn anew',
    },
  },
} as const satisfies Head;
