/** What filled sheets say of the inputs of a house: values, ranges, and which stay as they were because too little was counted. */
import type { Input } from '../../scenario/inputs.js';
import type { Sheet } from '../../measuring/sheet.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { Kept, Measured } from './answer.js';
import { differencesBetween, rangeOverMornings, type Differences } from './between.js';
import type { Found } from './found.js';
import { measuredGuests } from './measured-guests.js';
import { measuredStays } from './measured-stays.js';
import { measuredWork } from './measured-work.js';
import { habitReader, type Habit, type HabitReader } from './seen.js';
import { lawOf, lawWritten } from './written.js';
import { exp } from '../../elementary/exp.js';
import { log } from '../../elementary/log.js';
import { square } from '../../elementary/powers.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';

export interface MeasuredInputs {
  readonly measured: readonly Measured[];
  readonly kept: readonly Kept[];
  /** Null: one morning. */
  readonly differences: Differences | null;
}

/** Sources of earlier sheets begin so; a later sheet replaces them. */
const SHEETS = /^sheets? of /;

/** Where a value comes from, as its source says. */
const sourceOf = (sheets: readonly Sheet[]): string => {
  const dates = sheets.map(({ date }) => date);
  return dates.length === 1
    ? `sheet of ${dates[0]!}`
    : `sheets of ${dates.slice(0, -1).join(', ')} and ${dates.at(-1)!}`;
};

/** @param sheets a morning each, all with the same columns of party sizes; their counts and times are pooled */
export function measuredInputs(
  sheets: readonly Sheet[],
  scenario: Scenario,
  inputs: readonly Input[],
  seed: string | null,
  readers: HabitReaders = habitReaders(scenario, seed ?? scenario.seed),
): MeasuredInputs {
  const foundOn = (mornings: readonly Sheet[], fitted: string | null): Found[] => [
    ...measuredStays(mornings, scenario, inputs, fitted),
    ...measuredGuests(mornings, scenario, inputs),
    ...measuredWork(mornings, fitted).map((one) =>
      throughTheHouse(one, scenario, readers, morningsOf(one.path, mornings)),
    ),
  ];
  const pooled = foundOn(sheets, seed);
  const differences =
    sheets.length === 1
      ? null
      : differencesBetween(
          sheets.map((sheet) => ({ date: sheet.date, found: foundOn([sheet], null) })),
        );
  const found = pooled.map((one) => rangeOverMornings(one, differences));
  const measured: Measured[] = [];
  const kept: Kept[] = [];
  for (const one of found) {
    const input = inputs.find(({ path }) => path === one.path);
    if (input === undefined) continue;
    if ('why' in one) kept.push(one);
    else if (input.basis === 'measured' && !SHEETS.test(input.source))
      kept.push({
        path: one.path,
        why: `was measured before (${input.source || 'no source given'})`,
      });
    else {
      const { how, written: _, ...rest } = one;
      measured.push({ ...rest, at: input.at, source: `${sourceOf(sheets)}, ${how}` });
    }
  }
  return { measured, kept, differences };
}

/** Earlier sheets whose values these take the place of, by their sources up to the first comma. */
export const replacedSheets = (
  inputs: readonly Input[],
  { measured }: MeasuredInputs,
): readonly string[] => [
  ...new Set(
    inputs
      .filter(
        ({ path, source }) => SHEETS.test(source) && measured.some((one) => one.path === path),
      )
      .map(({ source }) => source.split(',')[0]!)
      .filter((source) => measured.every((one) => !one.source.startsWith(`${source},`))),
  ),
];

/** On how many mornings a habit was seen. */
const morningsOf = (path: string, sheets: readonly Sheet[]): number =>
  Math.max(
    1,
    sheets.filter(({ rounds, loads }) => (path === 'clearing.every' ? rounds : loads).length > 0)
      .length,
  );

const NORMAL = 1.96;
const HABITS: readonly Habit[] = ['clearing.every', 'washing.partLoadWait'];
export type HabitReaders = (habit: Habit) => HabitReader;

/** Readers of the habits of a house, made when first asked for. */
export function habitReaders(scenario: Scenario, seed: string): HabitReaders {
  const made = new Map<Habit, HabitReader>();
  return (habit) => {
    const reader =
      made.get(habit) ?? habitReader(compile(scenario, piecesPerRackOf), habit, `${seed}/seen`);
    made.set(habit, reader);
    return reader;
  };
}

/** A habit as it must be for the house to show what was seen; others as they are. */
function throughTheHouse(
  one: Found,
  scenario: Scenario,
  readers: HabitReaders,
  mornings: number,
): Found {
  const habit = HABITS.find((path) => path === one.path);
  if (habit === undefined || 'why' in one) return one;
  const { clearing, washing } = compile(scenario, piecesPerRackOf);
  const now = habit === 'clearing.every' ? clearing.every : washing.partLoadWait;
  if (now === null) return one;
  const law = lawOf(now, 'min');
  const reader = readers(habit);
  const at = reader.read(one.mean);
  // The error of the times themselves, and what the times of few mornings cannot show.
  const own = one.high === null ? 0 : log(one.high / one.mean);
  const half = exp(Math.sqrt(square(own) + square(NORMAL) * (at?.beyond(mornings) ?? 0)));
  const [mean, low, high] = [one.mean, one.mean / half, one.mean * half].map((seen) => {
    const read = reader.read(seen);
    return read === null ? null : read.factor * law.mean;
  });
  if (mean == null || low == null || high == null)
    return {
      path: one.path,
      why: `${one.mean.toFixed(1)} min were seen (${one.how}), but in this café what is seen hardly depends on it`,
    };
  // What is seen is itself simulated, so its line need not rise everywhere.
  const ends = [Math.min(mean, low, high), Math.max(mean, low, high)] as const;
  const written = (value: number): unknown => lawWritten({ ...law, mean: value }, 'min');
  return {
    ...one,
    value: written(mean),
    range: [written(ends[0]), written(ends[1])],
    written,
    how: `${one.how}, ${one.mean.toFixed(1)} min on average, read through the rush of this house; law as before`,
    mean,
    low: ends[0],
    high: ends[1],
    sd: mean * law.cv,
    law: null,
  };
}
