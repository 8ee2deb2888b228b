/** Dotted paths into a raw tree, in which any value may be marked with its basis. */
import { scaleWritten } from '../quantities/law-text.js';
import { isMark } from './name-maps.js';
import type { Path } from './path.js';
import { isGroup, valueAt, withValueAt } from './tree.js';

/** "washing.machines[1].cycle" → ['washing', 'machines', 1, 'cycle']; null where it is not so written. */
export function parsePath(text: string): Path | null {
  const path: (string | number)[] = [];
  for (const part of text.trim().split('.')) {
    const found = /^([^[\]\s]+)((?:\[\d+\])*)$/.exec(part);
    if (found === null) return null;
    path.push(found[1]!, ...[...found[2]!.matchAll(/\[(\d+)\]/g)].map((match) => Number(match[1])));
  }
  return path.some((key) => key === '__proto__' || key === 'constructor') ? null : path;
}

/** The path in the raw tree of a path in the unwrapped one: marks on the way are entered. */
function rawPath(raw: unknown, path: Path): Path {
  const found: (string | number)[] = [];
  for (const [depth, key] of path.entries()) {
    const here = valueAt(raw, found);
    if (isGroup(here) && isMark(here, path.slice(0, depth))) found.push('value');
    found.push(key);
  }
  return found;
}

/** The raw tree with another value at a path of the unwrapped one. */
export const withRawValue = (raw: unknown, path: Path, value: unknown): unknown =>
  withValueAt(raw, rawPath(raw, path), value);

export const rawValueAt = (raw: unknown, path: Path): unknown => valueAt(raw, rawPath(raw, path));

/** The raw tree without what stands at a path; places in a list close up. */
export function withoutRaw(raw: unknown, path: Path): unknown {
  const at = rawPath(raw, path);
  const [parent, key] = [at.slice(0, -1), at.at(-1)!];
  const owner = valueAt(raw, parent);
  if (Array.isArray(owner))
    return withValueAt(
      raw,
      parent,
      owner.filter((_, index) => index !== key),
    );
  return withValueAt(
    raw,
    parent,
    isGroup(owner)
      ? Object.fromEntries(Object.entries(owner).filter(([one]) => one !== String(key)))
      : owner,
  );
}

/** Counts stay whole when they are scaled. */
const counts = new Set([
  'count',
  'makers',
  'clearers',
  'tripPieces',
  'hands',
  'owned',
  'perRack',
  'lowWater',
  'whenDirty',
]);
/** What of a group does not grow with it: how long steps last, and how they share the whole. */
const shapes = new Set(['for', 'every', 'shape', 'dayFactor', 'source', 'basis']);

/** Every figure of a raw node times `factor`, ranges too; text without a number stays. */
export function scaled(node: unknown, factor: number, key: string | number = ''): unknown {
  if (typeof node === 'number')
    return counts.has(String(key)) ? Math.max(1, Math.round(node * factor)) : tidy(node * factor);
  if (typeof node === 'string') return node.includes(':') ? node : scaleWritten(node, factor);
  if (Array.isArray(node)) return node.map((item: unknown) => scaled(item, factor, key));
  if (!isGroup(node)) return node;
  return Object.fromEntries(
    Object.entries(node).map(([name, item]) => [
      name,
      shapes.has(name)
        ? item
        : scaled(item, factor, name === 'value' || name === 'range' ? key : name),
    ]),
  );
}

/** Twelve digits: no dust of binary fractions in what is read again as text. */
export const tidy = (value: number): number => Number(value.toPrecision(12));
