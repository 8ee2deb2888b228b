/**
 * Where the parts of a YAML or JSON text stand: its entries, their values and comments, by the parser's nodes.
 */
import {
  isCollection,
  isMap,
  isScalar,
  Lexer,
  parseDocument,
  type Document,
  type Node,
  type Pair,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Style } from './flow-text.js';

export type Collection = YAMLMap | YAMLSeq;
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
export const newline = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
export const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;
export const lineEnd = (text: string, at: number): number => {
  const found = text.indexOf('\n', at);
  const end = found < 0 ? text.length : found;
  return text[end - 1] === '\r' && end > at ? end - 1 : end;
};
export const indentAt = (text: string, at: number): string => ' '.repeat(at - lineStart(text, at));
export const startsLine = (text: string, at: number): boolean =>
  text.slice(lineStart(text, at), at).trim() === '';
export const cut = (text: string, from: number, to: number, by: string): string =>
  text.slice(0, from) + by + text.slice(to);

/** Where a node's text ends, without blank lines and comments after it. */
export function endOf(node: unknown, text: string): number {
  if (isCollection(node) && node.flow !== true && node.items.length > 0) {
    const last = node.items.at(-1);
    return entryOf(last, text).end;
  }
  let end = (node as Node).range?.[1] ?? 0;
  while (text[end - 1] === '\n' || text[end - 1] === '\r') end -= 1;
  return end;
}

export function startOf(node: unknown, text: string): number {
  const { range, anchor } = node as Node & { anchor?: string };
  const start = range?.[0] ?? 0;
  return anchor === undefined ? start : text.lastIndexOf(`&${anchor}`, start);
}

/** An entry of a map (from its key) or of a list. */
export function entryOf(item: unknown, text: string): Entry {
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
export const afterColon = (pair: Pair, text: string): number =>
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

const pairOf = (map: YAMLMap, key: string | number): Pair | undefined =>
  map.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === String(key));

/** What stands at a step of a path: undefined if nothing does. */
export function entryAt(owner: Collection, key: string | number): unknown {
  return isMap(owner) ? pairOf(owner, key) : (owner.items as unknown[])[Number(key)];
}
export const valueOf = (owner: Collection, entry: unknown): unknown =>
  isMap(owner) ? (entry as Pair).value : entry;

export const valueAtStep = (owner: Collection, key: string | number): unknown => {
  const entry = entryAt(owner, key);
  return entry === undefined ? null : valueOf(owner, entry);
};
