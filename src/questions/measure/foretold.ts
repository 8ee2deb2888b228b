/**
 * How much of an input's range one morning leaves: the half-width of the 95 % interval that as many counts or times
 * as this house gives in a morning will have, over that of the range.
 */
import type { DurationLaw } from '../../engine/durations.js';
import { square } from '../../elementary/powers.js';
import type { PartId } from '../../measuring/sheet.js';
import { ROWS, SLOT_MINUTES } from '../../measuring/sheet.js';
import { meanSize } from '../../measuring/tilted-sizes.js';
import type { CafeModel } from '../../cafe/model.js';
import { studentTQuantile } from '../../statistics/student-t-quantile.js';
import { FEWEST } from './fewest.js';
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

/** Half-width of the interval, in the input's own unit as `sizeOf` counts it, by part; absent: not measured by it. */
export type HalfWidths = Partial<Record<PartId, number>>;

/** @param path dotted @param size of the value now */
export function halfWidths(path: string, size: number, model: CafeModel): HalfWidths {
  const parties = expectedParties(model);
  const inHouse = parties * model.guests.staysIn;
  const { dwell, partySize, secondDrink, staysIn } = model.guests;
  if (path === 'guests.dwell' || path.startsWith('guests.dwell.bySize.')) {
    const shares = classShares(model);
    const only = path === 'guests.dwell' ? null : Number(path.split('.').at(-1)) - 1;
    const parts = { tally: 0, stays: 0 };
    dwell.forEach((law, at) => {
      if (only !== null && at !== only) return;
      const own = stayHalf(law, inHouse * shares[at]!, ROWS.stays * shares[at]!);
      parts.tally += own.tally;
      parts.stays += own.stays;
    });
    return parts;
  }
  if (path === 'guests.partySize') {
    const mean = meanSize(partySize);
    const sd = Math.sqrt(
      partySize.reduce((sum, share, at) => sum + share * square(at + 1 - mean), 0),
    );
    return parties < FEWEST.parties ? {} : { tally: (NORMAL * sd) / Math.sqrt(parties) };
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
  if (path === 'clearing.every') {
    const rounds = Math.min(ROWS.rounds, model.closingMs / Math.max(MINUTE, size)) - 1;
    return times('rounds', lawOf(model.clearing.every ?? constant(size), 'min').cv, rounds, size);
  }
  if (path === 'clearing.trip')
    return times('rounds', lawOf(model.clearing.trip, 's').cv, ROWS.rounds, size);
  if (path === 'clearing.tripPieces') return { rounds: 0.5 };
  if (path === 'washing.partLoadWait') {
    const law = model.washing.partLoadWait;
    return law === null ? {} : times('loads', lawOf(law, 'min').cv, ROWS.loads / 2, size);
  }
  const step = /^washing\.machines\[\d+\]\.(cycle|loading|unloading)$/.exec(path);
  if (step !== null)
    return times('loads', step[1] === 'cycle' ? MACHINE_CV : HANDS_CV, ROWS.loads, size);
  // One measured by hand, to about a hundredth.
  if (/^ware\..+\.(rim|brim)$/.test(path)) return { ware: size * 0.01 };
  return {};
}

const constant = (ms: number): DurationLaw => ({ law: 'constant', ms });

function stayHalf(
  law: DurationLaw,
  counted: number,
  timed: number,
): { tally: number; stays: number } {
  const { mean, cv } = lawOf(law, 'min');
  const slot = square(SLOT_MINUTES / mean) / 6;
  return {
    tally:
      counted < FEWEST.stays
        ? Infinity
        : reachOf(ROWS.stays) * mean * MINUTE * Math.sqrt((square(cv) + slot) / counted),
    stays:
      timed < FEWEST.times ? Infinity : (reachOf(timed) * cv * mean * MINUTE) / Math.sqrt(timed),
  };
}

const shareHalf = (part: PartId, share: number, n: number, fewest: number): HalfWidths =>
  n < fewest ? {} : { [part]: NORMAL * Math.sqrt((share * (1 - share)) / n) };

const times = (part: PartId, cv: number, n: number, size: number): HalfWidths =>
  n < FEWEST.times ? {} : { [part]: (reachOf(n) * Math.max(cv, 0.02) * size) / Math.sqrt(n) };
