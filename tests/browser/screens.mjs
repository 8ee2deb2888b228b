// node tests/browser/screens.mjs FOLDER: writes each screen of the page as a picture. The letters are those of the built command.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
// Inside the project, so that what is bundled finds the packages that stay outside the bundle.
const folder = mkdtempSync(join(root, 'node_modules/.screens-'));
try {
  const cuptide = (...args) =>
    execFileSync(process.execPath, [join(root, 'dist/cuptide.js'), ...args], {
      cwd: root,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  cuptide('report', 'scenarios/1-commuter-bar.yaml', '--out', folder);
  cuptide('page', '--out', join(folder, 'blank.html'));
  await build({
    entryPoints: [fileURLToPath(new URL('screens.ts', import.meta.url))],
    outfile: join(folder, 'screens.mjs'),
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'error',
  });
  const { writeScreens } = await import(join(folder, 'screens.mjs'));
  await writeScreens(
    { demo: join(folder, '1-commuter-bar.html'), blank: join(folder, 'blank.html') },
    process.argv[2] ?? join(root, 'reports'),
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
