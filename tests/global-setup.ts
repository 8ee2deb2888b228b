/** The command is tested as it is shipped: built anew before the tests, once however many kinds of tests are run. */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const once = globalThis as { cuptideBuilt?: boolean };

export default function setup(): void {
  if (once.cuptideBuilt === true) return;
  execFileSync(
    process.execPath,
    [fileURLToPath(new URL('../src/cli/build.mjs', import.meta.url))],
    { stdio: 'inherit' },
  );
  once.cuptideBuilt = true;
}
