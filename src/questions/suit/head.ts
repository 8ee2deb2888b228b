import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const suit = {
  name: 'suit',
  describe: 'Which vessel for which drink: strength, heat, grip, fit, and which could go',
  writes: true,
  settings: { seed: sizing.seed },
  offers: [
    {
      id: 'suit',
      title: 'Which vessel for which drink and guest',
      applies: ({ suit: asked }) => asked !== undefined,
    },
  ],
} as const satisfies Head;
