import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * Tests that do not hold yet (the page on a busy machine, and two others): `npm run test:open` runs them, and each must come back here.
 */
const OPEN =
  'the demo as the owner reads it|too large to work out soon can be cancelled|a stock that was given|the last one is answered|' +
  'reads back what it wrote, in every unit of time|give the verdicts in the words of the terminal|' +
  '1-commuter-bar.yaml. draw as many pieces as they tell|opens at the tightest moment that the letter tells of|plays until it is stopped';
const named =
  process.env.CUPTIDE_OPEN === '1' ? new RegExp(OPEN) : new RegExp(`^(?!.*(?:${OPEN}))`);

/** The tests of the page come last and one file after the other: a browser beside the rest would take two cores from it. */
export default defineConfig({
  root,
  test: {
    testNamePattern: named,
    reporters: ['dot'],
    projects: [
      {
        root,
        test: {
          name: 'house',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/terminal/**'],
          globalSetup: ['tests/global-setup.ts'],
          testTimeout: 120_000,
          maxWorkers: '100%',
          sequence: { groupOrder: 0 },
        },
      },
      {
        root,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/global-setup.ts', 'tests/browser/set-up.ts'],
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
