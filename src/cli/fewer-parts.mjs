// The bundler makes a part of the modules that the same commands load on demand: fifty small ones for a question, each of
// which Node has to find, read and link. Nearly every question takes most of what the main one takes, so here each that
// does takes all of it, whatever is loaded on demand counts as taking what starts the command, and all comes in a few parts.
import { join } from 'node:path';
import { build } from 'esbuild';
import { leanParts } from './lean-parts.mjs';

const [COMMAND, LIBRARY] = ['src/cli/main.ts', 'src/index.ts'];
/** What the main question loads when it is asked. */
const QUESTION = ['src/cli/run-question.ts', 'src/questions/size/ask.ts'];
/** Share of that, by size, from which a module that is loaded on demand takes all of it. */
const MOST = 0.4;

/**
 * A plugin of the bundler for modules that are loaded on demand.
 * @param options those of the build that it is for, which must split its modules into parts
 */
export async function fewerParts(options) {
  const { inputs } = (
    await build({
      ...options,
      plugins: options.plugins.filter((plugin) => plugin !== leanParts),
      metafile: true,
      write: false,
    })
  ).metafile;
  const reached = (...from) => {
    const found = new Set();
    const follow = (file) => {
      if (found.has(file) || inputs[file] === undefined) return;
      found.add(file);
      for (const { path, kind } of inputs[file].imports)
        if (kind !== 'dynamic-import') follow(path);
    };
    from.forEach(follow);
    return found;
  };
  const bytes = (files) => files.reduce((sum, file) => sum + inputs[file].bytes, 0);
  const library = reached(LIBRARY);
  const starting = reached(COMMAND);
  const question = [...reached(...QUESTION)].filter((file) => !starting.has(file));
  const beforeIt = [...starting].filter((file) => file !== COMMAND);

  /** What comes with a module that another loads on demand; for the library only what it has loaded already. */
  const along = (file, inLibrary) => {
    const own = reached(file);
    const takesMost = bytes(question.filter((one) => own.has(one))) >= MOST * bytes(question);
    return [...beforeIt, ...(takesMost ? question : [])].filter(
      (one) => one.startsWith('src/') && !own.has(one) && (!inLibrary || library.has(one)),
    );
  };
  const named = (path) => path.slice(options.absWorkingDir.length);
  return {
    name: 'fewer-parts',
    setup(building) {
      building.onResolve({ filter: /^\..*\.js$/ }, ({ path, kind, importer, resolveDir }) => {
        const file = named(join(resolveDir, path).replace(/\.js$/, '.ts'));
        if (kind !== 'dynamic-import' || inputs[file] === undefined) return undefined;
        const suffix = library.has(named(importer)) ? '?library' : '';
        return { path: file, suffix, namespace: 'on-demand' };
      });
      building.onLoad({ filter: /.*/, namespace: 'on-demand' }, ({ path, suffix }) => ({
        resolveDir: options.absWorkingDir,
        contents: [
          `export * from './${path}';`,
          ...along(path, suffix !== '').map((one) => `import './${one}';`),
        ].join('\n'),
      }));
    },
  };
}
