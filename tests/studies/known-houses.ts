/** Houses whose law of peaks is known, so that the true level of every stock is known too. */
import { readFileSync } from 'node:fs';
import published from '../../shared/checks/exact-peaks.json' with { type: 'json' };
import { runDays } from '../../src/cafe/run-days.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { compile, unitCosts } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { leastCostStock } from '../../src/sizing/least-cost-stock.js';
import { countMisses, type Peaks } from '../../src/sizing/peaks.js';
import type { SizingProvider } from '../../src/sizing/sizing-request.js';
import { firstAbove, isLoop, lawOfPeak, type Loop } from './exact-peak.js';

export interface KnownHouse {
  readonly id: string;
  /** How its law is known. */
  readonly law: string;
  readonly costs: readonly number[];
  /** Days drawn from the law, by a seed. */
  drawn(seed: string): SizingProvider;
  /** The true chance that nothing runs out. */
  truth(stock: readonly number[]): number;
  /** Cost of the cheapest stock that truly holds the level. */
  least(level: number): number;
}

/** A day's peaks from a stream of its own, so that a day is the same whoever asks. */
const provider = (ware: number, seed: string, day: (stream: Stream, into: Uint16Array) => void) => {
  const stream = new Stream(streamKey(seed, 'days of a known law'));
  // Sizing asks for days in order, each once.
  return {
    peaks: (_from: number, days: number): Peaks => {
      const data = new Uint16Array(days * ware);
      for (let at = 0; at < days; at += 1) day(stream, data.subarray(at * ware, (at + 1) * ware));
      return { days, ware, data };
    },
  };
};

export type PublishedHouse = (typeof published.cases)[number] & Loop;

export const publishedHouse = (id: string): PublishedHouse =>
  published.cases.filter((one) => isLoop(one)).find((one) => one.id === id)!;

/** One ware: the peak's law from the Markov chain. */
export function chainHouse(id: string): KnownHouse {
  const law = lawOfPeak(publishedHouse(id));
  return {
    id,
    law: 'peaks drawn from the exact law (Markov chain)',
    costs: [100],
    drawn: (seed) =>
      provider(1, seed, (stream, into) => {
        into[0] = firstAbove(law, stream.uniform());
      }),
    truth: ([pieces]) => law[pieces!] ?? 1,
    least: (level) => 100 * law.findIndex((chance) => chance >= level),
  };
}

const POPULATION = 100_000;

/**
 * All ware of a demo together: so many days are run once, and are the law. A day is then one of them by lot, each
 * as likely, so the true level of a stock is the share of them that it carries: counted, not estimated.
 */
export function populationHouse(id: string): KnownHouse {
  const read = readScenario(readFileSync(`scenarios/${id}.yaml`, 'utf8'), id, {
    piecesPerRack: piecesPerRackOf,
  });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const model = compile(read.scenario, piecesPerRackOf);
  const task = { model, seed: 'population', from: 0, days: POPULATION };
  const { peaks } = runDays({ ...task, stock: null, listed: null, byDay: false });
  const ware = model.ware.length;
  const all: Peaks = { days: POPULATION, ware, data: peaks };
  const costs = unitCosts(read.scenario);
  return {
    id,
    law: `days drawn by lot from ${POPULATION} days of the engine, which are the law`,
    costs,
    drawn: (seed) =>
      provider(ware, seed, (stream, into) => {
        const day = Math.floor(stream.uniform() * POPULATION);
        into.set(peaks.subarray(day * ware, (day + 1) * ware));
      }),
    truth: (stock) => 1 - countMisses(all, stock) / POPULATION,
    least: (level) => leastCostStock(all, costs, Math.floor(POPULATION * (1 - level) + 1e-9)).cost,
  };
}
