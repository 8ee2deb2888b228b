/** Which fields of the schema a file gives, and which of them the answers to questions read. */
import type * as z from 'zod';
import { inThisThread } from '../../src/cafe/runner.js';
import type { SolverLoader } from '../../src/ordering/choose-buy.js';
import { quantities } from '../../src/quantities/quantity.js';
import { questions } from '../../src/questions/list.js';
import type { Asking, Question } from '../../src/questions/question.js';
import { generalPath } from '../../src/scenario/name-maps.js';
import { isWithin, type Path } from '../../src/scenario/path.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { scenarioSchema } from '../../src/scenario/scenario.js';
import { defOf } from '../../src/scenario/schema-walk.js';
import { isGroup, unwrap } from '../../src/scenario/tree.js';
import { contextOf } from '../../src/tell/context-of.js';

/** Changes are paths into the file itself: what reads them reads the file. */
const CHANGES = [
  'alternatives.*.change',
  'alternatives.*.scale',
  'calendar.kinds.*.change',
  'calendar.kinds.*.scale',
];
/** Handed on as they are: a collection's terms become those of a supplier, whose fields are asked after too. */
const HANDED_ON = ['collections.*.freight', 'collections.*.tax', 'collections.*.minimumOrder'];

function leavesOf(schema: z.core.$ZodType, path = ''): string[] {
  if (quantities.has(schema)) return [path];
  const { innerType, in: input, options, shape, valueType, element } = defOf(schema);
  const step = (key: string): string => (path === '' ? key : `${path}.${key}`);
  const found = [
    ...[innerType, input, element].flatMap((one) => (one ? leavesOf(one, path) : [])),
    ...(options ?? []).flatMap((one) => leavesOf(one, path)),
    ...Object.entries(shape ?? {}).flatMap(([key, one]) => leavesOf(one, step(key))),
    ...(valueType ? leavesOf(valueType, step('*')) : []),
  ];
  return found.length === 0 ? [path] : found;
}

/** The same data, with a note of every place that is read. */
function recorded(value: unknown, path: Path, seen: Set<string>): unknown {
  if (Array.isArray(value)) return value.map((one, i) => recorded(one, [...path, i], seen));
  if (!isGroup(value)) return value;
  const known = new Map<string, unknown>();
  return new Proxy(
    { ...value },
    {
      get: (target, key) => {
        if (typeof key !== 'string') return undefined;
        // Writing the whole file out, to change it and read it again, is not reading its fields.
        if (key === 'toJSON') return () => value;
        seen.add(generalPath([...path, key]));
        if (!known.has(key)) known.set(key, recorded(target[key], [...path, key], seen));
        return known.get(key);
      },
    },
  );
}

function placesIn(value: unknown, path: Path = []): string[] {
  if (Array.isArray(value)) return value.flatMap((one, i) => placesIn(one, [...path, i]));
  if (!isGroup(value)) return [generalPath(path)];
  return [
    generalPath(path),
    ...Object.entries(value).flatMap(([key, one]) => placesIn(one, [...path, key])),
  ];
}

export interface FieldsRead {
  /** All fields of the schema. */
  readonly fields: readonly string[];
  /** By question, the fields that it reads. */
  readonly readBy: Readonly<Record<string, readonly string[]>>;
  /** Given by the file, and read by no answer. */
  readonly unread: readonly string[];
  /** Neither given nor read. */
  readonly untried: readonly string[];
}

/**
 * Puts questions to a file through a record of what is read.
 *
 * @param asked names of questions, with their settings
 * @param besideOf bytes of a file that the scenario names
 */
export async function fieldsRead(
  text: string,
  asked: Readonly<Record<string, Parameters<Question['ask']>[1]>>,
  besideOf: (file: string) => Uint8Array,
): Promise<FieldsRead> {
  const file = 'fields.yaml';
  const read = readScenario(text, file, { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const by = new Map<string, Set<string>>();
  const asking: Omit<Asking, 'opened'> = {
    fileName: file,
    runner: inThisThread(),
    context: contextOf(read.scenario, read.inputs, '0', piecesPerRackOf),
    today: '2027-03-01',
    loadSolver: null as SolverLoader,
  };
  for (const [name, given] of Object.entries(asked)) {
    const question = questions.find((one) => one.name === name)!;
    const names = question.beside?.(read.scenario) ?? [];
    const beside = Object.fromEntries(names.map((one) => [one, besideOf(one)]));
    const own = new Set<string>();
    by.set(name, own);
    const opened = { ...read, scenario: recorded(read.scenario, [], own) as typeof read.scenario };
    const reply = await question.ask({ ...asking, opened, beside }, given);
    if (!reply.ok)
      throw new Error(`${name}: ${reply.problems.map(({ message }) => message).join('\n')}`);
  }
  const within = (place: string, owners: readonly string[]): boolean =>
    owners.some((owner) => isWithin(place.split('.'), owner.split('.')));
  const seen = new Set([...by.values()].flatMap((own) => [...own]));
  const all = new Set(leavesOf(scenarioSchema));
  const fields = [...all]
    // Unlimited machines have the fields of a listed one, which `generalPath` says of them.
    .filter((place) => !within(place, [...CHANGES, ...HANDED_ON, 'washing.machines.unlimited']))
    .filter((place) => ![...all].some((owner) => owner !== place && within(place, [owner])))
    .toSorted();
  const given = new Set(placesIn(unwrap(read.raw).tree));
  return {
    fields,
    readBy: Object.fromEntries(
      [...by].map(([name, own]) => [name, fields.filter((place) => own.has(place))]),
    ),
    unread: fields.filter((place) => given.has(place) && !seen.has(place)),
    untried: fields.filter((place) => !given.has(place) && !seen.has(place)),
  };
}
