// Writes anew what the house of 50 seats is told, from its scenario to the supplier's sheet, the client's page and a
// stocktake a year on: reports/house-50/ (npm run reports:house).
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'cuptide-house-'));
const to = join(root, 'reports/house-50');
const house = 'scenarios/house-50/house-50.yaml';
const days = ['--days', '1000'];
const ORDERED =
  'espresso-cup=24,medium-cup=72,large-cup=24,mug=24,tumbler=24,small-saucer=24,saucer=72,teaspoon=324';

/** Runs a command and keeps what it prints. */
function told(name, ...args) {
  const text = execFileSync(process.execPath, [join(root, 'dist/cuptide.js'), ...args], {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  // Where files went is of no use to a reader.
  writeFileSync(join(to, `${name}.txt`), text.replace(/\n*Written:\n(?: {2}.*\n?)+$/, '\n'));
}

try {
  mkdirSync(to, { recursive: true });
  told('1-size', 'size', house, ...days);
  told('2-collections', 'collections', house, '--date', '2026-12-01', ...days, '--out', folder);
  told('3-order', 'order', house, '--date', '2026-12-01', '--all', ...days, '--out', folder);
  told('4-racks', 'racks', house);
  told('5-suit', 'suit', house, '--all');
  told(
    '6-stocktake',
    'stocktake',
    house,
    '--counts',
    'scenarios/house-50/count-2027.csv',
    '--since',
    '2026-12-09',
    '--date',
    '2027-12-09',
    '--last',
    ORDERED,
    ...days,
  );
  for (const [from, name] of [
    ['house-50.collections.csv', 'collections.csv'],
    ['house-50.order.csv', 'supplier.csv'],
    ['house-50.order.xlsx', 'supplier.xlsx'],
    ['house-50.order.html', 'client.html'],
    ['house-50.machine-top.svg', 'machine-top.svg'],
  ])
    copyFileSync(join(folder, from), join(to, name));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
