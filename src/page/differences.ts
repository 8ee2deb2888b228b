/** What differs between two states of a scenario, field by field, as its forms show them. */
import type { FormField, FormGroup } from '../scenario/input-forms.js';

export interface Difference {
  readonly field: FormField;
  /** As written; null: it was not there, or is no more. */
  readonly from: string | null;
  readonly to: string | null;
}

const fieldsOf = (groups: readonly FormGroup[]): Map<string, FormField> =>
  new Map(
    groups
      .filter(({ id }) => id !== 'alternatives')
      .flatMap(({ parts }) => parts.flatMap(({ fields }) => fields))
      .map((field) => [field.path, field]),
  );

/** Changed values first, then new and lost ones. */
export function differencesOf(
  before: readonly FormGroup[],
  after: readonly FormGroup[],
): Difference[] {
  const [old, now] = [fieldsOf(before), fieldsOf(after)];
  const changed = [...now.values()].flatMap((field): Difference[] => {
    const was = old.get(field.path);
    return was === undefined || was.written === field.written
      ? []
      : [{ field, from: was.written, to: field.written }];
  });
  const added = [...now.values()].filter(({ path }) => !old.has(path));
  const lost = [...old.values()].filter(({ path }) => !now.has(path));
  return [
    ...changed,
    ...added.map((field) => ({ field, from: null, to: field.written })),
    ...lost.map((field) => ({ field, from: field.written, to: null })),
  ];
}
