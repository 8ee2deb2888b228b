/** What an alternative changes, as fields: each like the field of the house that it takes the place of. */
import { machineClass, machineClassIds } from '../catalogue/catalogue.js';
import { flowText } from './flow-text.js';
import type { FormField } from './form-types.js';
import { dotted } from './path.js';
import { parsePath } from './raw-paths.js';
import { isGroup, valueAt } from './tree.js';

/** A further machine, given by its class alone. */
const machineOptions = (): FormField['options'] =>
  machineClassIds().map((id) => ({
    word: id,
    value: { class: id },
    name: machineClass(id)!.name,
  }));

/** The place of one machine more, where machines are listed. */
export function furtherMachine(plain: unknown): FormField | undefined {
  const machines = valueAt(plain, ['washing', 'machines']);
  if (!Array.isArray(machines)) return undefined;
  const at = ['washing', 'machines', machines.length];
  return {
    path: dotted(at),
    at,
    kind: 'choice',
    written: '',
    options: machineOptions(),
    origin: 'none',
    optional: true,
    mark: null,
  };
}

const textOf = (value: unknown): string => (typeof value === 'string' ? value : flowText(value));

/**
 * @param all the fields of the house
 * @returns the field itself, or where it is an alternative's map of changes, one field for each change
 */
export function changesOf(
  field: FormField,
  plain: unknown,
  all: readonly FormField[],
): FormField[] {
  const { at } = field;
  const changes = valueAt(plain, at);
  if (at.length !== 3 || at[2] !== 'change' || !isGroup(changes)) return [field];
  return Object.entries(changes).map(([place, value]): FormField => {
    const of = parsePath(place) ?? [place];
    const base = all.find(({ path }) => path === dotted(of));
    const only = isGroup(value) && Object.keys(value).length === 1 ? value['class'] : undefined;
    const isMachine = base === undefined && of[1] === 'machines' && typeof only === 'string';
    const options = isMachine ? machineOptions() : (base?.options ?? []);
    const kind = isMachine ? 'choice' : (base?.kind ?? 'map');
    return {
      path: dotted([...at, place]),
      at: [...at, place],
      of,
      kind,
      written: isMachine ? only : wordFor(value, options),
      options,
      origin: 'file',
      optional: true,
      mark: null,
      ...(base?.unit === undefined ? {} : { unit: base.unit }),
    };
  });
}

/** The word that a value is chosen by, or the value on one line. */
const wordFor = (value: unknown, options: FormField['options']): string =>
  options.find((option) => option.value === value || option.word === value)?.word ?? textOf(value);
