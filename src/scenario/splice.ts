/**
 * Changing one place of a YAML or JSON text and nothing else: comments, order, quotes and blank lines
 * of the rest stay as they were written. Paths here are those of the file, marks and all.
 *
 * The parser's nodes tell where things stand; the change itself is made in the text.
 */
import {
  isAlias,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  parseDocument,
  visit,
  type Document,
  type Node,
  type Pair,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import { flowText, keyText, type Style } from './flow-text.js';
import type { Path } from './path.js';
import { valueAt, withValueAt } from './tree.js';

type Collection = YAMLMap | YAMLSeq;
interface Entry {
  readonly start: number;
  readonly end: number;
  readonly value: unknown;
}

/** The document as scenario files are read. */
const documentOf = (text: string): Document =>
  parseDocument(text, {
    prettyErrors: false,
    version: '1.2',
    schema: 'core',
    merge: false,
    uniqueKeys: false,
    logLevel: 'error',
  });

/** A text and, parsed when it is first asked for, its document. */
export interface Written {
  readonly text: string;
  readonly document: () => Document;
}

export function written(text: string): Written {
  let parsed: Document | null = null;
  return { text, document: () => (parsed ??= documentOf(text)) };
}

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

/** JSON in full, not only in its look: what is written into it must stay so. */
export const styleOf = (text: string): Style =>
  text.trimStart().startsWith('{') && isJson(text) ? 'json' : 'yaml';
const newline = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;
const lineEnd = (text: string, at: number): number => {
  const found = text.indexOf('\n', at);
  const end = found < 0 ? text.length : found;
  return text[end - 1] === '\r' && end > at ? end - 1 : end;
};
const indentAt = (text: string, at: number): string => ' '.repeat(at - lineStart(text, at));
const startsLine = (text: string, at: number): boolean =>
  text.slice(lineStart(text, at), at).trim() === '';
const cut = (text: string, from: number, to: number, by: string): string =>
  text.slice(0, from) + by + text.slice(to);

/** Where a node's text ends, without blank lines and comments after it. */
function endOf(node: unknown, text: string): number {
  if (isCollection(node) && node.flow !== true && node.items.length > 0) {
    const last = node.items.at(-1);
    return entryOf(last, text).end;
  }
  let end = (node as Node).range?.[1] ?? 0;
  while (text[end - 1] === '\n' || text[end - 1] === '\r') end -= 1;
  return end;
}

function startOf(node: unknown, text: string): number {
  const { range, anchor } = node as Node & { anchor?: string };
  const start = range?.[0] ?? 0;
  return anchor === undefined ? start : text.lastIndexOf(`&${anchor}`, start);
}

/** An entry of a map (from its key) or of a list. */
function entryOf(item: unknown, text: string): Entry {
  const pair = item as Pair;
  if (!('key' in (item as object)))
    return { start: startOf(item, text), end: endOf(item, text), value: item };
  const key = pair.key as Node;
  return {
    start: startOf(key, text),
    end: pair.value === null ? key.range![1] : endOf(pair.value, text),
    value: pair.value,
  };
}

/** The place after the colon of a pair. */
const afterColon = (pair: Pair, text: string): number =>
  text.indexOf(':', (pair.key as Node).range![1]) + 1;

/** Comments that begin between two places, as written. */
export function commentsIn(text: string, from = 0, to = text.length): string[] {
  const found: string[] = [];
  let at = 0;
  for (const lexeme of new Lexer().lex(text)) {
    if (lexeme.length === 1 && '\u0002\u0018\u001f'.includes(lexeme)) continue;
    if (lexeme.startsWith('#') && at >= from && at < to) found.push(lexeme.trimEnd());
    at += lexeme.length;
  }
  return found;
}

/** Puts `by` in the place of a span; comments that stood in it go below, on lines of their own. */
function replaceSpan(text: string, from: number, to: number, by: string): string {
  const lost = text.slice(from, to).includes('#') ? commentsIn(text, from, to) : [];
  const changed = cut(text, from, to, by);
  if (lost.length === 0) return changed;
  const end = lineEnd(changed, from + by.length);
  const indent = /^[ ]*/.exec(changed.slice(lineStart(changed, from)))![0];
  return cut(changed, end, end, lost.map((comment) => newline(text) + indent + comment).join(''));
}

const pairOf = (map: YAMLMap, key: string | number): Pair | undefined =>
  map.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === String(key));

/** What stands at a step of a path: undefined if nothing does. */
function entryAt(owner: Collection, key: string | number): unknown {
  return isMap(owner) ? pairOf(owner, key) : (owner.items as unknown[])[Number(key)];
}
const valueOf = (owner: Collection, entry: unknown): unknown =>
  isMap(owner) ? (entry as Pair).value : entry;

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

const valueAtStep = (owner: Collection, key: string | number): unknown => {
  const entry = entryAt(owner, key);
  return entry === undefined ? null : valueOf(owner, entry);
};

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
