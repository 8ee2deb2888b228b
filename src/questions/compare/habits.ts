/**
 * Habits of a house: how often tables are cleared, how long a part rack waits and how full it must be. The same grid for
 * every house finds its best ones; a habit a fifth off shows whether a difference rests on it.
 */
import { splitNumber } from '../../quantities/unit-sizes.js';
import type { Candidate } from './alternatives.js';
import type { AtBest, HabitOff } from './answer.js';
import { extraOf } from './evaluate.js';
import type { QuickReader } from './quick.js';
import { edited, type House } from '../../scenario/edited.js';
import type { Path } from '../../scenario/path.js';
import { rawValueAt, scaled, tidy, withRawValue } from '../../scenario/raw-paths.js';
import type { ReadOptions } from '../../scenario/read-scenario.js';
import type { Scenario } from '../../scenario/scenario.js';
import { valueSize } from '../../scenario/value-size.js';

const MINUTE = 60_000;
const WAITS = [0.5, 1, 2, 4];
const FILLS = [0.5, 0.75, 0.9];
const OFF = [0.8, 1.2];

/** A habit's place: a group of the scenario and its field. */
export type TimePath = readonly [string, string];

const WAIT: TimePath = ['washing', 'partLoadWait'];
const FROM: Path = ['washing', 'partLoadFrom'];
const ROUNDS: TimePath = ['clearing', 'every'];

/** Mean of a habit's time, ms; null where the house has none. */
export const timeOf = (scenario: Scenario, [group, field]: TimePath): number | null => {
  const slice = scenario[group as keyof Scenario] as unknown;
  return typeof slice === 'object' && slice !== null
    ? valueSize((slice as Record<string, unknown>)[field])
    : null;
};

export interface Habits {
  readonly waitMinutes: number | null;
  readonly from: number | null;
}

/**
 * The grid, the same for every house: the base's wait times each factor, and how full a rack must be, as it is among them; or
 * what the scenario names under `tune`. Empty where no part rack ever goes by its wait.
 */
export function habitGrid({ scenario }: Pick<Candidate, 'scenario'>): Habits[] {
  const { tune } = scenario;
  const wait = timeOf(scenario, WAIT);
  if (wait === null || wait === 0) return [];
  const waits = tune?.partLoadWait ?? WAITS.map((times) => wait * times);
  const fills = [null, ...(tune?.partLoadFrom ?? FILLS)];
  return waits.flatMap((ms) => fills.map((from) => ({ waitMinutes: tidy(ms / MINUTE), from })));
}

/** Where habits lie at an end of what was tried, so that others farther off might be better still. */
export function edgesOf(
  base: Pick<Candidate, 'scenario'>,
  { waitMinutes, from }: Habits,
): AtBest['edges'] {
  const grid = habitGrid(base);
  const waits = grid.map((one) => one.waitMinutes!);
  const fills = grid.flatMap((one) => one.from ?? []);
  const most = Math.max(...waits);
  const least = Math.min(...waits);
  return [
    ...(most > least && waitMinutes === most ? (['longestWait'] as const) : []),
    ...(most > least && waitMinutes === least ? (['shortestWait'] as const) : []),
    ...(from !== null && from === Math.max(...fills) && from < 1 ? (['fullest'] as const) : []),
  ];
}

/** The house with other habits; null where it cannot have them. */
export const withHabits = (
  candidate: Candidate,
  { waitMinutes, from }: Habits,
  reading: ReadOptions,
): Candidate | null =>
  reread(
    candidate,
    ({ raw, scenario }) => {
      const own = timeOf(scenario, WAIT);
      if (own === null || own === 0) return null;
      const times = (waitMinutes! * MINUTE) / own;
      const waited = withRawValue(raw, WAIT, longer(rawValueAt(raw, WAIT), own, times));
      return from === null ? waited : withRawValue(waited, FROM, `${tidy(100 * from)} %`);
    },
    reading,
  );

type Off = Pick<HabitOff, 'habit' | 'times'>;

/** Every habit a fifth less and more, one at a time. */
const shifts: readonly Off[] = (['rounds', 'waits', 'fill'] as const).flatMap((habit) =>
  OFF.map((times) => ({ habit, times })),
);

/** Readings of a house with a habit off, at most. */
export const shiftCount = shifts.length;

/** The house with one habit off; itself where it has no such habit. */
const shifted = (one: Candidate, { habit, times }: Off, reading: ReadOptions): Candidate =>
  reread(
    one,
    ({ raw, scenario }) => {
      if (habit === 'fill') {
        const from = scenario.washing.partLoadFrom;
        return from === undefined
          ? null
          : withRawValue(raw, FROM, `${tidy(100 * Math.min(1, from * times))} %`);
      }
      const path = habit === 'rounds' ? ROUNDS : WAIT;
      const own = timeOf(scenario, path);
      return own === null || own === 0
        ? null
        : withRawValue(raw, path, longer(rawValueAt(raw, path), own, times));
    },
    reading,
  ) ?? one;

/** Base and house with each habit off in both, where either has it. */
export const habitsOff = (
  candidate: Candidate,
  base: Candidate,
  reading: ReadOptions,
): readonly (Off & { readonly pair: readonly [Candidate, Candidate] })[] =>
  shifts.flatMap((off) => {
    const pair = [shifted(base, off, reading), shifted(candidate, off, reading)] as const;
    return pair[0] === base && pair[1] === candidate ? [] : [{ ...off, pair }];
  });

/** A house with each of its habits off. */
export const eachHabitOff = (
  candidate: Candidate,
  reading: ReadOptions,
): readonly (Off & { readonly house: Candidate })[] =>
  shifts.flatMap((off) => {
    const house = shifted(candidate, off, reading);
    return house === candidate ? [] : [{ ...off, house }];
  });

/** Total of a house by a quick reading. */
export const quickTotal = async (
  candidate: Candidate,
  reader: QuickReader,
  days?: number,
): Promise<number> => (await reader.read(candidate.scenario, extraOf(candidate), days)).costs.total;

/**
 * A habit's time as the file has it, so many times as long: "8 min", "about 8 min" or any law.
 * @param ms its mean, for a file that leaves it to the reference data
 */
export function longer(inFile: unknown, ms: number, times: number): unknown {
  const value = inFile ?? `${tidy(ms / MINUTE)} min`;
  const about = typeof value === 'string' ? /^\s*about\s+(.*)$/.exec(value)?.[1] : undefined;
  if (about !== undefined) return `about ${String(longer(about, ms, times))}`;
  const split = typeof value === 'string' ? splitNumber(value) : null;
  return split === null ? scaled(value, times) : `${tidy(split.number * times)} ${split.rest}`;
}

function reread(
  candidate: Candidate,
  edit: (house: House) => unknown,
  reading: ReadOptions,
): Candidate | null {
  const read = edited(candidate, edit, candidate.name, reading);
  return read?.ok === true
    ? { ...candidate, raw: read.raw, scenario: read.scenario, inputs: read.inputs }
    : null;
}
