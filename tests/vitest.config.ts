import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** More than there are cores: the tests of the page wait for the browser for much of their time. */
const workers = Math.ceil(1.5 * availableParallelism());
/** As long as a test of the page may wait for one thing, ms: Playwright waits as long (browser/letter.ts). */
const WAIT_MS = 100_000;
const root = fileURLToPath(new URL('..', import.meta.url));

/** The tests of the page run beside the rest: a browser waits for much of its time. */
export default defineConfig({
  root,
  test: {
    reporters: ['dot'],
    // `npm run coverage` alone; tests/coverage.mjs makes the table.
    coverage: {
      provider: 'v8',
      include: ['src/**'],
      reporter: ['json-summary'],
      reportOnFailure: true,
    },
    projects: [
      {
        root,
        test: {
          name: 'house',
          // Files share what they import: loading it anew for each took a third of the time. No module here keeps what a test could see.
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/terminal/**'],
          globalSetup: ['tests/global-setup.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          maxWorkers: workers,
        },
      },
      {
        root,
        test: {
          name: 'browser',
          isolate: false,
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/global-setup.ts', 'tests/browser/set-up.ts'],
          maxWorkers: workers,
          // What does not come at all is what fails; a machine under load may take its time.
          testTimeout: 1.5 * WAIT_MS,
          hookTimeout: 1.5 * WAIT_MS,
          expect: { poll: { timeout: WAIT_MS } },
        },
      },
    ],
  },
});
