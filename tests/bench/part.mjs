// What it costs to start one more part: the demo's sites in one part, and in a part each, one after the other on one thread.
// `node tests/bench/part.mjs` prints seconds by the clock; run it on a quiet machine.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const SITES = 24;
const table = ['scenarios/chain.csv', '--base', 'scenarios/1-commuter-bar.yaml'];

/** Seconds that so many parts take, each a process. */
function seconds(parts) {
  const folder = mkdtempSync(join(tmpdir(), 'cuptide-part-'));
  const from = performance.now();
  for (let part = 1; part <= parts; part += 1)
    execFileSync(
      process.execPath,
      ['dist/cuptide.js', 'sites', ...table, '--part', `${part}/${parts}`, '--out', folder],
      { cwd: root, stdio: 'ignore' },
    );
  rmSync(folder, { recursive: true });
  return (performance.now() - from) / 1000;
}

const [one, each] = [seconds(1), seconds(SITES)];
console.log(JSON.stringify({ one, each, aPart: (each - one) / (SITES - 1) }));
