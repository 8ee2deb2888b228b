import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** What needs tools that a machine may lack: `npm run test:tools`. */
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    reporters: ['default'],
    include: ['tests/terminal/**/*.test.ts'],
    globalSetup: ['tests/terminal/has-tools.ts'],
    testTimeout: 300_000,
    maxWorkers: 1,
  },
});
