// What it costs to put the parts of a study together: made-up rows of the size of a compact row, in few and in many files.
// `node tests/bench/merge.mjs` prints seconds of processor time and the most memory of a process of its own for each.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const work = mkdtempSync(join(tmpdir(), 'cuptide-merge-'));
const program = join(work, 'merge.mjs');
const UNITS = Number(process.env.UNITS ?? 360_000);

const source = `
import { mkdirSync } from 'node:fs';
import { mergeParts } from '${root}src/cli/sites/merge.ts';
import { partName, partText } from '${root}src/cli/sites/part-file.ts';
import { writeFileSync } from 'node:fs';
const [what, folder, files, count] = process.argv.slice(2);
const units = Array.from({ length: Number(count) }, (_, at) => 'site-' + (at % 300) + '/' + Math.floor(at / 300));
if (what === 'write') {
  mkdirSync(folder);
  for (let part = 1; part <= Number(files); part += 1) {
    const rows = [];
    for (let at = part - 1; at < units.length; at += Number(files))
      rows.push(JSON.stringify({ unit: units[at], pieces: [at % 97, at % 89, at % 83, at % 79, at % 73, at % 71], cost: at / 7, level: 0.95, low: 0.94, high: 0.96 }));
    writeFileSync(folder + '/' + partName(part, Number(files)), partText({ study: 's', version: '1', part, of: Number(files) }, rows));
  }
} else {
  const { rows } = mergeParts(folder, 's', units);
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  console.log(JSON.stringify({ files: Number(files), units: rows.filter((row) => row !== null).length, seconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: Math.round(maxRSS / 1024) }));
}
`;
try {
  writeFileSync(join(work, 'source.ts'), source);
  await build({
    entryPoints: [join(work, 'source.ts')],
    outfile: program,
    bundle: true,
    format: 'esm',
    platform: 'node',
    logLevel: 'warning',
  });
  for (const files of [1000, 36_000]) {
    const folder = join(work, `parts-${files}`);
    for (const what of ['write', 'merge']) {
      const ran = spawnSync(
        process.execPath,
        [program, what, folder, String(files), String(UNITS)],
        {
          encoding: 'utf8',
          stdio: ['ignore', 'pipe', 'inherit'],
        },
      );
      if (ran.status !== 0) throw new Error(`${what} failed`);
      process.stdout.write(ran.stdout);
    }
    rmSync(folder, { recursive: true });
  }
} finally {
  rmSync(work, { recursive: true, force: true });
}
