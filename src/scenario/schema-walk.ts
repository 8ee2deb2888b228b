/**
 * Walking a zod schema beside the tree it describes: which keys a place knows, and which places
 * stand for one value.
 */
import type * as z from 'zod';
import { quantities, type QuantityMeta } from '../quantities/quantity.js';
import type { Path } from './path.js';
import { isGroup } from './tree.js';

type Schema = z.core.$ZodType;

/** The definition's children, typed for the kinds that scenarios use. */
export interface Def {
  readonly type: string;
  readonly innerType?: Schema;
  readonly in?: Schema;
  readonly options?: readonly Schema[];
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly valueType?: Schema;
  readonly element?: Schema;
}

export const defOf = (schema: Schema): Def => schema._zod.def as unknown as Def;

/**
 * Takes off what does not show in a file: optional, default, transform. Unions become their options.
 * `whole`: leaves alone what stands for one value.
 */
function forms(schema: Schema, whole = false): readonly Schema[] {
  const known = whole ? wholeForms : plainForms;
  const before = known.get(schema);
  if (before) return before;
  const found = findForms(schema, whole);
  known.set(schema, found);
  return found;
}

/** Schemas never change, so each is taken apart once. */
const plainForms = new WeakMap<Schema, readonly Schema[]>();
const wholeForms = new WeakMap<Schema, readonly Schema[]>();

function findForms(schema: Schema, whole: boolean): readonly Schema[] {
  if (whole && quantities.has(schema)) return [schema];
  const def = defOf(schema);
  if (def.innerType) return forms(def.innerType, whole);
  if (def.in) return forms(def.in, whole);
  if (def.options) return def.options.flatMap((option) => forms(option, whole));
  return [schema];
}

function children(schema: Schema, key: string | number): readonly Schema[] {
  return forms(schema).flatMap((form) => {
    const def = defOf(form);
    if (def.shape) return Object.hasOwn(def.shape, key) ? [def.shape[key]!] : [];
    if (def.valueType) return [def.valueType];
    return def.element ? [def.element] : [];
  });
}

/** The names that a group at this path may hold; empty where any name is allowed or none. */
export function knownKeys(schema: Schema, path: Path): readonly string[] {
  const at = path.reduce<readonly Schema[]>(
    (schemas, key) => schemas.flatMap((one) => children(one, key)),
    [schema],
  );
  return [
    ...new Set(
      at.flatMap((one) => forms(one)).flatMap((form) => Object.keys(defOf(form).shape ?? {})),
    ),
  ];
}

/** What one value the schema stands for, looking through optional, default and transform; null if it is no value. */
function metaOf(schema: Schema): QuantityMeta | null {
  const own = quantities.get(schema);
  if (own) return own;
  const def = defOf(schema);
  const inner = def.innerType ?? def.in;
  return inner ? metaOf(inner) : null;
}

/** Calls `leaf` for every value in the tree that the schema names as one, in the order of the tree. */
export function eachValue(
  schema: Schema,
  tree: unknown,
  leaf: (path: Path, value: unknown, meta: QuantityMeta) => void,
  path: Path = [],
): void {
  const meta = metaOf(schema);
  if (meta) {
    leaf(path, tree, meta);
    return;
  }
  const entries: readonly (readonly [string | number, unknown])[] = Array.isArray(tree)
    ? tree.map((item: unknown, i) => [i, item] as const)
    : isGroup(tree)
      ? Object.entries(tree)
      : [];
  const options = forms(schema, true);
  if (entries.length === 0 && !isGroup(tree) && !Array.isArray(tree)) {
    const single = options.map((one) => quantities.get(one)).find((one) => one !== undefined);
    if (single) leaf(path, tree, single);
    return;
  }
  for (const [key, item] of entries) {
    const child = options.flatMap((one) => children(one, key))[0];
    if (child) eachValue(child, item, leaf, [...path, key]);
  }
}
