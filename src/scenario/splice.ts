/**
 * Changing one place of a YAML or JSON text and nothing else: comments, order, quotes and blank lines
 * of the rest stay as they were written. Paths here are those of the file, marks and all.
 *
 * The parser's nodes tell where things stand; the change itself is made in the text.
 */
import { isCollection, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml';
import { flowText, keyText, type Style } from './flow-text.js';
import type { Path } from './path.js';
import {
  afterColon,
  commentsIn,
  cut,
  endOf,
  entryAt,
  entryOf,
  indentAt,
  lineEnd,
  lineStart,
  newline,
  startOf,
  startsLine,
  styleOf,
  valueAtStep,
  valueOf,
  type Collection,
  type Written,
} from './text-places.js';
import { withValueAt } from './tree.js';

/** Puts `by` in the place of a span; comments that stood in it go below, on lines of their own. */
function replaceSpan(text: string, from: number, to: number, by: string): string {
  const lost = text.slice(from, to).includes('#') ? commentsIn(text, from, to) : [];
  const changed = cut(text, from, to, by);
  if (lost.length === 0) return changed;
  const end = lineEnd(changed, from + by.length);
  const indent = /^[ ]*/.exec(changed.slice(lineStart(changed, from)))![0];
  return cut(changed, end, end, lost.map((comment) => newline(text) + indent + comment).join(''));
}

/** Writes a value in the place of another, in its quotes. */
function replaceValue(
  text: string,
  owner: Collection,
  entry: unknown,
  value: unknown,
  style: Style,
): string {
  const node = valueOf(owner, entry);
  const said = flowText(value, style, isScalar(node) ? quoteOf(node.type) : undefined);
  if (isMap(owner)) {
    const pair = entry as Pair;
    const empty = node === null || (isScalar(node) && node.range![0] === node.range![1]);
    if (empty) {
      const at = text.startsWith(':', (pair.key as Node).range![1]) ? afterColon(pair, text) : -1;
      return at < 0
        ? cut(text, (pair.key as Node).range![1], (pair.key as Node).range![1], `: ${said}`)
        : cut(text, at, at, ` ${said}`);
    }
    if (isCollection(node) && node.flow !== true)
      return replaceSpan(text, afterColon(pair, text), endOf(node, text), ` ${said}`);
  }
  return replaceSpan(text, (node as Node).range![0], endOf(node, text), said);
}

const quoteOf = (type: string | null | undefined): 'double' | 'single' | undefined =>
  type === 'QUOTE_DOUBLE' ? 'double' : type === 'QUOTE_SINGLE' ? 'single' : undefined;

/** Adds an entry after another one, or as the first of an empty collection. */
function insert(text: string, owner: Collection, after: unknown, entry: string): string {
  if (owner.flow === true || owner.items.length === 0) {
    const open = (owner as Node).range![0] + 1;
    if (owner.items.length === 0) return cut(text, open, open, isMap(owner) ? ` ${entry} ` : entry);
    const { start, end } = entryOf(after, text);
    const onOwnLine = startsLine(text, start) && lineStart(text, start) > (owner as Node).range![0];
    return cut(
      text,
      end,
      end,
      onOwnLine ? `,${newline(text)}${indentAt(text, start)}${entry}` : `, ${entry}`,
    );
  }
  const first = entryOf(owner.items[0], text).start;
  const { end } = entryOf(after, text);
  const at = lineEnd(text, end);
  if (isMap(owner)) return cut(text, at, at, newline(text) + indentAt(text, first) + entry);
  const dash = text.lastIndexOf('-', first - 1);
  return cut(text, at, at, `${newline(text)}${indentAt(text, dash)}- ${entry}`);
}

/** `value` as it stands at the end of a path that is not there yet: groups are made on the way. */
const nested = (path: Path, value: unknown): unknown => withValueAt(undefined, path, value);

/**
 * The text with a value at a path; null where the place cannot be found (a list would have a gap).
 * @param orderOf names that a group may hold in their usual order; new ones are put there
 */
export function setInText(
  { text, document }: Written,
  path: Path,
  value: unknown,
  orderOf: (path: Path) => readonly string[] = () => [],
): string | null {
  const style = styleOf(text);
  let owner: unknown = document().contents;
  for (const [depth, key] of path.entries()) {
    if (!isMap(owner) && !isSeq(owner)) return null;
    const entry = entryAt(owner, key);
    const rest = path.slice(depth + 1);
    if (entry === undefined) {
      if (isSeq(owner) && Number(key) !== owner.items.length) return null;
      const fresh = flowText(nested(rest, value), style);
      return insert(
        text,
        owner,
        isMap(owner)
          ? predecessor(owner, String(key), orderOf(path.slice(0, depth)))
          : owner.items.at(-1),
        isMap(owner) ? `${keyText(String(key), style)}: ${fresh}` : fresh,
      );
    }
    const node = valueOf(owner, entry);
    if (rest.length === 0 || !isCollection(node))
      return replaceValue(text, owner, entry, nested(rest, value), style);
    owner = node;
  }
  return null;
}

/** The entry after which a new key belongs: the last there of those that usually come before it. */
function predecessor(map: YAMLMap, key: string, order: readonly string[]): unknown {
  const before = new Set(order.slice(0, Math.max(0, order.indexOf(key))));
  return (
    map.items.findLast((pair) => isScalar(pair.key) && before.has(String(pair.key.value))) ??
    map.items.at(-1)
  );
}

/** The text without what stands at a path; null where nothing does. Comments within and beside it go too. */
export function removeFromText({ text, document }: Written, path: Path): string | null {
  let owner: unknown = document().contents;
  let above: { readonly owner: Collection; readonly entry: unknown } | null = null;
  for (const [depth, key] of path.entries()) {
    if (!isMap(owner) && !isSeq(owner)) return null;
    const entry = entryAt(owner, key);
    if (entry === undefined) return null;
    if (depth === path.length - 1) return removeEntry(text, owner, entry, above);
    above = { owner, entry };
    owner = valueOf(owner, entry);
  }
  return null;
}

function removeEntry(
  text: string,
  owner: Collection,
  entry: unknown,
  above: { readonly owner: Collection; readonly entry: unknown } | null,
): string | null {
  const items = owner.items as unknown[];
  const index = items.indexOf(entry);
  const { start, end } = entryOf(entry, text);
  if (items.length === 1)
    return above === null
      ? null
      : replaceValue(text, above.owner, above.entry, isMap(owner) ? {} : [], styleOf(text));
  const next = items[index + 1];
  if (owner.flow === true) {
    if (next !== undefined) return cut(text, start, entryOf(next, text).start, '');
    return cut(text, entryOf(items[index - 1], text).end, end, '');
  }
  const from = isSeq(owner) ? text.lastIndexOf('-', start - 1) : start;
  if (!startsLine(text, from))
    return next === undefined ? null : cut(text, start, entryOf(next, text).start, '');
  const to = lineEnd(text, end);
  const line = lineStart(text, from);
  if (to >= text.length) return cut(text, Math.max(0, line - newline(text).length), to, '');
  return cut(text, line, text.indexOf('\n', to) + 1, '');
}

/** A mark that takes in the value at a path as it is written: `value:` before it, the rest of the mark after it. */
export function markInText(
  { text, document }: Written,
  path: Path,
  mark: Readonly<Record<string, unknown>>,
): string | null {
  const style = styleOf(text);
  const owner = path
    .slice(0, -1)
    .reduce<unknown>(
      (at, key) => (isMap(at) || isSeq(at) ? valueAtStep(at, key) : null),
      document().contents,
    );
  if (!isMap(owner) && !isSeq(owner)) return null;
  const entry = entryAt(owner, path.at(-1)!);
  if (entry === undefined) return null;
  const node = valueOf(owner, entry) as Node | null;
  if (node === null) return null;
  const marks = Object.entries(mark);
  if (isCollection(node) && (node as Collection).flow !== true) {
    if (!isMap(owner) || !startsLine(text, startOf(node, text))) return null;
    const key = entryOf(entry, text).start;
    const indent = `${indentAt(text, key)}  `;
    const from = lineStart(text, startOf(node, text));
    const end = endOf(node, text);
    const line = newline(text);
    const body = text.slice(from, end).replace(/^(?=.*\S)/gm, '  ');
    return cut(
      text,
      from,
      end,
      `${indent}value:${line}${body}${marks.map(([name, one]) => `${line}${indent}${name}: ${flowText(one, style)}`).join('')}`,
    );
  }
  const [from, to] = [startOf(node, text), endOf(node, text)];
  const rest = marks
    .map(([name, one]) => `, ${keyText(name, style)}: ${flowText(one, style)}`)
    .join('');
  return cut(text, from, to, `{ ${keyText('value', style)}: ${text.slice(from, to)}${rest} }`);
}
