/**
 * Paths into a scenario's tree: keys of groups and places in lists (from 0).
 */
import type { Path } from '../quantities/flaw.js';

export type { Path };

/** "menu.flat-white.share", "washing.machines[0].cycle"; '' for the whole. */
export const dotted = (path: Path): string =>
  path.map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`)).join('');

/** A path as one text, for maps keyed by path. */
export const pathKey = (path: Path): string => path.join('\u0000');

/** Whether `path` is `ancestor` or lies below it. */
export const isWithin = (path: Path, ancestor: Path): boolean =>
  ancestor.length <= path.length &&
  ancestor.every((key, i) => path[i] === key || String(path[i]) === String(key));
