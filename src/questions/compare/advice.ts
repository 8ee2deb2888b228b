/**
 * From intervals to advice. Something is recommended only where its interval leaves no room for the contrary, where it does not
 * rest on one habit of the house, and where staff time, counted or not, does not turn it round.
 */
import { annuityFactor } from '../../comparing/annuity.js';
import { holdsWith } from '../../comparing/verdict.js';
import type { Candidate } from './alternatives.js';
import type { HabitOff, Said } from './answer.js';
import { frameOf } from './costs.js';
import { eachHabitOff, habitsOff, quickTotal } from './habits.js';
import type { Looked, Looks } from './looks.js';
import type { QuickReader } from './quick.js';
import type { ReadOptions } from '../../scenario/read-scenario.js';

export interface Advice {
  /** By house, the base (null) first. */
  readonly said: readonly (Said | null)[];
  readonly off: readonly (readonly HabitOff[])[];
  /** Worth of a staff hour at which the sign turns, minor units; null where it never does. */
  readonly turnsAt: readonly (number | null)[];
  /** Places in the list of houses: the best first, the base as 0, what is to be planned for last. */
  readonly order: readonly number[];
  readonly best: number;
  /** Of the house as it is at its best habits, against itself at the present ones; null where none were tried. */
  readonly habit: Said | null;
  readonly asGood: readonly number[];
  /** By house: whether it is a part of the better habits that are recommended. */
  readonly within: readonly boolean[];
}

/** With the habits of both at their best nothing is left of the difference. */
const isWithinHabits = ({ tuned }: Looked): boolean => tuned?.pair.total.difference === 0;

export async function advise(
  candidates: readonly Candidate[],
  looks: Looks,
  reader: QuickReader,
  reading: ReadOptions,
): Promise<Advice> {
  const { houses, indifference } = looks;
  const difference = (at: number): number => houses[at]!.pair?.total.difference ?? 0;
  const off: HabitOff[][] = [];
  for (const [at, { verdict }] of houses.entries()) {
    const own: HabitOff[] = [];
    if (verdict === 'cheaper' || verdict === 'dearer')
      for (const { habit, times, pair } of habitsOff(candidates[at]!, candidates[0]!, reading))
        own.push({
          habit,
          times,
          difference: (await quickTotal(pair[1], reader)) - (await quickTotal(pair[0], reader)),
        });
    off.push(own);
  }
  const turnsAt = houses.map((house) => staffHourOf(house));
  const said = houses.map((house, at): Said | null => {
    const { verdict, tuned } = house;
    if (verdict !== 'cheaper' && verdict !== 'dearer') return verdict;
    const own = difference(at);
    const shifted = off[at]!.map((one) => one.difference);
    // A habit put best in both houses is no difference any more, and says nothing against the habit.
    const atBest = tuned?.pair.total.difference ?? 0;
    const best = at === 0 || atBest === 0 ? [] : [atBest];
    if (!holdsWith(own, [...shifted, ...best])) return 'habits';
    const hour = frameOf(candidates[0]!.scenario).staffHour;
    return turnsAt[at] !== null && turnsAt[at]! > 0 && turnsAt[at]! < hour ? 'staff' : verdict;
  });
  const ranked = houses.map((_, at) => at).filter((at) => !candidates[at]!.planFor);
  const byTotal = (one: number, other: number): number =>
    difference(one) - difference(other) || one - other;
  const habit = await ownHabits(houses[0]!, reader, reading);
  // Beside better habits, what is no more than a part of them is no advice of its own.
  const within = (at: number): boolean =>
    habit === 'cheaper' && said[at] === 'cheaper' && isWithinHabits(houses[at]!);
  const best =
    ranked.filter((at) => said[at] === 'cheaper' && !within(at)).toSorted(byTotal)[0] ?? 0;
  const asGood: number[] = [];
  for (const at of ranked)
    if (
      best !== 0 &&
      at !== best &&
      at !== 0 &&
      !within(at) &&
      ['cheaper', 'alike', 'open'].includes(said[at]!)
    ) {
      const { total } = await looks.between(best, at);
      if (total.low <= indifference) asGood.push(at);
    }
  return {
    said,
    off,
    turnsAt,
    order: [
      ...ranked.toSorted(byTotal),
      ...houses.map((_, at) => at).filter((at) => candidates[at]!.planFor),
    ],
    best,
    habit,
    within: houses.map((_, at) => within(at)),
    asGood: asGood.toSorted(byTotal),
  };
}

/** Better habits of the house as it is are recommended only if they are so when kept a fifth off too. */
async function ownHabits(
  { one, tuned }: Looked,
  reader: QuickReader,
  reading: ReadOptions,
): Promise<Said | null> {
  if (tuned === null || tuned.verdict !== 'cheaper') return tuned?.verdict ?? null;
  const now = await quickTotal(one.candidate, reader);
  for (const { house } of eachHabitOff(tuned.one.candidate, reading))
    if ((await quickTotal(house, reader)) >= now) return 'habits';
  return 'cheaper';
}

/** Difference without staff time over the present value of a staff hour more a working day, each year. */
function staffHourOf({ one, base, pair }: Looked): number | null {
  if (pair === null) return null;
  const { scenario } = one.candidate;
  const frame = frameOf(scenario);
  const years = annuityFactor(frame.discount, frame.horizonYears);
  const staffAYear = one.costs.staffAYear - base.costs.staffAYear;
  const hours = frame.staffHour === 0 ? 0 : staffAYear / frame.staffHour;
  const cash = one.costs.total - base.costs.total - staffAYear * frame.staffCounted * years;
  const turns = hours === 0 ? Number.NaN : -cash / (hours * years);
  return Number.isFinite(turns) && turns > 0 ? turns : null;
}
