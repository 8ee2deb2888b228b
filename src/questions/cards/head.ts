import type { Head } from '../question.js';

export const cards = {
  name: 'cards',
  describe: 'Cards for the staff: racks, clearing, machine top, safety, breakage',
  settings: {},
  only: 'letter',
  offers: [{ id: 'cards' }],
} as const satisfies Head;
