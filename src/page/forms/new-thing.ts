/** Something new by a few values (a supplier, a quote, a shelf), as a change of the scenario. */
import type { Units } from '../../quantities/us-units.js';
import type { Edit } from '../../scenario/edit.js';
import type { PartAddition } from '../../scenario/input-forms.js';
import { freshId, heldFor } from './edit-of.js';

type Key = string | number;
/** A value as a line of the file, or values by name. */
type Node = string | Map<string, Node>;

function put(node: Map<string, Node>, path: readonly string[], value: Node): void {
  const [first, ...rest] = path;
  if (rest.length === 0) return void node.set(first!, value);
  const inner = node.get(first!);
  const below = inner instanceof Map ? inner : new Map<string, Node>();
  node.set(first!, below);
  put(below, rest, value);
}

const lineOf = (node: Node): string =>
  typeof node === 'string'
    ? node
    : `{ ${[...node].map(([key, value]) => `${JSON.stringify(key)}: ${lineOf(value)}`).join(', ')} }`;

/**
 * @param name what people call it, or the id chosen; '' for one in a list or a group
 * @param named the thing has a name of its own beside its id
 * @param texts what was typed for each of its needs
 */
export function newThing(
  { at, by, taken, names, needs, empty }: PartAddition,
  name: string,
  named: boolean,
  texts: readonly string[],
  units: Units,
): Edit & { readonly flow: string } {
  const key: Key | null =
    by === 'group'
      ? null
      : by === 'place'
        ? taken.length
        : names.length > 0
          ? name
          : freshId(name, taken);
  const path = key === null ? at : [...at, key];
  const tree = new Map<string, Node>();
  if (by === 'name' && named && names.length === 0) tree.set('name', JSON.stringify(name.trim()));
  for (const one of empty) put(tree, one.map(String), '{}');
  for (const [i, need] of needs.entries())
    put(tree, need.at.slice(path.length).map(String), heldFor(need, texts[i] ?? '', units));
  return { kind: 'set', path, flow: tree.size === 0 ? '{}' : lineOf(tree) };
}
