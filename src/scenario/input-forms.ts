/**
 * A scenario as forms: every value and every choice as a field, in the groups and the order of the
 * letter. Plain data; the page words it.
 */
import {
  machineClass,
  machineClassIds,
  rackKind,
  rackKindIds,
  wareClass,
  wareClassIds,
  type Basis,
} from '../catalogue/catalogue.js';
import { nameOf } from '../quantities/name.js';
import { fill } from './defaults.js';
import { flowText } from './flow-text.js';
import { eachField, type FieldKind, type RawField } from './form-fields.js';
import type { Input } from './inputs.js';
import { dotted, isWithin, pathKey, type Path } from './path.js';
import type { ReadResult } from './read-scenario.js';
import { scenarioSchema, type Scenario } from './scenario.js';
import { isGroup, unwrap, valueAt } from './tree.js';

export type { FieldKind } from './form-fields.js';

/** A word that may be chosen, and what the file then holds. */
export interface FieldOption {
  readonly word: string;
  readonly value: unknown;
  /** The name of what the word stands for (a class, a ware); absent where it is a plain word. */
  readonly name?: string;
}

/** What a value is based on. */
export interface FieldMark {
  readonly basis: Basis;
  /** Lowest and highest plausible value, as written; null: none given. */
  readonly range: readonly [string, string] | null;
  /** '' where none was given. */
  readonly source: string;
}

export interface FormField {
  /** Dotted, as problems and inputs have it. */
  readonly path: string;
  readonly at: Path;
  /**
   * 'choice' of `options`; 'text'; 'list' and 'map', written as one line of the file; else the kind of a
   * quantity: count, number, share, length, volume, mass, temperature, energy, power, duration, durationLaw, money, rate, ...
   */
  readonly kind: FieldKind;
  /** The value as written, on one line; '' where there is none. */
  readonly written: string;
  /** For a choice: all of them. For others: words that may stand in place of a number, or names that a list may hold. */
  readonly options: readonly FieldOption[];
  /** Written in the file, filled in by a default or a class, or not there at all. */
  readonly origin: 'file' | 'default' | 'none';
  /** The file may be silent about it: taking it out brings the default back, or leaves it unsaid. */
  readonly optional: boolean;
  /** Null: a fact or a choice that nobody measures, or nothing is there. */
  readonly mark: FieldMark | null;
}

/** Fields that belong together: those of one drink, ware, machine, supplier; or of the group itself. */
export interface FormPart {
  /** Where it stands; [] for the group's own fields. */
  readonly at: Path;
  /** For people; '' for the group's own fields. As long and as odd as the file has it. */
  readonly name: string;
  /** It can be taken out of the scenario. */
  readonly canGo: boolean;
  readonly fields: readonly FormField[];
}

/** What can be added to a group, and how: `{ kind: 'add', path: [...at, id or place], value }`. */
export interface Addition {
  readonly thing: 'drink' | 'ware' | 'machine';
  readonly at: Path;
  /** Ids in use; for a list, as many as there are. */
  readonly taken: readonly string[];
  /** Classes to choose from (ware, machines), or pieces a drink may be served in. */
  readonly classes: readonly { readonly id: string; readonly name: string }[];
}

export const formGroupIds = [
  'house',
  'guests',
  'menu',
  'ware',
  'seats',
  'counter',
  'clearing',
  'washing',
  'racks',
  'costs',
  'supply',
  'storage',
  'suit',
  'alternatives',
] as const;
export type FormGroupId = (typeof formGroupIds)[number];

export interface FormGroup {
  readonly id: FormGroupId;
  readonly parts: readonly FormPart[];
  readonly adds: Addition | null;
}

type Opened = Extract<ReadResult, { ok: true }>;

const groupOf = (path: Path): FormGroupId => {
  const [first] = path;
  if (first === 'arrivals') return 'guests';
  return (formGroupIds as readonly unknown[]).includes(first) ? (first as FormGroupId) : 'house';
};

/** Things with fields of their own: how many steps of a path name one. */
const things: readonly (readonly [owner: string, canGo: boolean])[] = [
  ['menu', true],
  ['ware', true],
  ['washing.machines', true],
  ['alternatives', true],
  ['supply.suppliers', true],
  ['supply.losses', true],
  ['supply.takeaway.cups', true],
  ['supply.takeaway.lids', true],
  ['suit.papers', true],
  ['suit.drinks', true],
  ['suit.ware', true],
  ['racks.measures', true],
];

function thingOf(path: Path): { readonly at: Path; readonly canGo: boolean } {
  for (const [owner, canGo] of things) {
    const depth = owner.split('.').length;
    if (path.length > depth + 1 && dotted(path.slice(0, depth)) === owner)
      return { at: path.slice(0, depth + 1), canGo };
  }
  return { at: [], canGo: false };
}

const named = (ids: readonly string[], nameFor: (id: string) => string): FieldOption[] =>
  ids.map((id) => ({ word: id, value: id, name: nameFor(id) }));

/** The listed kinds of rack, and those of the house's own. */
const kindsIn = (racks: Scenario['racks']): string[] => [
  ...new Set([...rackKindIds(), ...Object.values(racks?.families ?? {})]),
];

/** Words of a field that come from elsewhere in the scenario or from the classes. */
function optionsOf({ at, words }: RawField, { ware, racks }: Scenario): FieldOption[] {
  const wares = (): FieldOption[] => named(Object.keys(ware), (id) => nameOf(id, ware[id]!));
  const last = at.at(-1);
  if (dotted(at) === 'clearing') return [...words, { word: 'inRounds', value: {} }];
  if (at[0] === 'ware' && last === 'like')
    return named(wareClassIds(), (id) => wareClass(id)!.name);
  if (at[0] === 'washing' && last === 'class')
    return named(machineClassIds(), (id) => machineClass(id)!.name);
  if (at[0] === 'racks' && at[1] === 'families')
    return named(kindsIn(racks), (id) => rackKind(id)?.name ?? id);
  if (at[0] === 'menu' && (last === 'setting' || last === 'fallBacks'))
    return [{ word: 'takeaway', value: 'takeaway' }, ...wares()];
  if (at[0] === 'suit' && last === 'vessel') return wares();
  return [...words];
}

const isChosen = (at: Path): boolean =>
  (at[0] === 'ware' && at.at(-1) === 'like') ||
  (at[0] === 'washing' && at.at(-1) === 'class') ||
  (at[0] === 'racks' && at[1] === 'families');

/** A value on one line, as a box shows it. */
const line = (value: unknown): string =>
  value === undefined || value === null ? '' : typeof value === 'string' ? value : flowText(value);

/** A scenario that was read, as groups of form fields. Only values that can be changed by themselves are listed. */
export function formsOf({ scenario, raw, inputs }: Opened): readonly FormGroup[] {
  const plain = unwrap(raw).tree;
  const filled = fill(plain).tree;
  const byPath = new Map(inputs.map((input) => [pathKey(input.at), input]));
  const wareIds = Object.keys(scenario.ware);
  const families = [
    ...new Set(Object.entries(scenario.ware).map(([id, { family }]) => family ?? id)),
  ];
  const names = (path: Path): readonly string[] =>
    ({
      'racks.owned': kindsIn(scenario.racks),
      'racks.families': families,
      'supply.onHand': wareIds,
      'storage.onTop': wareIds,
      'storage.trigger': wareIds,
    })[dotted(path)] ?? [];
  /** The parts of a value are marked one by one. */
  const splits = (path: Path): boolean =>
    !byPath.has(pathKey(path)) &&
    inputs.some(({ at }) => at.length > path.length && isWithin(at, path));

  const parts = new Map<
    FormGroupId,
    Map<string, { at: Path; canGo: boolean; fields: FormField[] }>
  >(formGroupIds.map((id) => [id, new Map()]));
  const tell = (field: RawField): void => {
    const { at } = field;
    const { at: owner, canGo } = thingOf(at);
    const group = parts.get(groupOf(at))!;
    const key = pathKey(owner);
    if (!group.has(key))
      group.set(key, {
        at: owner,
        canGo: canGo && valueAt(plain, owner) !== undefined,
        fields: [],
      });
    group
      .get(key)!
      .fields.push(fieldOf(field, plain, byPath.get(pathKey(at)), optionsOf(field, scenario)));
  };
  if (isGroup(valueAt(filled, ['clearing'])))
    tell({
      at: ['clearing'],
      kind: 'choice',
      value: 'inRounds',
      words: [{ word: 'atOnce', value: 'atOnce' }],
      optional: false,
    });
  eachField(scenarioSchema, filled, names, splits, tell);

  return formGroupIds.map((id) => ({
    id,
    parts: [...parts.get(id)!.values()].map(({ at, canGo, fields }) => ({
      at,
      name: at.length === 0 ? '' : nameAt(at, filled),
      canGo: canGo && !isLast(at, plain),
      fields,
    })),
    adds: additionTo(id, scenario),
  }));
}

function fieldOf(
  field: RawField,
  plain: unknown,
  input: Input | undefined,
  options: readonly FieldOption[],
): FormField {
  const { at, optional } = field;
  const value = field.value ?? input?.value;
  const origin =
    valueAt(plain, at) !== undefined ? 'file' : value !== undefined ? 'default' : 'none';
  const kind = isChosen(at) ? 'choice' : field.kind;
  const chosen =
    kind === 'choice'
      ? options.find((option) => option.value === value || option.word === value)?.word
      : undefined;
  const mark =
    input === undefined
      ? null
      : {
          basis: input.basis,
          range:
            input.range === null ? null : ([line(input.range[0]), line(input.range[1])] as const),
          source: input.source,
        };
  return {
    path: dotted(at),
    at,
    kind,
    written: chosen ?? line(value),
    options,
    origin,
    optional,
    mark,
  };
}

/** The last drink, ware or machine must stay. */
function isLast(at: Path, plain: unknown): boolean {
  const owner = valueAt(plain, at.slice(0, -1));
  const size = Array.isArray(owner) ? owner.length : isGroup(owner) ? Object.keys(owner).length : 0;
  return size === 1 && ['menu', 'ware', 'washing.machines'].includes(dotted(at.slice(0, -1)));
}

function nameAt(at: Path, tree: unknown): string {
  const thing = valueAt(tree, at);
  const given = isGroup(thing) && typeof thing['name'] === 'string' ? { name: thing['name'] } : {};
  if (at[0] !== 'washing') return nameOf(String(at.at(-1)), given);
  const cls =
    isGroup(thing) && typeof thing['class'] === 'string' ? machineClass(thing['class']) : null;
  return given.name ?? cls?.name ?? '';
}

function additionTo(id: FormGroupId, { ware, menu, washing }: Scenario): Addition | null {
  if (id === 'ware')
    return {
      thing: 'ware',
      at: ['ware'],
      taken: Object.keys(ware),
      classes: wareClassIds().map((one) => ({ id: one, name: wareClass(one)!.name })),
    };
  if (id === 'menu')
    return {
      thing: 'drink',
      at: ['menu'],
      taken: Object.keys(menu),
      classes: Object.entries(ware).map(([one, own]) => ({ id: one, name: nameOf(one, own) })),
    };
  if (id === 'washing' && Array.isArray(washing.machines)) {
    return {
      thing: 'machine',
      at: ['washing', 'machines'],
      taken: washing.machines.map((_, i) => String(i)),
      classes: machineClassIds().map((one) => ({ id: one, name: machineClass(one)!.name })),
    };
  }
  return null;
}
