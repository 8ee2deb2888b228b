// A process of its own for every changed source: runs files of tests in the order given and stops at the first that fails.
import { pathToFileURL } from 'node:url';
import { runFile } from 'vitest';

const say = (message) => new Promise((sent) => process.send(message, sent));

/** Processor time so far, s. */
function used() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** What a failure was: an expectation that did not hold, or an error that the code threw itself. */
const kindOf = (error) => (error?.name === 'AssertionError' ? 'assertion' : 'error');

process.on('disconnect', () => process.exit(2));
process.on('uncaughtException', (error) => void failed(error));
process.on('unhandledRejection', (error) => void failed(error));

async function failed(error) {
  const cause = error?.cause ?? error;
  const said = String(cause?.message ?? cause).slice(0, 300);
  await say({ failed: kindOf(cause), name: error?.cause ? error.message : 'loading', said });
  process.exit(1);
}

try {
  for (const file of process.argv.slice(2)) {
    await say({ begins: file, seconds: used() });
    await runFile(
      () => import(pathToFileURL(file)),
      () => process.send({ test: true, seconds: used() }),
    );
    await say({ passed: file, seconds: used() });
  }
  process.exit(0);
} catch (error) {
  await failed(error);
}
