/**
 * The reference data: classes of ware and machines, kinds of rack, and the defaults of a scenario,
 * each figure with its basis. The only reader of shared/.
 */
import * as z from 'zod';
import defaultsJson from '../../shared/defaults.json' with { type: 'json' };
import machineClassesJson from '../../shared/machine-classes.json' with { type: 'json' };
import rackKindsJson from '../../shared/rack-kinds.json' with { type: 'json' };
import wareClassesJson from '../../shared/ware-classes.json' with { type: 'json' };
import { group } from '../quantities/group.js';
import { money } from '../quantities/money.js';
import { count, plainNumber } from '../quantities/numbers.js';
import { text } from '../quantities/quantity.js';
import { length } from '../quantities/units.js';

/** What a figure rests on. */
export const bases = ['measured', 'published', 'practice', 'assumed'] as const;
export type Basis = (typeof bases)[number];

/** A figure with what it is based on; `range` is where it may plausibly lie. */
const marked = <S extends z.ZodType>(value: S) =>
  group(
    {
      value,
      range: z.tuple([value, value]).optional(),
      basis: z.enum(bases),
      source: text('the source'),
    },
    'write { value, basis, source }',
  );

const wareClasses = z.record(
  z.string(),
  group(
    {
      name: text('the name of the class'),
      rackKind: text('a kind of rack'),
      perRack: z.record(z.string(), count('pieces', 1)),
      brokenPerThousandUses: marked(plainNumber('pieces broken')),
      lostPerYear: marked(plainNumber('share lost')),
      fields: z.record(z.string(), z.unknown()),
    },
    'describe the class',
  ),
);

const machineClasses = z.record(
  z.string(),
  group(
    { name: text('the name of the class'), fields: z.record(z.string(), z.unknown()) },
    'describe the class',
  ),
);

const rackKinds = z.record(
  z.string(),
  group(
    {
      name: text('the name of the rack'),
      form: z.enum(['open', 'grid', 'peg', 'cutlery']),
      outer: marked(length),
      usable: marked(length),
      compartments: count('compartments', 1).optional(),
      opening: marked(length).optional(),
      pitch: marked(length).optional(),
      /** Tallest piece: of compartments without extenders, of any other as the machine takes it. */
      innerHeight: marked(length),
      extenderHeight: marked(length).optional(),
      extendersMost: marked(count('extenders')).optional(),
      price: marked(money),
    },
    'describe the rack',
  ),
);

/** A class of ware: `fields` are written as in a scenario file, marked with their basis. */
export type WareClass = z.output<typeof wareClasses>[string];
export type MachineClass = z.output<typeof machineClasses>[string];
/** A kind of rack; lengths in mm. */
export type RackKind = z.output<typeof rackKinds>[string];

/** Reads a table once, when it is first asked for; a mistake in it is ours, so it throws. */
function table<T>(
  schema: z.ZodType<Record<string, T>>,
  json: unknown,
): () => Readonly<Record<string, T>> {
  let read: Record<string, T> | null = null;
  return () => (read ??= schema.parse(json));
}

const wares = table(wareClasses, wareClassesJson);
const machines = table(machineClasses, machineClassesJson);
const racks = table(rackKinds, rackKindsJson);

const find = <T>(rows: Readonly<Record<string, T>>, id: string): T | null =>
  Object.hasOwn(rows, id) ? rows[id]! : null;

export const wareClassIds = (): readonly string[] => Object.keys(wares());
export const machineClassIds = (): readonly string[] => Object.keys(machines());
export const rackKindIds = (): readonly string[] => Object.keys(racks());

/** A class of ware by id ("medium-cup"); null if there is none. */
export const wareClass = (id: string): WareClass | null => find(wares(), id);
/** A class of machine by id ("undercounter"); null if there is none. */
export const machineClass = (id: string): MachineClass | null => find(machines(), id);
/** A kind of rack by id ("open", "grid-25", "peg", "cutlery"); null if there is none. */
export const rackKind = (id: string): RackKind | null => find(racks(), id);

/** The scenario's defaults: a tree in the shape of a scenario file whose leaves are marked figures. */
export const defaults: Readonly<Record<string, unknown>> = defaultsJson;
