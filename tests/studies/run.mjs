// npm run study:NAME, npm run fuzz: bundles a study and runs it in this thread. Figures go to reports/; a run that was stopped goes on where it was.
import { mkdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const root = fileURLToPath(new URL('../..', import.meta.url));
const [name, ...rest] = process.argv.slice(2);
// Inside the project, so that what is bundled finds the packages that stay outside the bundle.
const folder = join(root, 'node_modules/.studies');
mkdirSync(folder, { recursive: true });
const outfile = join(folder, `${basename(name)}.mjs`);
await build({
  entryPoints: [join(here, name.includes('/') ? `../${name}.ts` : `${name}.ts`)],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  logLevel: 'error',
  packages: 'external',
});
process.chdir(root);
const { main } = await import(pathToFileURL(outfile).href);
await main(folder, rest);
