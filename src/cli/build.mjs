// Builds what `npm ci` leaves in dist/: the command, its worker, the library entry and its types, and the page's two programs.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, copyFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { deflateRawSync } from 'node:zlib';
import { build } from 'esbuild';
import { typefaceLicences, typefaceStyle } from './typefaces.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const dist = `${root}dist`;
rmSync(dist, { recursive: true, force: true });

// Vega carries the drawing of maps, trees and forces, which no picture of ours uses: a sixth of the page.
const UNUSED = [
  'vega-crossfilter',
  'vega-force',
  'vega-geo',
  'vega-hierarchy',
  'vega-label',
  'vega-projection',
  'vega-regression',
  'vega-voronoi',
  'vega-wordcloud',
];
const withoutMaps = {
  name: 'without-maps',
  setup(building) {
    building.onResolve({ filter: /^vega-/ }, ({ path }) =>
      UNUSED.includes(path) ? { path, namespace: 'unused' } : undefined,
    );
    building.onLoad({ filter: /.*/, namespace: 'unused' }, () => ({
      contents: 'module.exports = {}',
      loader: 'js',
    }));
  },
};

// The help is in plain letters, each as wide as the next: no need of the tables that tell wide ones.
// Some import this module and some require it (the progress bar does), so it must be CommonJS.
const plainWidths = {
  name: 'plain-widths',
  setup(building) {
    building.onResolve({ filter: /^string-width$/ }, ({ path }) => ({ path, namespace: 'plain' }));
    building.onLoad({ filter: /.*/, namespace: 'plain' }, () => ({
      contents: 'module.exports = (text) => text.length;',
    }));
  },
};

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
  banner: {
    js: "import { createRequire as cuptideRequire } from 'node:module'; const require = cuptideRequire(import.meta.url);",
  },
  legalComments: 'none',
  logLevel: 'warning',
  plugins: [plainWidths],
});
chmodSync(`${dist}/cuptide.js`, 0o755);
// The solver's program, which it looks for beside the command.
copyFileSync(`${root}node_modules/highs/build/highs.wasm`, `${dist}/highs.wasm`);

// The page: its script stands in the document as it is, so nothing in it may end a script element; the
// engine is packed, which keeps a letter small enough for the post.
const [script, engine] = await Promise.all([
  forPage('src/page/main.tsx'),
  forPage('src/page/engine/worker.ts'),
]);
const safe = script.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
writeFileSync(
  `${dist}/page.json`,
  JSON.stringify({
    script: safe,
    scriptHash: `sha256-${createHash('sha256').update(safe).digest('base64')}`,
    engine: deflateRawSync(engine, { level: 9 }).toString('base64'),
  }),
);

writeFileSync(`${dist}/typefaces.css`, await typefaceStyle());
writeFileSync(`${dist}/typefaces-licence.txt`, await typefaceLicences());

async function forPage(entry) {
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    legalComments: 'none',
    charset: 'utf8',
    write: false,
    logLevel: 'warning',
    plugins: [withoutMaps],
  });
  return outputFiles[0].text;
}

execFileSync(process.execPath, [`${root}node_modules/typescript/bin/tsc`, '-p', `${root}src`], {
  stdio: 'inherit',
  cwd: root,
});
