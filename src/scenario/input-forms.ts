/** A scenario as forms: every value and every choice as a field, in the groups and the order of the letter. */
import { machineClass, machineClassIds, wareClass, wareClassIds } from '../catalogue/catalogue.js';
import { nameOf } from '../quantities/name.js';
import { fill } from './defaults.js';
import { flowText } from './flow-text.js';
import { eachAddition, type RawAddition } from './form-additions.js';
import { changesOf, furtherMachine } from './form-changes.js';
import { eachField, type RawField } from './form-fields.js';
import { isChosen, kindsIn, optionsOf } from './form-options.js';
import {
  formGroupIds,
  type Addition,
  type FieldOption,
  type FormField,
  type FormGroup,
  type FormGroupId,
  type FormPart,
  type PartAddition,
} from './form-types.js';
import type { Input } from './inputs.js';
import { dotted, isWithin, pathKey, type Path } from './path.js';
import type { ReadResult } from './read-scenario.js';
import { usesOf } from './uses.js';
import { scenarioSchema, type Scenario } from './scenario.js';
import { isGroup, unwrap, valueAt } from './tree.js';

export { formGroupIds } from './form-types.js';
export type {
  Addition,
  FieldMark,
  FormField,
  FormGroup,
  FormPart,
  PartAddition,
} from './form-types.js';

type Opened = Extract<ReadResult, { ok: true }>;

const groupOf = (path: Path): FormGroupId => {
  const [first] = path;
  if (first === 'arrivals') return 'guests';
  if (first === 'collections') return 'supply';
  return (formGroupIds as readonly unknown[]).includes(first) ? (first as FormGroupId) : 'house';
};

/** Lists and maps whose entries are things with fields of their own, which can go. */
const things: readonly string[] = [
  'menu',
  'ware',
  'washing.machines',
  'alternatives',
  'collections',
  'supply.suppliers',
  'supply.losses',
  'supply.takeaway.cups',
  'supply.takeaway.lids',
  'suit.papers',
  'suit.drinks',
  'suit.ware',
  'racks.measures',
];

/** Added by their class, or what they are served in. */
const byClass: ReadonlySet<string> = new Set(['menu', 'ware', 'washing.machines']);

const isThing = (path: Path): boolean => things.includes(dotted(path.slice(0, -1)));

/** The thing that a field belongs to; [] for a field of the house itself. */
function thingOf(path: Path): Path {
  for (const owner of things) {
    const depth = owner.split('.').length;
    if (path.length > depth + 1 && dotted(path.slice(0, depth)) === owner)
      return path.slice(0, depth + 1);
  }
  return [];
}

/** A value on one line, as a box shows it. */
const line = (value: unknown): string =>
  value === undefined || value === null ? '' : typeof value === 'string' ? value : flowText(value);

/** A scenario that was read, as groups of form fields. Only values that can be changed by themselves are listed. */
export function formsOf({ scenario, raw, inputs }: Opened): readonly FormGroup[] {
  const plain = unwrap(raw).tree;
  const filled = fill(plain).tree;
  const byPath = new Map(inputs.map((input) => [pathKey(input.at), input]));
  const wareIds = Object.keys(scenario.ware);
  const vessels = wareIds.filter((id) => ['cup', 'glass'].includes(scenario.ware[id]!.shape ?? ''));
  const families = [
    ...new Set(Object.entries(scenario.ware).map(([id, { family }]) => family ?? id)),
  ];
  const names = (path: Path): readonly string[] =>
    ({
      'racks.owned': kindsIn(scenario.racks),
      'racks.families': families,
      'supply.onHand': wareIds,
      'supply.losses': wareIds,
      'suit.ware': wareIds,
      'suit.drinks': Object.keys(scenario.menu),
      'storage.onTop': wareIds,
      'storage.trigger': wareIds,
    })[dotted(path)] ??
    (path[1] === 'suppliers' && path[3] === 'quotes' && path.length === 4
      ? wareIds
      : path[0] === 'collections' && path[2] === 'standsFor' && path.length === 3
        ? vessels
        : []);
  /** The parts of a value are marked one by one. */
  const splits = (path: Path): boolean =>
    !byPath.has(pathKey(path)) &&
    inputs.some(({ at }) => at.length > path.length && isWithin(at, path));

  const parts = new Map<FormGroupId, Map<string, Draft>>(formGroupIds.map((id) => [id, new Map()]));
  /** The part of its group that a place belongs to. */
  const partOf = (at: Path): Draft => {
    const owner = thingOf(at);
    const group = parts.get(groupOf(at))!;
    const key = pathKey(owner);
    if (!group.has(key))
      group.set(key, {
        at: owner,
        canGo: owner.length > 0 && valueAt(plain, owner) !== undefined,
        fields: [],
        adds: [],
        entries: [],
        usedBy: usesOf(plain, owner),
      });
    return group.get(key)!;
  };
  const fieldFor = (field: RawField): FormField =>
    fieldOf(
      field,
      plain,
      byPath.get(pathKey(field.at)),
      optionsOf(field, scenario),
      scenario.currency,
    );
  const tell = (field: RawField): void => {
    partOf(field.at).fields.push(fieldFor(field));
  };
  const additionOf = ({ at, by, taken, needs, empty }: RawAddition): PartAddition => {
    const there = by === 'name' ? [...at, '*'] : by === 'place' ? [...at, taken.length] : at;
    return {
      at,
      by,
      taken,
      names: names(at)
        .filter((id) => !taken.includes(id))
        .map((id) => ({ id, name: nameOf(id, scenario.ware[id] ?? scenario.menu[id] ?? {}) })),
      needs: needs.map((need) =>
        fieldFor({ ...need, at: [...there, ...need.at], value: undefined, optional: false }),
      ),
      empty,
    };
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
  eachAddition(scenarioSchema, filled, {
    offer: (addition) => {
      if (!byClass.has(dotted(addition.at)))
        partOf([...addition.at, '*']).adds.push(additionOf(addition));
    },
    entry: (at) => {
      if (!isThing(at)) partOf(at).entries.push(at);
    },
  });
  const drafts = [...parts.values()].flatMap((group) => [...group.values()]);
  const all = drafts.flatMap(({ fields }) => fields);
  for (const draft of drafts)
    if (draft.at[0] === 'alternatives')
      draft.fields = draft.fields.flatMap((field) => changesOf(field, plain, all));

  const further = furtherMachine(filled);
  return formGroupIds.map((id) => ({
    id,
    parts: [...parts.get(id)!.values()].map(({ canGo, ...part }) => ({
      ...part,
      name: part.at.length === 0 ? '' : nameAt(part.at, filled),
      canGo: canGo && !isLast(part.at, plain),
    })),
    adds: additionTo(id, scenario),
    ...(id === 'washing' && further !== undefined ? { furtherMachine: further } : {}),
  }));
}

/** A part that is being put together. */
interface Draft extends Omit<FormPart, 'name' | 'fields'> {
  fields: FormField[];
  readonly adds: PartAddition[];
  readonly entries: Path[];
}

function fieldOf(
  field: RawField,
  plain: unknown,
  input: Input | undefined,
  options: readonly FieldOption[],
  currency: string,
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
    ...(kind === 'money' || kind === 'amount' ? { unit: currency } : {}),
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
