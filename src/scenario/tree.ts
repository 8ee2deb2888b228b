/**
 * A scenario as a plain tree (what YAML or JSON holds), paths into it, and values marked with their
 * basis: `{ value, basis, range, source }` may stand for any value, and is unwrapped here.
 */
import { bases, type Basis } from '../catalogue/catalogue.js';
import { didYouMean } from '../quantities/nearest.js';
import { kindOf } from '../quantities/parsed.js';
import { isMark, MARK_KEYS } from './name-maps.js';
import { pathKey, type Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';

export const isGroup = (node: unknown): node is Record<string, unknown> =>
  typeof node === 'object' && node !== null && !Array.isArray(node);

const child = (node: unknown, key: string | number): unknown => {
  if (Array.isArray(node))
    return typeof key === 'number' || /^\d+$/.test(key)
      ? (node as unknown[])[Number(key)]
      : undefined;
  return isGroup(node) && Object.hasOwn(node, key) ? node[key] : undefined;
};

/** What stands at a path; undefined where there is nothing. */
export const valueAt = (tree: unknown, path: Path): unknown => path.reduce(child, tree);

/** The length of a list on the way that a path steps beyond. */
export function listGap(tree: unknown, path: Path): number | null {
  for (const [depth, key] of path.entries()) {
    const owner = valueAt(tree, path.slice(0, depth));
    if (Array.isArray(owner) && Number(key) > owner.length) return owner.length;
  }
  return null;
}

/** The group at a path; an empty one where there is none. */
export const groupAt = (tree: unknown, ...path: readonly string[]): Record<string, unknown> => {
  const found = valueAt(tree, path);
  return isGroup(found) ? found : {};
};

/** A copy of the tree with another value at the path; groups on the way are made where they are missing. */
export function withValueAt(tree: unknown, path: Path, value: unknown): unknown {
  if (path.length === 0) return value;
  const [key, ...rest] = path as readonly [string | number, ...(string | number)[]];
  const changed = withValueAt(child(tree, key), rest, value);
  if (Array.isArray(tree)) return Object.assign([...(tree as unknown[])], { [key]: changed });
  return { ...(isGroup(tree) ? tree : {}), [key]: changed };
}

/** A value in the tree that tells what it is based on. */
export interface Wrap {
  /** Where the value stands once unwrapped. */
  readonly path: Path;
  readonly value: unknown;
  readonly basis: Basis;
  readonly range: readonly [unknown, unknown] | null;
  readonly source: string;
}

export interface Unwrapped {
  readonly tree: unknown;
  readonly wraps: readonly Wrap[];
  /** Path after unwrapping → path in the file, for every node below a wrap. */
  readonly filePath: (path: Path) => Path;
  readonly flaws: readonly Flaw[];
}

/** Takes the marks off a tree and lists them. `at` is where the tree stands in the scenario, if it is a part. */
export function unwrap(tree: unknown, at: Path = []): Unwrapped {
  const wraps: Wrap[] = [];
  const flaws: Flaw[] = [];
  const wrapped = new Map<string, Path>();

  /** `path`: after unwrapping; `file`: as in the file. */
  const visit = (node: unknown, path: Path, file: Path): unknown => {
    if (Array.isArray(node))
      return node.map((item: unknown, i) => visit(item, [...path, i], [...file, i]));
    if (!isGroup(node)) return node;
    if (isMark(node, path)) return takeOff(node, path, file);
    return Object.fromEntries(
      Object.entries(node).map(([key, item]) => [key, visit(item, [...path, key], [...file, key])]),
    );
  };

  const takeOff = (node: Record<string, unknown>, path: Path, file: Path): unknown => {
    wrapped.set(pathKey(path), [...file, 'value']);
    const flaw = (key: string, rule: string, remedy: string, onKey = false): void => {
      flaws.push({
        ...problemAt([...path, key], node[key], rule, remedy),
        file: [...file, key],
        onKey,
      });
    };
    for (const key of Object.keys(node)) {
      if (!MARK_KEYS.includes(key))
        flaw(
          key,
          'is not a field of a marked value (value, basis, range, source)',
          didYouMean(key, MARK_KEYS),
          true,
        );
    }
    const { basis = 'assumed', range, source = '' } = node;
    if (!bases.includes(basis as Basis))
      flaw(
        'basis',
        `is not a basis (${bases.join(', ')})`,
        typeof basis === 'string' ? didYouMean(basis, bases) : 'write one of these words',
      );
    if (typeof source !== 'string')
      flaw(
        'source',
        `is ${kindOf(source)} where text is needed`,
        'write in words where the value comes from',
      );
    const isRange = Array.isArray(range) && range.length === 2;
    if (range !== undefined && !isRange)
      flaw(
        'range',
        'is not a pair of values',
        'write the lowest and the highest plausible value, such as [20 min, 40 min]',
      );
    if (isGroup(node['value']) && Object.hasOwn(node['value'], 'value'))
      flaw('value', 'is marked twice', 'keep only one of the marks');
    const value = visit(node['value'], path, [...file, 'value']);
    wraps.push({
      path,
      value,
      basis: bases.includes(basis as Basis) ? (basis as Basis) : 'assumed',
      range: isRange ? [range[0], range[1]] : null,
      source: typeof source === 'string' ? source : '',
    });
    return value;
  };

  const plain = visit(tree, at, at);
  const filePath = (path: Path): Path => {
    if (wrapped.size === 0) return path;
    for (let length = path.length; length >= 0; length--) {
      const found = wrapped.get(pathKey(path.slice(0, length)));
      if (found) return [...found, ...path.slice(length)];
    }
    return path;
  };
  return { tree: plain, wraps, filePath, flaws };
}
