import type { Head } from '../question.js';
import { holidays } from '../till/head.js';
import { sizing, type Settings } from '../settings.js';

/** Recorded days, and what they mean. */
const files = {
  till: { as: 'file', required: true, describe: 'Export of the till (CSV)' },
  map: {
    as: 'file',
    most: 1_000_000,
    required: true,
    describe: 'What the columns mean and which days to fit (YAML)',
  },
  holidays,
} as const satisfies Settings;

export const backtest = {
  name: 'backtest',
  describe:
    'How the stock would have done on recorded days: fitted to the earlier ones, tried on the later',
  writes: true,
  settings: {
    ...files,
    ...sizing,
    draws: {
      as: 'whole',
      from: 10,
      to: 2000,
      describe: 'How often each recorded day is run, with stays and habits drawn anew',
    },
  },
  inReport: {
    settings: {
      till: { ...files.till, required: false },
      map: { ...files.map, required: false },
      holidays,
    },
    missing: {
      till: 'give the export of the till too',
      map: 'give the map that says what its columns mean',
    },
    working: 'trying recorded days',
    foot: (command) =>
      `Worked out when this letter was written (${command}), for the values it then had. It does not follow changes in the boxes.`,
  },
} as const satisfies Head;
