/**
 * Habits of a house: how often tables are cleared, how long a part rack waits and how full it must be. The same grid for
 * every house finds its best ones; a habit a fifth off shows whether a difference rests on it.
 */
import { splitNumber } from '../../quantities/quantity.js';
import type { Candidate } from './alternatives.js';
import type { HabitOff } from './answer.js';
import { extraOf } from './evaluate.js';
import type { QuickReader } from './quick.js';
import type { Path } from '../../scenario/path.js';
import { rawValueAt, scaled, tidy, withRawValue } from '../../scenario/raw-paths.js';
import { checkTree, type ReadOptions } from '../../scenario/read-scenario.js';
import type { Scenario } from '../../scenario/scenario.js';
import { valueSize } from '../../scenario/value-size.js';

const MINUTE = 60_000;
const WAITS = [0.5, 1, 2, 4];
const FILLS = [null, 0.5, 0.75, 0.9];
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

/** The grid: the base's wait times each factor, and how full a rack must be; empty where no part rack ever goes by time. */
export function habitGrid({ scenario }: Pick<Candidate, 'scenario'>): Habits[] {
  const wait = timeOf(scenario, WAIT);
  if (wait === null || wait === 0) return [];
  return WAITS.flatMap((times) =>
    FILLS.map((from) => ({ waitMinutes: tidy((wait / MINUTE) * times), from })),
  );
}

/** The house with other habits; null where it cannot have them. */
export function withHabits(
  candidate: Candidate,
  { waitMinutes, from }: Habits,
  reading: ReadOptions,
): Candidate | null {
  const { raw, scenario } = candidate;
  const own = timeOf(scenario, WAIT);
  if (own === null || own === 0) return null;
  const times = (waitMinutes! * MINUTE) / own;
  const waited = withRawValue(raw, WAIT, longer(rawValueAt(raw, WAIT), own, times));
  return reread(
    candidate,
    from === null ? waited : withRawValue(waited, FROM, `${tidy(100 * from)} %`),
    reading,
  );
}

/** Every habit of a house a fifth shorter and longer, one at a time. */
export function habitsOff(
  candidate: Candidate,
  base: Candidate,
  reading: ReadOptions,
): readonly (Pick<HabitOff, 'habit' | 'times'> & {
  readonly pair: readonly [Candidate, Candidate];
})[] {
  const habits = [
    { habit: 'rounds', path: ROUNDS },
    { habit: 'waits', path: WAIT },
  ] as const;
  return habits.flatMap(({ habit, path }) =>
    OFF.flatMap((times) => {
      const pair = [base, candidate].map((one) => {
        const own = timeOf(one.scenario, path);
        return own === null || own === 0
          ? one
          : (reread(
              one,
              withRawValue(one.raw, path, longer(rawValueAt(one.raw, path), own, times)),
              reading,
            ) ?? one);
      }) as [Candidate, Candidate];
      return pair[0] === base && pair[1] === candidate ? [] : [{ habit, times, pair }];
    }),
  );
}

/** Total of a house by a quick reading. */
export const quickTotal = async (candidate: Candidate, reader: QuickReader): Promise<number> =>
  (await reader.read(candidate.scenario, extraOf(candidate))).costs.total;

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

function reread(candidate: Candidate, raw: unknown, reading: ReadOptions): Candidate | null {
  const read = checkTree(raw, () => ({ line: 1, column: 1 }), candidate.name, reading);
  return read.ok ? { ...candidate, raw, scenario: read.scenario, inputs: read.inputs } : null;
}
