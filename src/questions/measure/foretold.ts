/**
 * How much of an input's range one morning leaves: the half-width of the 95 % interval that as many counts or times
 * as this house gives in a morning will have, over that of the range.
 */
import type { DurationLaw } from '../../engine/durations.js';
import { exp } from '../../elementary/exp.js';
import { square } from '../../elementary/powers.js';
import type { PartId } from '../../measuring/sheet.js';
import { ROWS, SLOT_MINUTES } from '../../measuring/sheet.js';
import { meanSize } from '../../measuring/tilted-sizes.js';
import type { CafeModel } from '../../cafe/model.js';
import { studentTQuantile } from '../../statistics/student-t-quantile.js';
import { exactBinomialInterval } from '../../statistics/exact-binomial-interval.js';
import { FEWEST } from './fewest.js';
import type { HabitReaders } from './inputs.js';
import type { Habit } from './seen.js';
import { lawOf } from './written.js';

const NORMAL = 1.96;
const reachOf = (n: number): number => studentTQuantile(0.975, Math.max(1, n - 1));
const MINUTE = 60_000;
/** Spread over mean of a machine's cycle and of loading by hand, before anything was timed. Assumed. */
const [MACHINE_CV, HANDS_CV] = [0.03, 0.3];

/** Parties that a morning has, by the model. */
export const expectedParties = ({ arrivals }: CafeModel): number =>
  arrivals.reduce(
    (sum, { untilMs, partiesPerMs }, at) =>
      sum + partiesPerMs * (untilMs - (at === 0 ? 0 : arrivals[at - 1]!.untilMs)),
    0,
  );

/** Share of parties that each law of stays is for; the last is for all larger ones. */
export const classShares = ({ guests }: CafeModel): number[] => {
  const classes = guests.dwell.length;
  const shares = Array.from({ length: classes }, () => 0);
  guests.partySize.forEach((share, size) => {
    const at = Math.min(size, classes - 1);
    shares[at] = shares[at]! + share;
  });
  return shares;
};

/** What one morning will say of an input. */
export interface Foretold {
  /** Half-width of its interval, in the input's own unit as `sizeOf` counts it. */
  readonly half: number;
  /** Chance that too little is counted, so that the input stays as it was. */
  readonly kept: number;
}

/** By part; absent: not measured by it. */
export type HalfWidths = Partial<Record<PartId, Foretold>>;

/** @param path dotted @param size of the value now @param readers of habits that are read through the house @param mornings that are pooled */
export function halfWidths(
  path: string,
  size: number,
  model: CafeModel,
  readers: HabitReaders,
  mornings = 1,
): HalfWidths {
  const parties = mornings * expectedParties(model);
  const inHouse = parties * model.guests.staysIn;
  const { dwell, partySize, secondDrink, staysIn } = model.guests;
  if (path === 'guests.dwell' || path.startsWith('guests.dwell.bySize.')) {
    const shares = classShares(model);
    const timed = mornings * ROWS.stays;
    const only = path === 'guests.dwell' ? null : Number(path.split('.').at(-1)) - 1;
    const of = dwell.flatMap((law, at) =>
      only !== null && at !== only
        ? []
        : [stayHalf(law, inHouse * shares[at]!, timed * shares[at]!, timed)],
    );
    return {
      tally: together(of.map(({ tally }) => tally)),
      stays: together(of.map(({ stays }) => stays)),
    };
  }
  if (path === 'guests.partySize') {
    const mean = meanSize(partySize);
    const sd = Math.sqrt(
      partySize.reduce((sum, share, at) => sum + share * square(at + 1 - mean), 0),
    );
    return {
      tally: {
        half: (NORMAL * sd) / Math.sqrt(parties),
        kept: chanceBelow(FEWEST.parties, parties),
      },
    };
  }
  if (path === 'guests.staysIn' || path.startsWith('guests.staysIn['))
    return shareHalf(
      'tally',
      path === 'guests.staysIn' ? staysIn : size,
      parties * (path === 'guests.staysIn' ? 1 : 1 / 3),
      FEWEST.share,
    );
  if (path === 'guests.drinksEach') {
    const part = model.guests.drinksEach % 1;
    return shareHalf('tally', Math.max(part, 0.05), inHouse * meanSize(partySize), FEWEST.guests);
  }
  if (path === 'guests.secondDrink')
    return shareHalf('tally', secondDrink, inHouse * meanSize(partySize), FEWEST.guests);
  if (path === 'clearing.every') return habitHalf('rounds', path, size, readers, mornings);
  if (path === 'clearing.trip')
    return times('rounds', lawOf(model.clearing.trip, 's').cv, mornings * ROWS.rounds, size);
  if (path === 'clearing.tripPieces') return { rounds: { half: 0.5, kept: 0 } };
  if (path === 'washing.partLoadWait')
    return model.washing.partLoadWait === null
      ? {}
      : habitHalf('loads', path, size, readers, mornings);
  const step = /^washing\.machines\[\d+\]\.(cycle|loading|unloading)$/.exec(path);
  if (step !== null)
    return times('loads', step[1] === 'cycle' ? MACHINE_CV : HANDS_CV, mornings * ROWS.loads, size);
  // One measured by hand, to about a hundredth.
  if (/^ware\..+\.(rim|brim)$/.test(path)) return { ware: { half: size * 0.01, kept: 0 } };
  return {};
}

/** Chance that a Poisson count of this mean is below `fewest`. */
function chanceBelow(fewest: number, mean: number): number {
  let [term, sum] = [exp(-mean), 0];
  for (let count = 0; count < fewest; count += 1) {
    sum += term;
    term *= mean / (count + 1);
  }
  return Math.min(1, sum);
}

/** Classes that are one input: kept if too little is known of any. */
const together = (classes: readonly Foretold[]): Foretold => ({
  half: classes.reduce((sum, { half }) => sum + half, 0),
  kept: 1 - classes.reduce((all, { kept }) => all * (1 - kept), 1),
});

function stayHalf(
  law: DurationLaw,
  counted: number,
  timed: number,
  timedInAll: number,
): { tally: Foretold; stays: Foretold } {
  const { mean, cv } = lawOf(law, 'min');
  const slot = square(SLOT_MINUTES / mean) / 6;
  return {
    tally: {
      half: reachOf(timedInAll) * mean * MINUTE * Math.sqrt((square(cv) + slot) / counted),
      kept: chanceBelow(FEWEST.stays, counted),
    },
    stays:
      timed < FEWEST.times
        ? { half: Infinity, kept: 1 }
        : { half: (reachOf(timed) * cv * mean * MINUTE) / Math.sqrt(timed), kept: 0 },
  };
}

/** The exact interval, as the reading of the sheet takes it. */
function shareHalf(part: PartId, share: number, n: number, fewest: number): HalfWidths {
  const trials = Math.max(1, Math.round(n));
  const { low, high } = exactBinomialInterval(Math.round(share * trials), trials);
  return { [part]: { half: (high - low) / 2, kept: chanceBelow(fewest, n) } };
}

const times = (part: PartId, cv: number, n: number, size: number): HalfWidths =>
  n < FEWEST.times
    ? {}
    : { [part]: { half: (reachOf(n) * Math.max(cv, 0.02) * size) / Math.sqrt(n), kept: 0 } };

/** A habit's interval is wider than that of what is seen, by as much as what is seen moves less than the habit. */
function habitHalf(
  part: PartId,
  habit: Habit,
  size: number,
  readers: HabitReaders,
  mornings: number,
): HalfWidths {
  const { now, read } = readers(habit);
  const at = now === null ? null : read(now.minutes);
  if (now === null || at === null) return {};
  const times = mornings * now.times;
  const seen = Math.sqrt(
    square(reachOf(times) * now.cv) / times + square(NORMAL) * at.beyond(mornings),
  );
  return {
    [part]: {
      half: (size * (exp(seen / at.slope) - exp(-seen / at.slope))) / 2,
      kept: chanceBelow(FEWEST.times, times),
    },
  };
}
