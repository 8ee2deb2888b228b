// Bundling makes `var` of every `const` at the top of a module, and the engine then reads each number and table anew
// in every loop. In what comes of our own modules they become constants again, up to a tenth of a simulated day; packages
// may import each other in circles and stay as they are.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { transform } from 'esbuild';

/** A plugin of the bundler, which writes the files in its place. */
export const leanParts = {
  name: 'lean-parts',
  setup(building) {
    building.initialOptions.write = false;
    const banner = building.initialOptions.banner?.js ?? '';
    building.onEnd(async ({ outputFiles = [] }) => {
      for (const { path, text } of outputFiles) {
        const constant = withConstants(withRequireWhereNeeded(text, banner));
        // Fails where a module declares with `let` at its top and assigns later: keep that in an object.
        await transform(constant, { logOverride: { 'assign-to-constant': 'error' } });
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(path, constant);
      }
    });
  },
};

/** The banner makes `require`, which takes a while in each of the many parts and which few of them ask for. */
function withRequireWhereNeeded(text, banner) {
  const without = text.replace(`${banner}\n`, '');
  return /\brequire\b/.test(without) ? text : without;
}

/** The bundler names each module in a comment before what comes of it. */
function withConstants(text) {
  let ours = false;
  return text
    .split('\n')
    .map((line) => {
      if (line.startsWith('// ')) ours = /^\/\/ (src|tests)\//.test(line);
      return ours ? line.replace(/^var (?=.* = )/, 'const ') : line;
    })
    .join('\n');
}
