/** The command is tested as it is shipped: built anew before the tests. */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export default function setup(): void {
  execFileSync(process.execPath, [fileURLToPath(new URL('../src/cli/build.mjs', import.meta.url))], { stdio: 'inherit' });
}
