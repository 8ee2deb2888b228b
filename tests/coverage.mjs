/**
 * `npm run coverage`: which share of each folder of src the tests of the house run through, as a report and no bar to pass. Arguments go to the tests.
 * Only what runs in the tests' own process is counted: commands and the page run in others.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(root, 'node_modules/.coverage-'));
const given = process.argv.slice(2);
const options = ['--coverage.enabled', `--coverage.reportsDirectory=${folder}`];
const { status } = spawnSync(
  'npx',
  [
    'vitest',
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--project',
    'house',
    ...options,
    ...given,
  ],
  { cwd: root, stdio: 'inherit' },
);

const whole = JSON.parse(readFileSync(join(folder, 'coverage-summary.json'), 'utf8'));
rmSync(folder, { recursive: true });
const KINDS = ['lines', 'branches', 'functions'];
const folders = {};
for (const [path, counts] of Object.entries(whole)) {
  const [first, ...rest] = relative(join(root, 'src'), path).split('/');
  if (path === 'total' || rest.length === 0) continue;
  const name = first === 'questions' && rest.length > 1 ? `${first}/${rest[0]}` : first;
  const sum = (folders[name] ??= Object.fromEntries(KINDS.map((kind) => [kind, [0, 0]])));
  for (const kind of KINDS) {
    sum[kind][0] += counts[kind].covered;
    sum[kind][1] += counts[kind].total;
  }
}
const share = ([covered, total]) =>
  total === 0 ? null : Math.round((1000 * covered) / total) / 10;
const rows = Object.entries(folders)
  .toSorted(([a], [b]) => (a < b ? -1 : 1))
  .map(([name, sum]) => [name, Object.fromEntries(KINDS.map((kind) => [kind, share(sum[kind])]))]);
console.table(Object.fromEntries(rows));
// A part of the tests covers a part: only a whole run is kept.
if (given.length === 0) {
  const total = Object.fromEntries(KINDS.map((kind) => [kind, whole.total[kind].pct]));
  const report = {
    counted: "% that the tests' own process runs",
    total,
    folders: Object.fromEntries(rows),
  };
  writeFileSync(join(root, 'reports/coverage.json'), `${JSON.stringify(report, null, 1)}\n`);
}
process.exitCode = status ?? 1;
