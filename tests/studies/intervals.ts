/**
 * Intervals that are printed beside the certified level (`study:coverage` has that one): what a ware needs alone, how
 * safe a given stock is, how safe a stock is when inputs are drawn too, what moves the order, the spread of whole days
 * in a till, and the share of recorded days that were safe. Pure arithmetic on draws whose truth is known, so each is
 * repeated thousands of times.
 */
import { writeFileSync } from 'node:fs';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { heldOn } from '../../src/questions/size/allow-for-inputs.js';
import { marginalStock } from '../../src/sizing/marginal-stock.js';
import type { Peaks } from '../../src/sizing/peaks.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { rankCorrelation } from '../../src/statistics/rank-correlation.js';
import { publishedHouse } from './known-houses.js';
import { firstAbove, lawOfPeak } from './exact-peak.js';
import { normal, type Known } from './repeated.js';
import { ofBacktests, ofTills } from './till-intervals.js';

const FILE = 'reports/study-intervals.json';
const REPEATS = 4000;
const LEVELS = [0.9, 0.95, 0.99];

const peaksFrom = (days: number, one: () => number): Peaks => ({
  days,
  ware: 1,
  data: Uint16Array.from({ length: days }, one),
});

function alone(): Known[] {
  return ['steady-180', 'morning-rush'].flatMap((id) => {
    const law = lawOfPeak(publishedHouse(id));
    return [200, 1000].flatMap((days) =>
      LEVELS.map((level): Known => [
        `needed for a ware alone: ${id}, level ${level}, ${days} days`,
        law.findIndex((chance) => chance >= level),
        (stream) =>
          marginalStock(
            peaksFrom(days, () => firstAbove(law, stream.uniform())),
            level,
          )[0]!,
      ]),
    );
  });
}

const given = (): Known[] =>
  [0.8, 0.95, 0.99].map((truth) => [
    `how safe a given stock is: truly ${truth}, 2000 days`,
    truth,
    (stream) => {
      let safe = 0;
      for (let day = 0; day < 2000; day += 1) if (stream.uniform() < truth) safe += 1;
      return exactBinomialInterval(safe, 2000);
    },
  ]);

/** True levels of the houses that inputs may be drawn to, each as likely. */
const HOUSES: readonly (readonly [string, readonly number[]])[] = [
  ['all alike', [0.95]],
  ['some worse', [1, 1, 0.99, 0.97, 0.9, 0.84]],
  ['one in ten hopeless', [1, 1, 1, 0.999, 0.99, 0.98, 0.97, 0.96, 0.93, 0.2]],
];

const underDraws = (): Known[] =>
  HOUSES.map(([name, levels]) => [
    `how safe a stock is when inputs are drawn too: houses ${name}, 200 draws of 5 days`,
    levels.reduce((sum, level) => sum + level, 0) / levels.length,
    (stream) => {
      const data = Array.from({ length: 200 }, () => {
        const level = levels[Math.floor(stream.uniform() * levels.length)]!;
        return Array.from({ length: 5 }, () => (stream.uniform() < level ? 0 : 1));
      }).flat();
      let at = 0;
      return heldOn([peaksFrom(1000, () => data[at++]!)], [0], 5);
    },
  ]);

/** Two normal numbers: Spearman's correlation is 6/π · asin(ρ/2) (Pearson 1907, from memory). */
const ranks = (): Known[] =>
  [0, 0.3, 0.7].flatMap((rho) =>
    [50, 200].map((pairs): Known => [
      `what moves the order, rank correlation: normal pairs at ${rho}, ${pairs} draws`,
      (6 / Math.PI) * Math.asin(rho / 2),
      (stream) => {
        const x = Array.from({ length: pairs }, () => normal(stream));
        const y = x.map((one) => rho * one + Math.sqrt(1 - rho * rho) * normal(stream));
        return rankCorrelation(x, y);
      },
    ]),
  );

export function main(): void {
  const figures: Record<string, unknown> = {
    made: {
      command: 'npm run study:intervals',
      repeats: REPEATS,
      seeds: '"intervals" and the name',
    },
  };
  const all = [alone(), given(), underDraws(), ranks(), ofTills(), ofBacktests()].flat();
  for (const [name, truth, repeat] of all) {
    const stream = new Stream(streamKey('intervals', name));
    let [covered, below, above] = [0, 0, 0];
    for (let n = 0; n < REPEATS; n += 1) {
      const { low, high } = repeat(stream);
      if ((low ?? -Infinity) > truth) below += 1;
      else if ((high ?? Infinity) < truth) above += 1;
      else covered += 1;
    }
    const { share, low, high } = exactBinomialInterval(covered, REPEATS);
    figures[name] = {
      truth,
      coverage: { share, interval: [low, high] },
      truthBelow: below / REPEATS,
      truthAbove: above / REPEATS,
    };
    process.stdout.write(`${name}: ${share} (${low.toFixed(3)} to ${high.toFixed(3)})\n`);
  }
  writeFileSync(FILE, `${JSON.stringify(figures, null, 1)}\n`);
}
