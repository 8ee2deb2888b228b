/**
 * The inputs of a study: every value the answer rests on, where it came from and how sure it is.
 */
import type * as z from 'zod';
import type { Basis } from '../catalogue/catalogue.js';
import { dotted, isWithin, pathKey, type Path } from './path.js';
import { eachValue } from './schema-walk.js';
import { valueAt, type Wrap } from './tree.js';

export interface Input {
  /** Dotted: "guests.dwell". */
  readonly path: string;
  readonly at: Path;
  /** As written in the file or in the reference data. */
  readonly value: unknown;
  readonly basis: Basis;
  /** The lowest and highest plausible value, as written; null where none was given. */
  readonly range: readonly [unknown, unknown] | null;
  readonly source: string;
  /** Written in the file, or filled in because the file was silent. */
  readonly origin: 'file' | 'default';
}

/** Choices and facts of the house that nobody measures. */
const notInputs: readonly Path[] = [['level'], ['seed'], ['hours'], ['have'], ['calendar']];
const wordKinds = new Set(['text', 'currency', 'clock', 'moment']);

/** How long a step or a spell lasts is part of its shape, and a word of a class is none to doubt. */
const isNoInput = (path: Path): boolean =>
  path.at(-1) === 'for' || notInputs.some((one) => isWithin(path, one));

/** All inputs, in the order of the tree; marked values first by their mark, then plain ones as assumed. */
export function inputsOf(
  schema: z.core.$ZodType,
  tree: unknown,
  fromFile: readonly Wrap[],
  fromDefaults: readonly Wrap[],
): Input[] {
  const inputs: Input[] = [];
  const marked = new Map<string, { wrap: Wrap; origin: 'file' | 'default' }>();
  for (const wrap of fromDefaults) marked.set(pathKey(wrap.path), { wrap, origin: 'default' });
  for (const wrap of fromFile) marked.set(pathKey(wrap.path), { wrap, origin: 'file' });
  /** Places with something marked below them. */
  const above = new Set(
    [...marked.values()].flatMap(({ wrap }) =>
      wrap.path.map((_, length) => pathKey(wrap.path.slice(0, length))),
    ),
  );
  const seen = new Set<string>();
  const tell = (path: Path): boolean => {
    for (let length = 1; length <= path.length; length++) {
      const key = pathKey(path.slice(0, length));
      const found = marked.get(key);
      if (!found) continue;
      if (!seen.has(key)) {
        seen.add(key);
        const { path: at, value, basis, range, source } = found.wrap;
        inputs.push({ path: dotted(at), at, value, basis, range, source, origin: found.origin });
      }
      return true;
    }
    return false;
  };
  eachValue(schema, tree, (path, value, meta) => {
    if (isNoInput(path) || tell(path) || wordKinds.has(meta.kind)) return;
    if (above.has(pathKey(path))) {
      for (const { wrap } of marked.values()) if (isWithin(wrap.path, path)) tell(wrap.path);
      return;
    }
    inputs.push({
      path: dotted(path),
      at: path,
      value,
      basis: 'assumed',
      range: null,
      source: '',
      origin: 'file',
    });
  });
  for (const { wrap } of marked.values()) {
    if (valueAt(tree, wrap.path) !== undefined && !isNoInput(wrap.path)) tell(wrap.path);
  }
  return inputs;
}
