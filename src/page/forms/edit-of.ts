/** What is typed in a box as a change of the scenario. */
import { typedAs, type Units } from '../../quantities/us-units.js';
import type { Edit } from '../../scenario/edit.js';
import { withBrackets } from './bare-text.js';
import type { Addition, FieldMark, FormField } from '../../scenario/input-forms.js';

/** Kinds that are written as one line of the file. */
const lines = new Set(['list', 'map', 'numbers', 'partySize']);

/** Kinds with a unit that a reader may want to see in another. */
const measured = new Set(['length', 'volume', 'mass', 'temperature', 'foam', 'vesselState']);
export const isMeasured = (kind: string): boolean => measured.has(kind);

/** A value as the file is to hold it, or as a line of the file. */
function held(
  text: string,
  { kind, options, at, unit }: FormField,
  units: Units,
  shown: string,
): { readonly value: unknown } | { readonly flow: string } {
  const typed = text.trim();
  const option = options.find(({ word }) => word === typed);
  if (kind === 'choice') return { value: option?.value ?? typed };
  if (kind === 'text') return { value: typed };
  if (option !== undefined && kind !== 'map' && at.at(-1) !== 'fallBacks')
    return kind === 'list' && option.name !== undefined
      ? { flow: `[${typed}]` }
      : { value: option.value };
  if (lines.has(kind) || /^[{[]/.test(typed))
    return { flow: withBrackets(typed, kind, String(at.at(-1))) };
  const before = shown === '' && unit !== undefined ? `0 ${unit}` : shown;
  return { value: typedAs(typed, kind, units, before) };
}

/** What is typed for a value that is not there yet, as a part of a line of the file. */
export function heldFor(field: FormField, text: string, units: Units): string {
  const how = held(text, field, units, '');
  return 'flow' in how ? how.flow : JSON.stringify(how.value);
}

/**
 * The change that a text in a field's box stands for; null where it is none.
 * @param shown what the box says when nothing is typed
 */
export function editOf(field: FormField, text: string, units: Units, shown: string): Edit | null {
  const { at, origin, optional, written } = field;
  const typed = text.trim();
  if (typed === shown.trim()) return null;
  if (typed === '' && optional) return origin === 'file' ? { kind: 'remove', path: at } : null;
  const how = held(typed, field, units, shown.replace(/^\s*about\s+/, ''));
  if ('value' in how && String(how.value) === written && field.kind !== 'choice') return null;
  // A plain duration where a law stands is its new mean.
  const mean = field.kind === 'durationLaw' && 'value' in how && /^\s*(about\s|\{)/.test(written);
  return { kind: 'set', path: at, ...how, ...(mean ? { asMean: true } : {}) };
}

/** A change of what a value is based on. Ranges are lines of the file too: a law may have laws at its ends. */
export type MarkChange =
  | { readonly basis: FieldMark['basis'] }
  | { readonly source: string }
  | { readonly range: readonly [string, string] | null };

export function markEditOf(
  { at, kind }: FormField,
  change: MarkChange,
  units: Units,
  shown: readonly [string, string] = ['', ''],
): Edit {
  if (!('range' in change) || change.range === null)
    return { kind: 'set', path: at, ...change } as Edit;
  const [low, high] = change.range;
  if (lines.has(kind) || /^\s*[{[]/.test(low) || /^\s*[{[]/.test(high))
    return { kind: 'set', path: at, range: { flow: `[${low}, ${high}]` } };
  return {
    kind: 'set',
    path: at,
    range: [typedAs(low, kind, units, shown[0]), typedAs(high, kind, units, shown[1])],
  };
}

/** An id that nobody has yet, from a name: "Large cup" → large-cup, large-cup-2. */
export function freshId(name: string, taken: readonly string[]): string {
  const stem =
    name
      .trim()
      .toLowerCase()
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40)
      .replace(/-+$/, '') || 'new';
  // Words that mean something else where ids stand, or that no file may use as a name.
  const used = new Set([
    ...taken,
    'takeaway',
    'unlimited',
    'base',
    'constructor',
    'prototype',
    '__proto__',
  ]);
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!used.has(id)) return id;
  }
}

/**
 * Adding something new.
 * @param name for people; '' for a machine
 * @param choice its class; for a drink, the ware it is served in
 */
export function additionOf({ thing, at, taken }: Addition, name: string, choice: string): Edit {
  if (thing === 'machine')
    return { kind: 'add', path: [...at, taken.length], value: { class: choice } };
  const path = [...at, freshId(name, taken)];
  if (thing === 'ware') return { kind: 'add', path, value: { like: choice, name: name.trim() } };
  return { kind: 'add', path, value: { name: name.trim(), share: '0 %', setting: [choice] } };
}
