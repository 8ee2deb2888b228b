// Builds what `npm ci` leaves in dist/: the command, its worker, the library entry and its types, and the page's two programs.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateAsync } from '@gfx/zopfli';
import { build } from 'esbuild';
import { fewerParts } from './fewer-parts.mjs';
import { inPlaceOf } from './in-place-of.mjs';
import { leanParts } from './lean-parts.mjs';
import { bundledLicences } from './licences.mjs';
import { textOfBytes } from './packed-text.mjs';
import { plainOptions } from './plain-options.mjs';
import { typefaceLicences, typefaceStyle } from './typefaces.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const dist = `${root}dist`;
rmSync(dist, { recursive: true, force: true });

// Vega carries the drawing of maps, trees and forces, which no picture of ours uses: a sixth of the page.
const withoutMaps = inPlaceOf(
  'without-maps',
  /^(vega-(crossfilter|force|geo|hierarchy|label|projection|regression|statistics|voronoi|wordcloud)|d3-geo)$/,
  'module.exports = {}',
);
// Ready-made lists of colours for it: our charts name theirs.
const withoutColours = inPlaceOf(
  'without-colours',
  /^d3-scale-chromatic$/,
  [
    'Accent',
    'Category10',
    'Dark2',
    'Observable10',
    'Paired',
    'Pastel1',
    'Pastel2',
    'Set1',
    'Set2',
    'Set3',
  ]
    .map((name) => `exports.scheme${name} = [];`)
    .join(''),
);
// As the page has it: modules of which only what is used is taken, where Node would be given one whole.
const yamlInModules = {
  name: 'yaml-in-modules',
  setup(building) {
    building.onResolve({ filter: /^yaml$/ }, () => ({
      path: `${root}node_modules/yaml/browser/dist/index.js`,
      sideEffects: false,
    }));
  },
};
// It looks for generators by eval, which the policy of a page forbids; every engine has them.
const withoutEval = inPlaceOf(
  'without-eval',
  /^@stdlib\/assert-has-generator-support$/,
  'module.exports = () => true;',
);
// The letter shows what a question answers; the files that a command writes beside it stay out of it.
const withoutFiles = inPlaceOf('without-files', /^\.\/files\.js$/, 'module.exports = {};');
// The reader of tables knows text as Node's bytes, which a browser has not.
const plainBytes = {
  name: 'plain-bytes',
  setup(building) {
    building.onLoad({ filter: /csv-parse\/lib\/.*\.js$/ }, ({ path }) => ({
      contents: `import { Buffer } from ${JSON.stringify(`${root}src/page/engine/bytes-buffer.ts`)};\n${readFileSync(path, 'utf8')}`,
      resolveDir: dirname(path),
    }));
  },
};
// Schemas of files can be written as JSON Schema, by the command alone.
const withoutJsonSchema = {
  name: 'without-json-schema',
  setup(building) {
    building.onLoad(
      { filter: /zod\/v4\/core\/(to-json-schema|json-schema-processors)\.js$/ },
      ({ path }) => {
        const names = readFileSync(path, 'utf8').matchAll(/^export (?:const|function) (\w+)/gm);
        return {
          contents: [...names]
            .map(([, name]) => `export const ${name} = () => () => {};`)
            .join('\n'),
        };
      },
    );
  },
};
// The page reads single values as people write them; the schemas that are made of the same readers are the engine's.
const withoutSchemas = inPlaceOf(
  'without-schemas',
  /^zod$/,
  `export const registry = () => ({ add() {} });
  export const unknown = () => ({ transform: () => ({}) });
  export const NEVER = undefined;`,
);
// One part of Vega asks for another's older version, which does the same and would be carried twice.
const oneOfEach = {
  name: 'one-of-each',
  setup(building) {
    building.onResolve({ filter: /^vega-expression$/ }, () => ({
      path: `${root}node_modules/vega-expression/build/vega-expression.js`,
    }));
  },
};
// Vega draws on a canvas where there is one; our pictures are SVG.
const withoutCanvas = inPlaceOf('without-canvas', /^canvas$/, 'module.exports = {};');

// Counts of racks for the classes of the catalogue, worked out here once rather than at every start. Not for the page,
// which stays open: it need not be larger for them.
const { outputFiles: counting } = await build({
  absWorkingDir: root,
  entryPoints: ['src/scenario/class-counts.ts'],
  bundle: true,
  format: 'esm',
  platform: 'node',
  write: false,
  logLevel: 'warning',
});
const { countsOfClasses } = await import(
  `data:text/javascript;base64,${Buffer.from(counting[0].contents).toString('base64')}`
);
const withClassCounts = {
  name: 'with-class-counts',
  setup(building) {
    building.onLoad({ filter: /src\/racking\/class-counts\.ts$/ }, () => ({
      contents: `export const classCounts = ${JSON.stringify(countsOfClasses())};`,
    }));
  },
};

const command = {
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
  // Numbers in place of their names, from part to part; names and lines stay for whoever reads a stack.
  minifySyntax: true,
  legalComments: 'none',
  logLevel: 'warning',
  plugins: [yamlInModules, ...plainOptions, withoutEval, withoutCanvas, withClassCounts, leanParts],
};
const { metafile } = await build({
  ...command,
  metafile: true,
  plugins: [await fewerParts(command), ...command.plugins],
});
chmodSync(`${dist}/cuptide.js`, 0o755);
// The solver's program, which it looks for beside the command.
copyFileSync(`${root}node_modules/highs/build/highs.wasm`, `${dist}/highs.wasm`);

// The page: its first script stands in the document as it is, so nothing in it may end a script element; the
// page's own and the engine are packed, which keeps a letter small enough for the post.
const [boot, page, engine] = await Promise.all([
  forPage('src/page/boot.ts', { target: 'es2017' }),
  forPage('src/page/main.tsx', { plugins: [withoutSchemas] }),
  forPage('src/page/engine/worker.ts', {
    inject: ['src/page/engine/bytes-blob.ts'],
    plugins: [
      withoutMaps,
      withoutColours,
      withoutEval,
      withoutFiles,
      withoutJsonSchema,
      oneOfEach,
      plainBytes,
    ],
  }),
]);
const safe = (text) => text.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
const scripts = [safe(boot.text), page.text];
// Packed once and carried by every letter: a twenty-fifth smaller than zlib makes it, for some seconds of the build.
const packed = async (text) =>
  textOfBytes(await deflateAsync(Buffer.from(text), { numiterations: 1 }));
writeFileSync(
  `${dist}/page.json`,
  JSON.stringify({
    script: scripts[0],
    scriptHashes: scripts.map(
      (text) => `sha256-${createHash('sha256').update(text).digest('base64')}`,
    ),
    page: await packed(page.text),
    engine: await packed(engine.text),
  }),
);

const bundled = [metafile, boot.metafile, page.metafile, engine.metafile].flatMap(({ inputs }) =>
  Object.keys(inputs),
);
writeFileSync(`${dist}/bundled-licences.txt`, bundledLicences(root, bundled));
writeFileSync(`${dist}/typefaces.css`, await typefaceStyle());
writeFileSync(`${dist}/typefaces-licence.txt`, await typefaceLicences());

async function forPage(entry, more = {}) {
  const { outputFiles, metafile: made } = await build({
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
    metafile: true,
    logLevel: 'warning',
    ...more,
  });
  return { text: outputFiles[0].text, metafile: made };
}

execFileSync(process.execPath, [`${root}node_modules/typescript/bin/tsc`, '-p', `${root}src`], {
  stdio: 'inherit',
  cwd: root,
});
keepReached(`${dist}/types/src/index.d.ts`);

/** Of the declarations only those stay that the library's own lead to. */
function keepReached(entry) {
  const reached = new Set();
  const follow = (file) => {
    if (reached.has(file) || !existsSync(file)) return;
    reached.add(file);
    const found = readFileSync(file, 'utf8').matchAll(/(?:from |import\()['"](\.[^'"]+)\.js['"]/g);
    for (const [, path] of found) follow(resolve(dirname(file), `${path}.d.ts`));
  };
  follow(entry);
  for (const name of readdirSync(`${dist}/types`, { recursive: true }))
    if (name.endsWith('.d.ts') && !reached.has(`${dist}/types/${name}`))
      rmSync(`${dist}/types/${name}`);
}
