import type { Setting, Settings } from '../settings.js';

export const holidays = {
  as: 'file',
  most: 1_000_000,
  describe: 'Holidays, a date a line (CSV): a kind of day of their own if they differ',
} as const satisfies Setting;

/** A till export comes before a scenario, so its command takes the export as its file and the scenario as a setting. */
export const till = {
  name: 'till',
  describe: 'Fit guests and menu to a till export and write a scenario with them',
  settings: {
    map: {
      as: 'file',
      most: 1_000_000,
      required: true,
      describe: 'What the columns mean and which days to fit (YAML)',
    },
    scenario: {
      as: 'file',
      most: 1_000_000,
      required: true,
      describe: 'Scenario that everything else comes from',
    },
    holidays,
  },
} as const satisfies { name: string; describe: string; settings: Settings };
