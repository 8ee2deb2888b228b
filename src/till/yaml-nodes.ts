/** Nodes of a scenario's YAML: made, marked with what they rest on, and put in place without losing comments. */
import { isAlias, isMap, isNode } from 'yaml';
import type { Document, Node, YAMLMap } from 'yaml';
import type { TillFit } from './fit-till.js';

/** Where the figures of a fit come from, as written beside each of them in the scenario. */
export function sourceOf(fit: TillFit): string {
  return `till export ${fit.file}, ${fit.from}–${fit.to}, ${fit.days} days (${fit.kind})`;
}

export function field(value: unknown, key: string): unknown {
  return value !== null && typeof value === 'object' && Object.hasOwn(value, key)
    ? (value as Record<string, unknown>)[key]
    : undefined;
}

/** Puts a node in a map, keeping the comments that stood at the one it replaces. */
export function put(map: YAMLMap, key: string, node: Node): void {
  const old: unknown = map.get(key, true);
  if (isNode(old)) {
    if (old.comment) node.comment = old.comment;
    if (old.commentBefore) node.commentBefore = old.commentBefore;
  }
  map.set(key, node);
}

/** The map under a key, made if it is not there or holds no fields of its own. */
export function mapUnder(document: Document, parent: YAMLMap, key: string): YAMLMap {
  let node: unknown = parent.get(key, true);
  if (isAlias(node)) {
    // An alias is the same thing in two places; only this one is to change.
    const copy = node.resolve(document)?.clone();
    if (isMap(copy)) {
      delete copy.anchor;
      parent.set(key, copy);
      node = copy;
    }
  }
  if (isMap(node) && !node.has('value')) return node;
  const fresh = document.createNode({}) as YAMLMap;
  parent.set(key, fresh);
  return fresh;
}

export interface Marked {
  readonly value: unknown;
  readonly basis: 'measured' | 'assumed';
  readonly range?: readonly [number, number];
  readonly source: string;
}

export function marked(document: Document, mark: Marked): YAMLMap {
  return document.createNode(mark, { flow: true }) as YAMLMap;
}

export const three = (value: number): number => Number(value.toFixed(3));
