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
import { square } from '../../elementary/powers.js';
import { scaledLaw } from '../../engine/durations.js';
import type { CafeModel } from '../../cafe/model.js';
import { ROWS } from '../../measuring/sheet.js';
import { recorded, type WalkRecorder } from '../walk/recorder.js';

const MINUTE = 60_000;
const DAYS = 40;
/** Values tried, as multiples of the one now. */
const [SHORTER, LONGER] = [0.8, 1.3];
const TRIED = [0.4, 0.6, SHORTER, 1, LONGER, 1.7, 2.3, 3.2];
/** Where what is seen grows by less than this share of the habit's own growth, around the habit as it is and where it is read, it says too little of it. */
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

/** What simulated mornings show of a habit: minutes between rounds, or waited by racks that were not full. */
interface Shown {
  readonly minutes: number;
  /** Times seen in a morning, on average. */
  readonly times: number;
  /** Their standard deviation within a morning, over their mean. */
  readonly cv: number;
  /**
   * Variance of the logarithm of a morning's mean that its own times do not show, as all of them are of one busy or
   * quiet morning.
   */
  readonly beyond: number;
  /** The same of the error of these simulated mornings. */
  readonly simulated: number;
}

/** Null: hardly anything is seen. */
function shownBy(model: CafeModel, habit: Habit, seed: string): Shown | null {
  const [floor, demand] = [new Floor(model, seed), new Demand(model, seed)];
  floor.day = new Day();
  const perRack = model.ware.map((ware) => ware.perRack);
  const mornings: number[][] = [];
  for (let number = 0; number < DAYS; number += 1) {
    demand.draw(number, floor.day);
    mornings.push(
      timesSeen(recorded(floor, number, null), habit, perRack).map((ms) => ms / MINUTE),
    );
  }
  const all = mornings.flat();
  const seen = mornings.filter((times) => times.length >= 2 && mean(times) > 0);
  if (seen.length < 2) return null;
  // Squared: of a morning's mean by its own times, and of the means of mornings.
  const own = mean(seen.map((times) => square(cvOf(times)) / times.length));
  const between = variance(seen.map((times) => log(mean(times))));
  return {
    minutes: mean(all),
    times: all.length / mornings.length,
    cv: Math.sqrt(mean(seen.map((times) => square(cvOf(times))))),
    beyond: Math.max(0, between - own),
    simulated: between / seen.length,
  };
}

function timesSeen(recorder: WalkRecorder, habit: Habit, perRack: readonly number[]): number[] {
  if (habit === 'clearing.every') {
    const rounds = roundsSeen(recorder).slice(0, ROWS.rounds);
    return rounds.slice(1).map(({ beganMs }, at) => beganMs - rounds[at]!.beganMs);
  }
  return racksSeen(recorder, perRack)
    .slice(0, ROWS.loads)
    .flatMap(({ firstMs, startedMs, fill }) => (fill >= FULL ? [] : [startedMs - firstMs]));
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, one) => sum + one, 0) / values.length;
const variance = (values: readonly number[]): number => {
  const middle = mean(values);
  return values.reduce((sum, one) => sum + square(one - middle), 0) / (values.length - 1);
};
const cvOf = (times: readonly number[]): number => Math.sqrt(variance(times)) / mean(times);

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

/** A habit as a multiple of the one now, and by how much the logarithm of what is seen grows with that of the habit. */
export interface HabitRead {
  readonly factor: number;
  readonly slope: number;
  /** Variance of the logarithm of what is seen on so many mornings that their own times do not show. */
  readonly beyond: (mornings: number) => number;
}

export interface HabitReader {
  /** What the habit must be for `seen` minutes to be seen; null: what is seen does not tell. */
  read(seen: number): HabitRead | null;
  /** What is seen with the habit as it is. */
  readonly now: Shown | null;
}

export function habitReader(model: CafeModel, habit: Habit, seed: string): HabitReader {
  const points = TRIED.flatMap((factor) => {
    const other = withHabit(model, habit, factor);
    const shown = other === null ? null : shownBy(other, habit, seed);
    return shown === null || shown.minutes <= 0
      ? []
      : [{ factor, shown, x: log(factor), y: log(shown.minutes) }];
  });
  const around = points.filter(({ factor }) => factor === SHORTER || factor === LONGER);
  const tells =
    around.length === 2 && (around[1]!.y - around[0]!.y) / (around[1]!.x - around[0]!.x) >= TELLS;
  return {
    now: points.find(({ factor }) => factor === 1)?.shown ?? null,
    read(seen) {
      if (!tells) return null;
      const wanted = log(seen);
      // The pieces of the line between the points, the outermost going on beyond them.
      for (let at = 1; at < points.length; at += 1) {
        const [one, two] = [points[at - 1]!, points[at]!];
        if (wanted > two.y && at < points.length - 1) continue;
        const slope = (two.y - one.y) / (two.x - one.x);
        if (slope < TELLS) return null;
        const x = one.x + (wanted - one.y) / slope;
        const factor = exp(Math.max(log(TRIED[0]!) - 1, Math.min(log(TRIED.at(-1)!) + 1, x)));
        const both = [one.shown, two.shown];
        return {
          factor,
          slope,
          beyond: (of) => mean(both.map(({ beyond, simulated }) => beyond / of + simulated)),
        };
      }
      return null;
    },
  };
}
