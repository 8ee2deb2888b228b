// What the option parser does at every start and the command has no use of: a fifth of the time that its help takes.
import { inPlaceOf } from './in-place-of.mjs';

/** Plugins of the bundler. */
export const plainOptions = [
  // The help is in plain letters, each as wide as the next: no need of the tables that tell wide ones.
  // Some import this module and some require it (the progress bar does), so it must be CommonJS.
  inPlaceOf('plain-widths', /^string-width$/, 'module.exports = (text) => text.length;'),
  // Nor of the codes of colours, which it would keep together where a line is folded.
  inPlaceOf('plain-colours', /^ansi-styles$/, 'export default { codes: new Map() };'),
  // It asserts two things, for which Node would load all its ways of telling how values differ.
  inPlaceOf(
    'plain-asserts',
    /^assert$/,
    `export const strictEqual = (one, other, message) => { if (!Object.is(one, other)) throw new Error(message); };
    export const notStrictEqual = (one, other, message) => { if (Object.is(one, other)) throw new Error(message); };`,
  ),
  // It checks what our own code calls it with, which the types have done.
  inPlaceOf('no-argument-checks', /^\.\/argsert\.js$/, 'export const argsert = () => {};'),
  // It searches all folders above for a package whose version it might print; ours is given.
  inPlaceOf('no-search-above', /^escalade\/sync$/, 'export default () => undefined;'),
  // It looks for its messages in other languages, which are not bundled, in a folder beside ours that may be anybody's.
  inPlaceOf(
    'no-other-languages',
    /^\.\/build\/lib\/platform-shims\/node\.js$/,
    `import { format } from 'util';
    export default { fs: {}, format, resolve: () => '', exists: () => false };`,
  ),
];
