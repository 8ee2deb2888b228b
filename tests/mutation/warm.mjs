// A test runner that is kept: it is sent the changed file and the tests to run, in order, and says which test failed first.
import { createVitest } from 'vitest/node';

/** What is to be run now, in this order. */
let order = [];

class AsSent {
  shard = (specifications) => specifications;
  sort = (specifications) =>
    specifications.toSorted((a, b) => order.indexOf(a.moduleId) - order.indexOf(b.moduleId));
}

const vitest = await createVitest('test', {
  watch: false,
  reporters: [{}],
  include: ['tests/**/*.test.ts'],
  pool: 'threads',
  isolate: false,
  maxWorkers: 1,
  bail: 1,
  testTimeout: 600_000,
  sequence: { sequencer: AsSent },
  passWithNoTests: true,
});
await vitest.standalone();
const all = await vitest.globTestSpecifications();

process.on('message', async ({ changed, tests }) => {
  for (const file of changed) vitest.invalidateFile(file);
  order = tests;
  // What an earlier run said is not said again.
  vitest.state.filesMap.clear();
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(
    all.filter(({ moduleId }) => tests.includes(moduleId)),
  );
  const failed = testModules.find((module) => module.state() === 'failed');
  const ran = testModules.filter((module) => module.state() === 'passed').length;
  const fault = failed?.moduleId ?? (unhandledErrors.length > 0 ? 'an error outside a test' : null);
  const name = failed && [...failed.children.allTests('failed')][0]?.fullName;
  process.send({ failed: fault, name, ran });
});
process.send('ready');
