/**
 * Habits are not what one sees: a round that is due while the clearer is busy is never walked, and a rack may wait for
 * the machine rather than for patience to end. So a habit is read through the house: the value at which simulated
 * mornings show, on average, what was seen (indirect inference; C. Gourieroux, A. Monfort and E. Renault, Journal of
 * Applied Econometrics 8, 1993).
 */
import { Day } from '../../cafe/day.js';
import { Demand } from '../../cafe/demand.js';
import { Floor } from '../../cafe/floor.js';
import { exp } from '../../elementary/exp.js';
import { log } from '../../elementary/log.js';
import { scaledLaw } from '../../engine/durations.js';
import type { CafeModel } from '../../cafe/model.js';
import { ROWS } from '../../measuring/sheet.js';
import { WalkRecorder } from '../walk/recorder.js';

const MINUTE = 60_000;
const DAYS = 40;
/** Values tried, as multiples of the one now. */
const TRIED = [0.4, 0.6, 0.8, 1, 1.3, 1.7, 2.3, 3.2];
/** Where what is seen grows by less than this share of the habit's own growth, it says too little of it. */
const TELLS = 0.3;
/** A rack this full was not waiting for more. */
export const FULL = 0.95;

export type Habit = 'clearing.every' | 'washing.partLoadWait';

/** Clearing rounds as they are walked: the moment each begins, with its first trip. */
export function roundsSeen(
  recorder: WalkRecorder,
): { beganMs: number; endMs: number; pieces: number }[] {
  const { moments, trips } = recorder;
  const { times } = moments;
  const at = (moment: number): number => times[Math.min(moment, times.length - 1)]!;
  const busyUntil = new Map<number, number>();
  return trips.flatMap(({ clearer, from, until, pieces }) => {
    const goesOn = busyUntil.get(clearer) === from;
    busyUntil.set(clearer, until);
    return goesOn ? [] : [{ beganMs: at(from), endMs: at(until), pieces: pieces.length }];
  });
}

/** Racks that went into a machine: when the first piece came, when loading began, and the share that was filled. */
export function racksSeen(
  recorder: WalkRecorder,
  perRack: readonly number[],
): { firstMs: number; startedMs: number; fill: number }[] {
  const { moments, stages, racks } = recorder;
  const { times } = moments;
  const LOADING = 1;
  return stages.flatMap(({ stage, from, racks: loaded }) =>
    stage !== LOADING
      ? []
      : loaded.flatMap((index) => {
          const rack = racks[index];
          if (rack === undefined) return [];
          return [
            {
              firstMs: times[rack.from]!,
              startedMs: times[from]!,
              fill: rack.ware.reduce((sum, ware) => sum + 1 / perRack[ware]!, 0),
            },
          ];
        }),
  );
}

/** Minutes seen on average over simulated mornings: between rounds, or waited by racks that were not full; null: none. */
function meanSeen(model: CafeModel, habit: Habit, seed: string): number | null {
  const [floor, demand, day] = [new Floor(model, seed), new Demand(model, seed), new Day()];
  const perRack = model.ware.map((ware) => ware.perRack);
  let [sum, count] = [0, 0];
  for (let number = 0; number < DAYS; number += 1) {
    demand.draw(number, day);
    const recorder = new WalkRecorder(model);
    floor.run(day, number, null, recorder);
    if (habit === 'clearing.every') {
      const rounds = roundsSeen(recorder).slice(0, ROWS.rounds);
      if (rounds.length < 2) continue;
      sum += rounds.at(-1)!.beganMs - rounds[0]!.beganMs;
      count += rounds.length - 1;
    } else
      for (const { firstMs, startedMs, fill } of racksSeen(recorder, perRack).slice(
        0,
        ROWS.loads,
      )) {
        if (fill >= FULL) continue;
        sum += startedMs - firstMs;
        count += 1;
      }
  }
  return count === 0 ? null : sum / count / MINUTE;
}

function withHabit(model: CafeModel, habit: Habit, factor: number): CafeModel | null {
  const { clearing, washing } = model;
  if (habit === 'clearing.every')
    return clearing.every === null
      ? null
      : { ...model, clearing: { ...clearing, every: scaledLaw(clearing.every, factor) } };
  return washing.partLoadWait === null
    ? null
    : { ...model, washing: { ...washing, partLoadWait: scaledLaw(washing.partLoadWait, factor) } };
}

/** What a habit must be, as a multiple of the one now, for `seen` minutes to be seen; null: what is seen does not tell. */
export type ReadHabit = (seen: number) => number | null;

export function habitReader(model: CafeModel, habit: Habit, seed: string): ReadHabit {
  const points = TRIED.flatMap((factor) => {
    const other = withHabit(model, habit, factor);
    const seen = other === null ? null : meanSeen(other, habit, seed);
    return seen === null || seen <= 0 ? [] : [{ x: log(factor), y: log(seen) }];
  });
  return (seen) => {
    const wanted = log(seen);
    // The pieces of the line between the points, the outermost going on beyond them.
    for (let at = 1; at < points.length; at += 1) {
      const [one, two] = [points[at - 1]!, points[at]!];
      if (wanted > two.y && at < points.length - 1) continue;
      const slope = (two.y - one.y) / (two.x - one.x);
      if (slope < TELLS) return null;
      const x = one.x + (wanted - one.y) / slope;
      return exp(Math.max(log(TRIED[0]!) - 1, Math.min(log(TRIED.at(-1)!) + 1, x)));
    }
    return null;
  };
}
