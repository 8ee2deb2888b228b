/** A YAML text without the aliases that would carry a change elsewhere. */
import { isAlias, isMap, isScalar, isSeq, visit, type Document, type Node, type Pair } from 'yaml';
import { flowText } from './flow-text.js';
import type { Path } from './path.js';
import { cut, valueAtStep, written, type Written } from './text-places.js';
import { valueAt } from './tree.js';

/**
 * The text in which no alias has to do with the path: those on the way to it, and those that repeat
 * what stands there or around it, are written out. null if that does not come to an end.
 */
export function withoutSharing(from: Written, path: Path, tree: unknown): Written | null {
  if (!from.text.includes('*')) return from;
  let own = from;
  for (let round = 0; round < 1000; round += 1) {
    const alias = sharedAt(own.document(), path);
    if (alias === null) return own;
    const [start, end] = alias.node.range!;
    own = written(cut(own.text, start, end, flowText(valueAt(tree, alias.at), 'yaml')));
  }
  return null;
}

/** The first alias that shares something with the path, and where it stands. */
function sharedAt(
  document: Document,
  path: Path,
): { readonly node: Node; readonly at: Path } | null {
  const touched = new Set<unknown>();
  let node: unknown = document.contents;
  for (const [depth, key] of [...path, null].entries()) {
    if (isAlias(node)) return { node, at: path.slice(0, depth) };
    touched.add(node);
    if (key === null || (!isMap(node) && !isSeq(node))) break;
    node = valueAtStep(node, key);
  }
  if (node !== null && node !== undefined)
    visit(node as Node, { Node: (_, one) => void touched.add(one) });
  touched.delete(document.contents);
  let found: { readonly node: Node; readonly at: Path } | null = null;
  visit(document, {
    Alias(_, one, ancestors) {
      const target = one.resolve(document);
      if (target === undefined || !touched.has(target)) return undefined;
      found = { node: one, at: pathOf(one, ancestors) };
      return visit.BREAK;
    },
  });
  return found;
}

function pathOf(node: Node, ancestors: readonly unknown[]): Path {
  const chain = [...ancestors, node];
  return chain.flatMap((one, i): (string | number)[] => {
    if (isSeq(one)) return [(one.items as unknown[]).indexOf(chain[i + 1])];
    const key = typeof one === 'object' && one !== null && 'key' in one ? (one as Pair).key : null;
    return isScalar(key) ? [String(key.value)] : [];
  });
}
