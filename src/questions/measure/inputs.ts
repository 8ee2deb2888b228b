/** What a filled sheet says of the inputs of a house: values, ranges, and which stay as they were because too little was counted. */
import type { Input } from '../../scenario/inputs.js';
import type { Sheet } from '../../measuring/sheet.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { Kept, Measured } from './answer.js';
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
}

/** Sources of earlier sheets begin so; a later sheet replaces them. */
const SHEET = 'sheet of ';

export function measuredInputs(
  sheet: Sheet,
  scenario: Scenario,
  inputs: readonly Input[],
  seed: string | null,
  readers: HabitReaders = habitReaders(scenario, seed ?? scenario.seed),
): MeasuredInputs {
  const found: Found[] = [
    ...measuredStays(sheet, scenario, inputs, seed),
    ...measuredGuests(sheet, scenario, inputs),
    ...measuredWork(sheet, seed).map((one) => throughTheHouse(one, scenario, readers)),
  ];
  const measured: Measured[] = [];
  const kept: Kept[] = [];
  for (const one of found) {
    const input = inputs.find(({ path }) => path === one.path);
    if (input === undefined) continue;
    if ('why' in one) kept.push(one);
    else if (input.basis === 'measured' && !input.source.startsWith(SHEET))
      kept.push({
        path: one.path,
        why: `was measured before (${input.source || 'no source given'})`,
      });
    else {
      const { how, ...rest } = one;
      measured.push({ ...rest, at: input.at, source: `${SHEET}${sheet.date}, ${how}` });
    }
  }
  return { measured, kept };
}

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
function throughTheHouse(one: Found, scenario: Scenario, readers: HabitReaders): Found {
  const habit = HABITS.find((path) => path === one.path);
  if (habit === undefined || 'why' in one) return one;
  const { clearing, washing } = compile(scenario, piecesPerRackOf);
  const now = habit === 'clearing.every' ? clearing.every : washing.partLoadWait;
  if (now === null) return one;
  const law = lawOf(now, 'min');
  const reader = readers(habit);
  const at = reader.read(one.mean);
  // The error of the times themselves, and what one morning's times cannot show.
  const own = one.high === null ? 0 : log(one.high / one.mean);
  const half = exp(Math.sqrt(square(own) + square(NORMAL) * (at?.beyond ?? 0)));
  const [mean, low, high] = [one.mean, one.mean / half, one.mean * half].map((seen) => {
    const read = reader.read(seen);
    return read === null ? null : read.factor * law.mean;
  });
  if (mean == null || low == null || high == null)
    return {
      path: one.path,
      why: `${one.mean.toFixed(1)} min were seen (${one.how}), but in this house what is seen hardly depends on it`,
    };
  // What is seen is itself simulated, so its line need not rise everywhere.
  const ends = [Math.min(mean, low, high), Math.max(mean, low, high)] as const;
  const written = (value: number): unknown => lawWritten({ ...law, mean: value }, 'min');
  return {
    ...one,
    value: written(mean),
    range: [written(ends[0]), written(ends[1])],
    how: `${one.how}, ${one.mean.toFixed(1)} min on average, read through the rush of this house; law as before`,
    mean,
    low: ends[0],
    high: ends[1],
    sd: mean * law.cv,
    law: null,
  };
}
