import type { Head } from '../question.js';

export const measure = {
  name: 'measure',
  describe:
    'What to count on a first morning in the café, in order of worth; reads the filled sheet back',
  settings: {
    read: {
      as: 'files',
      most: 1_000_000,
      describe:
        'Filled sheet (CSV or XLSX) to turn into measured inputs; again for a second morning; with --out, a new scenario',
    },
    seed: { as: 'word', describe: 'Word or number that the random days are drawn from' },
    days: {
      as: 'whole',
      from: 20,
      to: 20_000,
      describe: 'Number of days for each reading of an input at an end of its range',
    },
  },
  writes: true,
  offers: [
    { id: 'measuring', title: 'What to measure on a first morning, and what it is worth' },
    { id: 'sheet', title: 'Put in what was counted on a morning', fillIn: 'read' },
  ],
} as const satisfies Head;
