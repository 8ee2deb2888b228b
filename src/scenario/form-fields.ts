/**
 * Form fields of a scenario, read off the schema beside the tree: one for each value, with its kind and
 * what may stand there; and one for each that could be said but is not.
 */
import type * as z from 'zod';
import { quantities, type QuantityMeta } from '../quantities/quantity.js';
import type { Path } from './path.js';
import { defOf, type Def } from './schema-walk.js';
import { isGroup } from './tree.js';

type Schema = z.core.$ZodType;

/** What stands in a box: a kind of quantity ('count', 'length', 'durationLaw', ...), or 'choice', 'text', 'list', 'map'. */
export type FieldKind = string;

/** A value of a field, before it is put in words. */
export interface RawField {
  readonly at: Path;
  readonly kind: FieldKind;
  /** As written; undefined where nothing is. */
  readonly value: unknown;
  /** Words that may stand there, and what the file holds for them. */
  readonly words: readonly { readonly word: string; readonly value: unknown }[];
  /** The file may be silent about it. */
  readonly optional: boolean;
}

export type FullDef = Def & {
  readonly entries?: Readonly<Record<string, string>>;
  readonly values?: readonly unknown[];
  readonly defaultValue?: unknown;
};
export const full = (schema: Schema): FullDef => defOf(schema) as FullDef;

/** A schema without what wraps it. */
export interface Bare {
  readonly schema: Schema;
  readonly meta: QuantityMeta | null;
  readonly optional: boolean;
  readonly byDefault: unknown;
}

const isFilled = (schema: Schema): boolean => (schema as z.ZodType).meta()?.['filled'] === true;

export function bare(schema: Schema, optional = isFilled(schema), byDefault?: unknown): Bare {
  const meta = quantities.get(schema) ?? null;
  const def = full(schema);
  if (meta !== null) return { schema, meta, optional, byDefault };
  if (def.type === 'default')
    return bare(
      def.innerType!,
      true,
      typeof def.defaultValue === 'function' ? undefined : def.defaultValue,
    );
  if (def.innerType)
    return bare(
      def.innerType,
      optional || def.type === 'optional' || isFilled(def.innerType),
      byDefault,
    );
  if (def.in) return bare(def.in, optional, byDefault);
  return { schema, meta, optional, byDefault };
}

/** The forms a value may take, unions taken apart. */
export function formsUnder(schema: Schema): readonly Bare[] {
  const own = bare(schema);
  const { options } = full(own.schema);
  return own.meta === null && options ? options.flatMap((option) => formsUnder(option)) : [own];
}

/** The words a union or a quantity allows beside its values. */
export function wordsIn(schema: Schema): RawField['words'] {
  const { type, entries, values, options, innerType, in: input } = full(schema);
  if (type === 'enum') return Object.values(entries ?? {}).map((word) => ({ word, value: word }));
  if (type === 'literal')
    return (values ?? []).map((word) => ({ word: String(word), value: word }));
  if (type === 'boolean')
    return [
      { word: 'yes', value: true },
      { word: 'no', value: false },
    ];
  const json = quantities.get(schema)?.json;
  const fromJson = (json?.anyOf ?? []).flatMap((one) =>
    typeof one === 'object'
      ? [...(one.const === undefined ? [] : [one.const]), ...(one.enum ?? [])]
      : [],
  );
  const said = fromJson.map((word) => ({ word: String(word), value: word }));
  if (options) return [...said, ...options.flatMap((option) => wordsIn(option))];
  const inner = innerType ?? (json === undefined ? input : undefined);
  return inner ? [...said, ...wordsIn(inner)] : said;
}

const wordTypes = new Set(['enum', 'literal', 'boolean']);
export const isObject = ({ schema }: Bare): boolean => full(schema).type === 'object';
const isList = ({ schema }: Bare): boolean => full(schema).type === 'array';
const isRecord = ({ schema }: Bare): boolean => full(schema).type === 'record';
export const isGroupForm = (form: Bare): boolean =>
  form.meta === null && (isObject(form) || isRecord(form));
/** A list of groups is taken apart; any other is one value. */
export const holdsGroups = (form: Bare): boolean =>
  form.meta === null && isList(form) && formsUnder(full(form.schema).element!).some(isGroupForm);
const isUnknown = (schema: Schema): boolean =>
  full(bare(schema).schema).type === 'unknown' && bare(schema).meta === null;

/** Every part of a group may be left out, so that any one can be said alone. */
export const allOptional = (form: Bare): boolean =>
  Object.values(full(form.schema).shape ?? {}).every((child) => {
    if (bare(child).optional) return true;
    const inner = formsUnder(child);
    return inner.length === 1 && isObject(inner[0]!) && allOptional(inner[0]!);
  });

/** Names that a map may hold beside those it does, by dotted path. */
export type KnownNames = (path: Path) => readonly string[];

/**
 * Calls `tell` for every value that the schema knows in the tree, in the schema's order, and for those
 * not there that can be said by themselves.
 * @param splits whether a value is to be taken apart, as its parts are marked one by one
 */
export function eachField(
  schema: Schema,
  tree: unknown,
  names: KnownNames,
  splits: (path: Path) => boolean,
  tell: (field: RawField) => void,
  path: Path = [],
  ofMap = false,
): void {
  const own = bare(schema);
  const value = tree === undefined ? own.byDefault : tree;
  const leaf = (kind: FieldKind): void =>
    tell({ at: path, kind, value, words: wordsIn(own.schema), optional: own.optional || ofMap });
  const below = (child: Schema, key: string | number, item: unknown, inMap = false): void =>
    eachField(child, item, names, splits, tell, [...path, key], inMap);

  if (own.meta !== null && !(splits(path) && isGroup(value))) return leaf(own.meta.kind);
  const forms =
    own.meta === null
      ? formsUnder(own.schema)
      : (full(own.schema).options ?? [own.schema]).flatMap(formsIn);
  const lists = forms.filter(holdsGroups);
  const groups = forms.filter(isGroupForm);
  if (Array.isArray(value) && lists.length > 0) {
    for (const [i, item] of value.entries()) below(full(lists[0]!.schema).element!, i, item);
    return;
  }
  if (isGroup(value) && groups.length > 0) {
    const form = fitting(groups, Object.keys(value));
    const def = full(form.schema);
    if (def.valueType) {
      if (isUnknown(def.valueType)) return leaf('map');
      for (const key of new Set([...Object.keys(value), ...names(path)]))
        below(def.valueType, key, value[key], own.meta === null);
      return;
    }
    for (const [key, child] of Object.entries(def.shape!)) below(child, key, value[key]);
    return;
  }
  if (value === undefined) {
    const [form] = groups;
    if (form === undefined && lists.length > 0) return;
    if (form !== undefined && forms.length === 1) {
      const def = full(form.schema);
      if (
        def.valueType &&
        formsUnder(def.valueType).every((one) => !isGroupForm(one)) &&
        !isUnknown(def.valueType)
      )
        for (const key of names(path)) below(def.valueType, key, undefined, true);
      if (def.shape && allOptional(form))
        for (const [key, child] of Object.entries(def.shape)) below(child, key, undefined);
      return;
    }
    if (form !== undefined && forms.some(isObject)) return;
  }
  const single = forms.find(({ meta }) => meta !== null);
  if (single) return leaf(single.meta!.kind);
  if (forms.every((form) => wordTypes.has(full(form.schema).type) || isGroupForm(form)))
    return leaf('choice');
  return leaf(forms.some(isList) ? 'list' : 'text');
}

/** What stands inside a quantity of several forms (a duration by party size). */
function formsIn(schema: Schema): readonly Bare[] {
  const def = full(schema);
  if (def.options) return def.options.flatMap(formsIn);
  if (def.in && full(def.in).type !== 'unknown') return formsIn(def.in);
  return [{ schema, meta: null, optional: false, byDefault: undefined }];
}

/** The form of a group that knows most of the names given. */
export function fitting(groups: readonly Bare[], keys: readonly string[]): Bare {
  const known = ({ schema }: Bare): number => {
    const { shape } = full(schema);
    return shape === undefined ? 0.5 : keys.filter((key) => Object.hasOwn(shape, key)).length;
  };
  return groups.reduce((best, one) => (known(one) > known(best) ? one : best));
}
