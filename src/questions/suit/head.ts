import type { Head } from '../question.js';
import { sizing } from '../settings.js';

export const suit = {
  name: 'suit',
  describe: 'Which vessel for which drink: strength, heat, grip, fit, and which could go',
  writes: true,
  settings: { seed: sizing.seed },
} as const satisfies Head;
