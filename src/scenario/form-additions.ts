/**
 * What can be added to a scenario by a few values, read off the schema beside the tree: an entry of a map of things (a
 * supplier, a quote), one more of a list of things (a price break), a group that is not there (a reserve shelf).
 */
import type * as z from 'zod';
import {
  allOptional,
  bare,
  fitting,
  formsUnder,
  full,
  holdsGroups,
  isGroupForm,
  isObject,
  wordsIn,
  type RawField,
} from './form-fields.js';
import type { Path } from './path.js';
import { isGroup } from './tree.js';

type Schema = z.core.$ZodType;

/** A value that the new thing cannot do without; `at` from the thing on. */
export type Need = Pick<RawField, 'at' | 'kind' | 'words'>;

export interface RawAddition {
  /** The map, the list, or the group that is not there. */
  readonly at: Path;
  readonly by: 'name' | 'place' | 'group';
  /** Names in use, or places. */
  readonly taken: readonly string[];
  readonly needs: readonly Need[];
  /** Maps that the thing must have, though they may be empty. */
  readonly empty: readonly Path[];
}

interface Offers {
  offer(addition: RawAddition): void;
  /** Something that was added like this and can be taken out again. */
  entry(at: Path): void;
}

/** What a thing of this schema cannot be without. */
function needsOf(schema: Schema, at: Path = []): Pick<RawAddition, 'needs' | 'empty'> {
  const own = bare(schema);
  const forms = own.meta === null ? formsUnder(own.schema) : [];
  const [form] = forms;
  if (form === undefined || !forms.some(isGroupForm)) {
    const kind = own.meta?.kind ?? forms.find(({ meta }) => meta !== null)?.meta?.kind;
    const isList = forms.some((one) => full(one.schema).type === 'array');
    const isWord = forms.some(({ schema: one }) => full(one).type === 'enum');
    return {
      needs: [
        {
          at,
          kind: kind ?? (isList ? 'list' : isWord ? 'choice' : 'text'),
          words: wordsIn(own.schema),
        },
      ],
      empty: [],
    };
  }
  if (!isObject(form)) return { needs: [], empty: [at] };
  const parts = Object.entries(full(form.schema).shape!)
    .filter(([, child]) => !bare(child).optional)
    .map(([key, child]) => needsOf(child, [...at, key]));
  return {
    needs: parts.flatMap(({ needs }) => needs),
    empty: parts.flatMap(({ empty }) => empty),
  };
}

/** Calls `offer` for everything that can be added, and `entry` for everything of that kind that is there. */
export function eachAddition(schema: Schema, tree: unknown, offers: Offers, path: Path = []): void {
  const own = bare(schema);
  if (own.meta !== null) return;
  const forms = formsUnder(own.schema);
  const list = forms.find(holdsGroups);
  const groups = forms.filter(isGroupForm);
  const below = (child: Schema, key: string | number, value: unknown): void =>
    eachAddition(child, value, offers, [...path, key]);
  if (list !== undefined && (Array.isArray(tree) || (tree === undefined && forms.length === 1))) {
    const items: readonly unknown[] = Array.isArray(tree) ? tree : [];
    const { element } = full(list.schema);
    offers.offer({
      at: path,
      by: 'place',
      taken: items.map((_, i) => String(i)),
      ...needsOf(element!),
    });
    for (const [i, item] of items.entries()) {
      offers.entry([...path, i]);
      below(element!, i, item);
    }
    return;
  }
  if (groups.length === 0 || (tree === undefined && forms.length > 1)) return;
  const held = isGroup(tree) ? tree : {};
  const form = fitting(groups, Object.keys(held));
  const { valueType, shape } = full(form.schema);
  if (valueType !== undefined) {
    if (!formsUnder(valueType).some(isGroupForm)) return;
    offers.offer({ at: path, by: 'name', taken: Object.keys(held), ...needsOf(valueType) });
    for (const [key, item] of Object.entries(held)) {
      offers.entry([...path, key]);
      below(valueType, key, item);
    }
    return;
  }
  const whole = !allOptional(form);
  if (whole && tree === undefined) {
    if (own.optional) offers.offer({ at: path, by: 'group', taken: [], ...needsOf(form.schema) });
    return;
  }
  if (whole && own.optional && path.length > 0) offers.entry(path);
  for (const [key, child] of Object.entries(shape ?? {})) below(child, key, held[key]);
}
