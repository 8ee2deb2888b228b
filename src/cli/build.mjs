// Builds what `npm ci` leaves in dist/: the command, its worker, the library entry and its types.
import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const dist = `${root}dist`;
rmSync(dist, { recursive: true, force: true });

await build({
  absWorkingDir: root,
  entryPoints: { cuptide: 'src/cli/main.ts', worker: 'src/cli/worker.ts', index: 'src/index.ts' },
  outdir: 'dist',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // Beside the entries, so that a part finds the worker as its neighbour.
  chunkNames: 'part-[hash]',
  // Some of what is bundled is CommonJS and asks for Node's own modules by require.
  banner: { js: "import { createRequire as cuptideRequire } from 'node:module'; const require = cuptideRequire(import.meta.url);" },
  legalComments: 'none',
  logLevel: 'warning',
});
chmodSync(`${dist}/cuptide.js`, 0o755);
// The solver's program, which it looks for beside the command.
copyFileSync(`${root}node_modules/highs/build/highs.wasm`, `${dist}/highs.wasm`);

execFileSync(process.execPath, [`${root}node_modules/typescript/bin/tsc`, '-p', `${root}src`], { stdio: 'inherit', cwd: root });
