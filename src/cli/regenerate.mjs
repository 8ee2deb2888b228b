// Writes anew what the examples produce, for reports/: the answer and pictures of every scenario, and
// the letter of the first, which is the demo.
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'cuptide-reports-'));
const { othersWith } = JSON.parse(readFileSync(join(root, 'src/cli/examples.json'), 'utf8'));
const scenarios = readdirSync(join(root, 'scenarios'))
  .filter((name) => /\.(ya?ml|json)$/.test(name))
  .sort();
try {
  for (const scenario of scenarios)
    execFileSync(
      process.execPath,
      [
        join(root, 'dist/cuptide.js'),
        'report',
        join('scenarios', scenario),
        '--out',
        folder,
        ...(scenario === scenarios[0] ? [] : othersWith),
      ],
      { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] },
    );
  const demo = scenarios[0].replace(/\.\w+$/, '');
  for (const name of readdirSync(folder)) {
    if (!name.endsWith('.html') || name === `${demo}.html`)
      copyFileSync(join(folder, name), join(root, 'reports', name));
  }
  // What each screen of the page looks like.
  execFileSync(process.execPath, [join(root, 'tests/browser/screens.mjs')], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
} finally {
  rmSync(folder, { recursive: true, force: true });
}
