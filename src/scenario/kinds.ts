/**
 * Kinds of day: each a scenario of its own, the file with its changes over it. What is bought once (ware, racks, machines,
 * prices) is the same on all of them; hours, guests, people and habits may differ.
 */
import { nameOf } from '../quantities/name.js';
import { calendarOf } from './calendar.js';
import type { Input } from './inputs.js';
import { patched, placedIn } from './patched.js';
import type { Path } from './path.js';
import { problem, problemAt, type Flaw, type Position, type Problem } from './problems.js';
import { parsePath } from './raw-paths.js';
import type { KindOfDay, Scenario } from './scenario.js';
import { isGroup, valueAt } from './tree.js';

/** What a kind of day may change. */
const OF_A_DAY = [
  'hours',
  'arrivals',
  'guests',
  'menu',
  'seats',
  'counter',
  'clearing',
  'washing',
] as const;

/** The kinds of day of a scenario; one of all the year's days where the file lists none. */
export const kindsOf = (scenario: Scenario): readonly KindOfDay[] =>
  scenario.kinds ?? [
    {
      id: '',
      name: '',
      daysAYear: calendarOf(scenario).daysAYear,
      scenario,
      raw: null,
      inputs: [],
    },
  ];

/** The kind of day of an id, and the seed of its days; the file's own where none is named. */
export function kindOf(
  scenario: Scenario,
  id: string | undefined,
  seed: string,
): { readonly scenario: Scenario; readonly seed: string } {
  const kinds = kindsOf(scenario);
  const at = Math.max(
    0,
    kinds.findIndex((kind) => kind.id === id),
  );
  return { scenario: kinds[at]!.scenario, seed: seedOf(seed, kinds[at]!, at) };
}

/** The seed of a kind's days: kinds other than the file itself have guests of their own. */
export const seedOf = (seed: string, { id }: Pick<KindOfDay, 'id'>, at: number): string =>
  at === 0 ? seed : `${seed}/${id}`;

/** A scenario with the same change on every kind of day, where that needs no new reading. */
export const onEveryKind = (scenario: Scenario, change: (one: Scenario) => Scenario): Scenario => ({
  ...change(scenario),
  ...(scenario.kinds === undefined
    ? {}
    : { kinds: scenario.kinds.map((kind) => ({ ...kind, scenario: change(kind.scenario) })) }),
});

/** Share of the year's days by kind; they add up to 1. */
export function sharesOf(kinds: readonly Pick<KindOfDay, 'daysAYear'>[]): number[] {
  const all = kinds.reduce((sum, { daysAYear }) => sum + daysAYear, 0);
  return kinds.map(({ daysAYear }) => daysAYear / all);
}

/** Mean over the days of a year of what each kind has: the one place where kinds are put together to a year. */
export const meanOverKinds = (
  kinds: readonly { readonly share: number }[],
  of: (at: number) => number,
): number => kinds.reduce((sum, { share }, at) => sum + share * of(at), 0);

type Read =
  | {
      readonly ok: true;
      readonly scenario: Scenario;
      readonly inputs: readonly Input[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

type PositionOf = (path: Path, onKey?: boolean) => Position;

/** What a kind is read with: the file it stands in and the way to check a tree. */
export interface KindReading {
  readonly raw: unknown;
  readonly scenario: Scenario;
  readonly inputs: readonly Input[];
  readonly positionOf: PositionOf;
  readonly fileName: string;
  readonly check: (tree: unknown, positionOf: PositionOf) => Read;
}

/** The kinds that the file lists, the file itself first; or every problem they have. Empty where it lists none. */
export function readKinds({ raw, scenario, inputs, positionOf, fileName, check }: KindReading): {
  readonly kinds: readonly KindOfDay[];
  readonly problems: readonly Problem[];
} {
  const listed = scenario.calendar?.kinds;
  if (listed === undefined) return { kinds: [], problems: [] };
  const told = (flaw: Flaw): Problem => problem(flaw, fileName, positionOf(flaw.path, flaw.onKey));
  const flaws = plainOnes(listed);
  if (flaws.length > 0) return { kinds: [], problems: flaws.map(told) };
  const own = ownTree(raw, calendarOf(scenario).daysAYear);
  const kinds: KindOfDay[] = [];
  const problems: Problem[] = [];
  const ownFirst = Object.entries(listed).toSorted(
    ([, one], [, other]) => Number(isPlain(other)) - Number(isPlain(one)),
  );
  for (const [id, slice] of ownFirst) {
    const at: Path = ['calendar', 'kinds', id];
    const known = { id, name: nameOf(id, slice), daysAYear: slice.daysAYear };
    if (isPlain(slice)) {
      kinds.push({ ...known, scenario, raw: own, inputs });
      continue;
    }
    const inFile = valueAt(raw, [...at, 'change']);
    const { tree, flaws: wrong, origins } = patched(own, slice, isGroup(inFile) ? inFile : {}, at);
    const found = [...elsewhere(slice, at), ...wrong];
    if (found.length > 0) {
      problems.push(...found.map(told));
      continue;
    }
    const read = check(tree, placedIn(at, origins, positionOf));
    if (!read.ok) {
      problems.push(
        ...read.problems.map((one) => ({
          ...one,
          message: `in the kind of day ${id}: ${one.message}`,
        })),
      );
      continue;
    }
    problems.push(...unlike(scenario, read.scenario, at).map(told));
    kinds.push({ ...known, scenario: read.scenario, raw: tree, inputs: read.inputs });
  }
  return problems.length > 0 ? { kinds: [], problems } : { kinds, problems };
}

type Slices = NonNullable<NonNullable<Scenario['calendar']>['kinds']>;
type Slice = Slices[string];

const isPlain = ({ change, scale, without }: Slice): boolean =>
  Object.keys(change ?? {}).length + Object.keys(scale ?? {}).length + (without ?? []).length === 0;

/** The file itself is one kind of day, and only one. */
function plainOnes(listed: Slices): Flaw[] {
  const plain = Object.keys(listed).filter((id) => isPlain(listed[id]!));
  if (plain.length === 1) return [];
  return plain.length === 0
    ? [
        {
          ...problemAt(
            ['calendar', 'kinds'],
            undefined,
            'names no kind of day that is the file as it is',
            'list that kind too, with its days and without changes, such as weekday: { daysAYear: 250 }',
          ),
          onKey: true,
        },
      ]
    : plain.slice(1).map((id) => ({
        ...problemAt(
          ['calendar', 'kinds', id],
          undefined,
          `changes nothing, and neither does ${plain[0]}`,
          'write what is different under change or scale, such as scale: { arrivals: 130 % }, or add its days to the other',
        ),
        onKey: true,
      }));
}

/** The file without its kinds and alternatives, its year said once. */
const ownTree = (raw: unknown, daysAYear: number): unknown =>
  isGroup(raw)
    ? Object.fromEntries(
        Object.entries(raw).flatMap(([key, value]) =>
          key === 'alternatives' ? [] : [[key, key === 'calendar' ? { daysAYear } : value]],
        ),
      )
    : raw;

/** Changes of what is the same every day. */
function elsewhere({ change, scale, without }: Slice, at: Path): Flaw[] {
  const places: readonly (readonly [string, Path])[] = [
    ...Object.keys(change ?? {}).map((key) => [key, [...at, 'change', key]] as const),
    ...Object.keys(scale ?? {}).map((key) => [key, [...at, 'scale', key]] as const),
    ...(without ?? []).map((key, index) => [key, [...at, 'without', index]] as const),
  ];
  return places.flatMap(([key, from]) => {
    const path = parsePath(key);
    if (path === null || (OF_A_DAY as readonly unknown[]).includes(path[0])) return [];
    return [
      {
        ...problemAt(
          from,
          key,
          `cannot differ from day to day; only ${OF_A_DAY.slice(0, -1).join(', ')} and ${OF_A_DAY.at(-1)} can`,
          'leave it out here, or compare two files',
        ),
        onKey: from.at(-2) !== 'without',
      },
    ];
  });
}

/** Drinks and machines that one kind has and the other does not. */
function unlike(own: Scenario, other: Scenario, at: Path): Flaw[] {
  const drinks = ({ menu }: Scenario): string => Object.keys(menu).join();
  // A machine may stand still on some days, but it is the same machine.
  const machines = ({ washing }: Scenario): string =>
    JSON.stringify(washing.machines, (key, value: unknown) =>
      ['down', 'warmUp', 'breakdown'].includes(key) ? undefined : value,
    );
  const flaw = (rule: string, remedy: string): Flaw => ({
    ...problemAt(at, undefined, rule, remedy),
    onKey: true,
  });
  return [
    ...(drinks(own) === drinks(other)
      ? []
      : [
          flaw(
            'has other drinks on its menu',
            'list every drink in the file, and change its share',
          ),
        ]),
    ...(machines(own) === machines(other)
      ? []
      : [
          flaw(
            'has other machines, which are bought once for all days',
            'for one that stands still on such days, change washing.machines[0].down',
          ),
        ]),
  ];
}
