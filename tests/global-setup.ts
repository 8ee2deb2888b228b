/**
 * The command is tested as it is shipped: built before the tests, once however many kinds of tests are run, and only
 * where something it is made from is newer than what was built.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const once = globalThis as { cuptideBuilt?: boolean };

const newestIn = (folder: string): number =>
  Math.max(
    ...(readdirSync(join(root, folder), { recursive: true }) as string[]).map(
      (name) => statSync(join(root, folder, name)).mtimeMs,
    ),
  );

/** When the last step of the build was done; 0 where there is none. */
function builtAt(): number {
  const last = join(root, 'dist/types/src/index.d.ts');
  return existsSync(last) && existsSync(join(root, 'dist/page.json')) ? statSync(last).mtimeMs : 0;
}

export default function setup(): void {
  if (once.cuptideBuilt === true) return;
  const made = [newestIn('src'), newestIn('shared'), statSync(join(root, 'package.json')).mtimeMs];
  if (Math.max(...made) >= builtAt())
    execFileSync(process.execPath, [join(root, 'src/cli/build.mjs')], { stdio: 'inherit' });
  once.cuptideBuilt = true;
}
