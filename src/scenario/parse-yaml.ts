/**
 * Text → plain tree with the place of every node. YAML 1.2, of which JSON is a part.
 *
 * The tree is built by hand from the parser's nodes, so that duplicate and dangerous keys, exploding
 * aliases and endless nesting are refused, and every node's line and column is known.
 */
import {
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  parseDocument,
  type Document,
  type Node,
} from 'yaml';
import type { Flaw, Position } from './problems.js';
import { problemAt } from './problems.js';
import { pathKey, type Path } from './path.js';
import { isGroup, valueAt } from './tree.js';
import { grammar } from './yaml-grammar.js';

/** Largest file read, in bytes; larger ones cost the YAML parser seconds and hundreds of megabytes. */
export const largestScenarioBytes = 1_000_000;

/** Nodes that aliases may repeat in all: a few shared groups, never an explosion. */
const mostRepeatedNodes = 5_000;
const deepestNesting = 40;
const forbiddenKeys = new Set(['__proto__', 'constructor', 'prototype']);

export interface ParsedText {
  readonly tree: unknown;
  /** Where a path stands: its value if that is one word or number, else its key; the nearest parent if it is not there. */
  readonly positionOf: (path: Path, onKey?: boolean) => Position;
}

export type Parse =
  | { readonly ok: true; readonly parsed: ParsedText }
  | {
      readonly ok: false;
      readonly flaws: readonly PlacedFlaw[];
      readonly parsed: ParsedText | null;
    };

export interface PlacedFlaw extends Flaw {
  readonly position: Position;
}

const start: Position = { line: 1, column: 1 };
const refuse = (rule: string, remedy: string, position: Position = start): Parse => ({
  ok: false,
  parsed: null,
  flaws: [{ ...problemAt([], undefined, rule, remedy), position }],
});

const tooDeep = (): Parse =>
  refuse('is nested too deeply to be read', 'a scenario is at most a few levels deep');

/** Bytes → text, or why not. */
function decode(bytes: Uint8Array): { readonly text: string } | { readonly refused: Parse } {
  if (bytes.length > largestScenarioBytes) {
    return {
      refused: refuse(
        `is larger than ${largestScenarioBytes / 1e6} MB`,
        'a scenario takes a few kilobytes; give the right file',
      ),
    };
  }
  // Where an odd line end or a character of another encoding stands.
  const lineAt = (at: number): Position => ({
    line: bytes.subarray(0, at).filter((byte) => byte === 10).length + 1,
    column: 1,
  });
  const nul = bytes.indexOf(0);
  if (nul >= 0)
    return { refused: refuse('is not text in UTF-8', 'save the file as UTF-8', lineAt(nul)) };
  const alone = bytes.findIndex((byte, at) => byte === 13 && bytes[at + 1] !== 10);
  if (alone >= 0)
    return {
      refused: refuse(
        'ends in a carriage return alone',
        'save the file with ordinary line ends (LF or CRLF)',
        lineAt(alone),
      ),
    };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    let line = 1;
    for (let from = 0; from <= bytes.length; line++) {
      const newline = bytes.indexOf(10, from);
      const to = newline < 0 ? bytes.length : newline;
      try {
        new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(from, to));
      } catch {
        break;
      }
      from = to + 1;
    }
    return {
      refused: refuse('is not text in UTF-8', 'save the file as UTF-8', { line, column: 1 }),
    };
  }
}

interface Places {
  readonly keys: Map<string, number>;
  readonly values: Map<string, number>;
}

/** Builds the plain tree; collects what must be refused. */
function build(
  document: Document,
  places: Places,
  flaw: (path: Path, offset: number, rule: string, remedy: string, value?: unknown) => void,
): unknown {
  let repeated = 0;
  let exploded = false;

  const visit = (
    node: unknown,
    path: Path,
    inAlias: boolean,
    anchors: readonly unknown[],
  ): unknown => {
    if (exploded || node === null || node === undefined) return null;
    const offset = (node as Node).range?.[0] ?? 0;
    if (!inAlias) places.values.set(pathKey(path), offset);
    if (inAlias && ++repeated > mostRepeatedNodes) {
      exploded = true;
      flaw(
        [],
        0,
        `repeats more than ${mostRepeatedNodes} values through aliases`,
        'write the values out',
      );
      return null;
    }
    if (path.length > deepestNesting) {
      exploded = true;
      flaw(
        path.slice(0, 3),
        offset,
        `is nested more than ${deepestNesting} deep`,
        'a scenario is at most a few levels deep',
      );
      return null;
    }
    if (isAlias(node)) {
      const target = node.resolve(document);
      if (target === undefined) {
        flaw(
          path,
          offset,
          'is an alias, but its name was not set before it',
          `set it with &${node.source}, or write the value out`,
          `*${node.source}`,
        );
        return null;
      }
      if (anchors.includes(target)) {
        flaw(path, offset, 'is an alias of something that contains it', 'write the values out');
        return null;
      }
      return visit(target, path, true, [...anchors, target]);
    }
    const nested =
      node && (node as Node & { anchor?: string }).anchor ? [...anchors, node] : anchors;
    if (isSeq(node)) return node.items.map((item, i) => visit(item, [...path, i], inAlias, nested));
    if (isMap(node)) return visitMap(node.items, path, inAlias, nested);
    if (isScalar(node)) {
      const value = node.value;
      if (
        value === null ||
        typeof value === 'string' ||
        typeof value === 'number' ||
        typeof value === 'boolean'
      )
        return value;
      flaw(path, offset, 'is not text, a number, or true or false', 'write it as plain text');
    }
    return null;
  };

  const visitMap = (
    items: readonly { key: unknown; value: unknown }[],
    path: Path,
    inAlias: boolean,
    anchors: readonly unknown[],
  ): unknown => {
    const group: Record<string, unknown> = {};
    for (const { key, value } of items) {
      const offset = (key as Node | null)?.range?.[0] ?? 0;
      if (
        !isScalar(key) ||
        key.value === null ||
        typeof key.value === 'object' ||
        key.value === ''
      ) {
        flaw(path, offset, 'has a key that is not a word', 'write a name before the colon');
        continue;
      }
      const name = String(key.value);
      if (forbiddenKeys.has(name)) {
        flaw([...path, name], offset, 'cannot be a name', 'choose another name', name);
        continue;
      }
      if (Object.hasOwn(group, name)) {
        flaw(
          [...path, name],
          offset,
          'is given twice in the same group',
          'keep one of the two',
          name,
        );
        continue;
      }
      if (!inAlias) places.keys.set(pathKey([...path, name]), offset);
      group[name] = visit(value, [...path, name], inAlias, anchors);
    }
    return group;
  };

  return visit(document.contents, [], false, []);
}

const aScenario = {
  what: 'a scenario',
  remedy: 'begin with lines such as "name: Corner House" and "currency: EUR"',
};

/**
 * Reads YAML or JSON text (or its UTF-8 bytes, up to `largestScenarioBytes`). Pure; reads no file.
 * @param wanted what the text should be, said where it is no group of fields at all
 */
export function parseYaml(input: string | Uint8Array, wanted = aScenario): Parse {
  const decoded = decode(typeof input === 'string' ? new TextEncoder().encode(input) : input);
  if ('refused' in decoded) return decoded.refused;
  const { text } = decoded;
  if (text.trim() === '')
    return refuse('is empty', 'write a scenario, or let cuptide new write a first one');

  const lines = new LineCounter();
  const place = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return line === 0 ? start : { line, column: col };
  };
  let document: Document;
  try {
    document = parseDocument(text, {
      lineCounter: lines,
      prettyErrors: false,
      version: '1.2',
      schema: 'core',
      merge: false,
      uniqueKeys: false,
      logLevel: 'error',
    });
  } catch (error) {
    if (error instanceof RangeError) return tooDeep();
    throw error;
  }

  const flaws: PlacedFlaw[] = [...document.errors, ...document.warnings].map(({ code, pos }) => {
    const { rule, remedy } = grammar(code);
    return { ...problemAt([], undefined, rule, remedy), position: place(pos[0]) };
  });
  if (document.errors.some(({ message }) => message.includes('call stack'))) return tooDeep();
  if (document.errors.length > 0) return { ok: false, flaws, parsed: null };

  const places: Places = { keys: new Map(), values: new Map() };
  const tree = build(document, places, (path, offset, rule, remedy, value) => {
    flaws.push({ ...problemAt(path, value, rule, remedy), position: place(offset) });
  });
  if (flaws.length === 0 && !isGroup(tree)) return refuse(`is not ${wanted.what}`, wanted.remedy);

  const positionOf = (path: Path, onKey = false): Position => {
    for (let length = path.length; length > 0; length--) {
      const key = pathKey(path.slice(0, length));
      const value = places.values.get(key);
      const name = places.keys.get(key);
      const isWord =
        length === path.length && !onKey && typeof (valueAt(tree, path) ?? '') !== 'object';
      const offset = isWord ? (value ?? name) : (name ?? value);
      if (offset !== undefined) return place(offset);
    }
    return start;
  };
  const parsed = { tree, positionOf };
  return flaws.length > 0 ? { ok: false, flaws, parsed } : { ok: true, parsed };
}
