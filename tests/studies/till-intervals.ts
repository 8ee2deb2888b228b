/** What is printed of a till and of a backtest with an interval, drawn again and again with the truth known. */
import { standardGamma } from '../../src/engine/durations.js';
import type { Stream } from '../../src/engine/streams.js';
import { heldOn } from '../../src/questions/backtest/study.js';
import { meanWithInterval } from '../../src/statistics/mean-with-interval.js';
import { fitDayFactor } from '../../src/till/day-factor.js';
import { poisson } from '../till/sales.js';
import { normal, type Known } from './repeated.js';

type Levels = (cv: number, stream: Stream) => number;

/** Levels of days with mean 1: as the rush draws them, and as it does not. */
const LEVELS: Readonly<Record<string, Levels>> = {
  gamma: (cv, stream) => standardGamma(1 / cv ** 2, stream) * cv ** 2,
  lognormal: (cv, stream) => {
    const variance = Math.log(1 + cv ** 2);
    return Math.exp(Math.sqrt(variance) * normal(stream) - variance / 2);
  },
};
const CASES = [
  ['gamma', 0],
  ['gamma', 0.1],
  ['gamma', 0.2],
  ['gamma', 0.4],
  ['lognormal', 0.2],
  ['lognormal', 0.4],
] as const;

const totals = (days: number, parties: number, level: () => number, stream: Stream): number[] =>
  Array.from({ length: days }, () => poisson(stream, parties * level()));

/** The spread of whole days, and parties a day. */
export const ofTills = (): Known[] =>
  CASES.flatMap(([law, cv]) =>
    [30, 100].flatMap((parties) =>
      [8, 26, 78].flatMap((days): Known[] => {
        const of = `${cv === 0 ? 'all days alike' : `${law} levels of CV ${cv}`}, ${parties} parties a day, ${days} days`;
        const drawn = (stream: Stream): number[] =>
          totals(days, parties, () => (cv === 0 ? 1 : LEVELS[law]!(cv, stream)), stream);
        return [
          [`day factor of a till: ${of}`, cv, (stream) => fitDayFactor(drawn(stream))],
          [`parties a day of a till: ${of}`, parties, (stream) => meanWithInterval(drawn(stream))],
        ];
      }),
    ),
  );

/** Standard normal quantiles, from memory. */
const QUANTILES = [
  [0.8, 0.841_621],
  [0.95, 1.644_854],
  [0.99, 2.326_348],
] as const;
const RUNS = 20;

/**
 * The share of recorded days that were safe. Levels of days are normal about 1, each correlated with the one before;
 * a run of a day is safe where level and what is drawn within it stay below a bound, so the true share is exact.
 */
export const ofBacktests = (): Known[] =>
  QUANTILES.flatMap(([truth, bound]) =>
    [0, 0.3, 0.6, 0.8].flatMap((correlation) =>
      [12, 26, 78].flatMap((days) =>
        // What is drawn within a day, as a multiple of how much levels differ.
        [0, 0.5].map((within): Known => [
          `share of recorded days that were safe: truly ${truth}, ${days} days, correlation ${correlation} with the day before, ${within === 0 ? 'a day is safe or not' : 'runs of a day differ'}`,
          truth,
          (stream) => {
            const [safe, came]: [{ safe: number }[], number[]] = [[], []];
            let z = normal(stream);
            for (let day = 0; day < days; day += 1) {
              if (day > 0) z = correlation * z + Math.sqrt(1 - correlation ** 2) * normal(stream);
              came.push(poisson(stream, 60 * Math.max(0.05, 1 + 0.2 * z)));
              const at = bound * Math.sqrt(1 + within ** 2);
              let held = 0;
              for (let run = 0; run < (within === 0 ? 1 : RUNS); run += 1)
                held += z + within * normal(stream) <= at ? 1 : 0;
              safe.push({ safe: held / (within === 0 ? 1 : RUNS) });
            }
            return heldOn(safe, came, truth);
          },
        ]),
      ),
    ),
  );
