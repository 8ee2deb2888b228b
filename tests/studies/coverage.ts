/**
 * Whether the interval of the certified level covers the truth as often as it says: houses whose law of peaks is known
 * are sized again and again, each time with a seed of its own.
 *
 * Sizing sees nothing of a house but its peaks, so in most settings these are drawn from the law itself, and go through
 * the very choice and test that the command uses. Settings of "the whole engine" go through the same function as
 * `cuptide size`, guests and all, and confirm that the engine gives that law; so does tests/published/exact-peaks.test.ts.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inThisThread } from '../../src/cafe/runner.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { study } from '../../src/questions/size/study.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { assuredStock } from '../../src/sizing/assured-stock.js';
import { sizeStock, type CertifiedLevel } from '../../src/sizing/size-stock.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { meanWithInterval } from '../../src/statistics/mean-with-interval.js';
import { idealised, instantMachine } from '../published/scenario-of.js';
import { chainHouse, populationHouse, publishedHouse, type KnownHouse } from './known-houses.js';

const FILE = 'reports/study-coverage.json';
const LEVELS = [0.9, 0.95, 0.99];
const CONFIDENCE = 0.975;
/** Days the command takes at most, unless said otherwise. */
const CAP = 8000;
const DEMO = '1-commuter-bar';

/** One sizing of a house, and what is true of it. */
interface Sizing {
  readonly truth: number;
  readonly said: number;
  readonly low: number;
  readonly high: number;
  readonly certifiedOn: number;
  readonly cost: number;
  readonly tries?: number;
  readonly held?: boolean;
}

interface Setting {
  readonly house: string;
  /** `null`: as many days as the command takes. */
  readonly days: number | null;
  readonly assured: boolean;
  readonly engine: boolean;
  readonly repeats: number;
}

const setting = (house: string, days: number | null, more: Partial<Setting> = {}): Setting => ({
  house,
  days,
  assured: false,
  engine: false,
  repeats: 1000,
  ...more,
});
const CHAINS = ['steady-180', 'morning-rush'];
const HOUSES = [...CHAINS, DEMO];
/** What is quick first: a run that is ended has kept all that was whole. */
const SETTINGS: readonly Setting[] = [
  ...HOUSES.map((house) => setting(house, 200)),
  ...CHAINS.map((house) => setting(house, null)),
  ...CHAINS.map((house) => setting(house, 200, { assured: true })),
  setting('steady-180', 200, { engine: true, repeats: 400 }),
  setting('morning-rush', 200, { engine: true, repeats: 200 }),
  setting('steady-180', 200, { assured: true, engine: true, repeats: 100 }),
  setting(DEMO, 200, { assured: true }),
  setting(DEMO, null, { repeats: 300 }),
  setting('steady-180', null, { engine: true, repeats: 50 }),
];

function nameOf({ house, days, assured, engine }: Setting, level: number): string {
  const on =
    days === null ? 'default days' : assured ? `chosen on ${days} days` : `${days} + ${days} days`;
  const sure = assured ? `, assured with confidence ${CONFIDENCE}` : '';
  return `${house}, level ${level}${sure}, ${on}${engine ? ', the whole engine' : ''}`;
}

/** Through sizing alone, with days from the law. */
async function sizedByLaw(
  house: KnownHouse,
  one: Setting,
  level: number,
  seed: string,
): Promise<Sizing> {
  const { days, assured } = one;
  const bootstrap = new Stream(streamKey(seed, 'bootstrap'));
  const request = {
    level,
    unitCostMinor: house.costs,
    provider: house.drawn(seed),
    cap: CAP,
    uniform: () => bootstrap.uniform(),
    ...(days === null ? {} : assured ? { days } : { days, certifyOn: days }),
  };
  const found = assured
    ? await assuredStock(request, CONFIDENCE)
    : { ...(await sizeStock(request)), assured: null };
  return {
    ...certificate(found.certified!, house.truth(found.stock)),
    certifiedOn: found.certifiedOn,
    cost: found.cost,
    ...(found.assured === null ? {} : { tries: found.assured.tries, held: found.assured.held }),
  };
}

const certificate = ({ level, low, high }: CertifiedLevel, truth: number) => ({
  truth,
  said: level,
  low,
  high,
});

function scenarioOf(id: string) {
  const house = publishedHouse(id);
  const minutes = house.arrivals.reduce((sum, step) => sum + step.minutes, 0);
  const tree = idealised({
    hours: { for: `${minutes} min` },
    arrivals: {
      steps: house.arrivals.map((step) => ({
        for: `${step.minutes} min`,
        parties: `${step.partiesPerMinute} / min`,
      })),
      dayFactor: 0,
    },
    guests: {
      partySize: 1,
      staysIn: '100 %',
      drinksEach: 1,
      secondDrink: 0,
      dwell: { exponential: `${house.loopMeanMinutes} min` },
    },
    washing: { machines: { unlimited: instantMachine }, hands: 'unlimited', partLoadWait: 'never' },
  });
  const read = readScenario(JSON.stringify(tree), 'study.json');
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.scenario;
}

/** Guests and all, as the command does. */
async function sizedByEngine(
  house: KnownHouse,
  one: Setting,
  level: number,
  seed: string,
): Promise<Sizing> {
  const { days, assured } = one;
  const { answer } = await study(scenarioOf(house.id), inThisThread(), {
    level,
    seed,
    ...(assured ? { confidence: CONFIDENCE } : {}),
    ...(days === null ? {} : assured ? { days } : { days, certifyOn: days }),
  });
  return {
    ...certificate(answer.certified!, house.truth(answer.stock.map(({ pieces }) => pieces))),
    certifiedOn: answer.days.certifiedOn,
    cost: answer.stock.reduce((sum, { pieces }, ware) => sum + pieces * house.costs[ware]!, 0),
    ...(answer.assured === undefined
      ? {}
      : { tries: answer.assured.tries, held: answer.assured.held }),
  };
}

const known = new Map<string, number>();

/** Exact coverage of the interval at this many days and this truth: the binomial law summed. */
function binomialCoverage(truth: number, days: number): number {
  if (truth >= 1) return 1;
  const key = `${truth} ${days}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  let [log, covered] = [days * Math.log1p(-truth), 0];
  for (let safe = 0; safe <= days; safe += 1) {
    if (safe > 0) log += Math.log((days - safe + 1) / safe) + Math.log(truth) - Math.log1p(-truth);
    if (log < -30) continue;
    const { low, high } = intervalOf(safe, days);
    if (low <= truth && truth <= high) covered += Math.exp(log);
  }
  known.set(key, covered);
  return covered;
}

const intervals = new Map<number, { low: number; high: number }>();
function intervalOf(safe: number, days: number) {
  const key = days * 100_000 + safe;
  const found = intervals.get(key) ?? exactBinomialInterval(safe, days);
  intervals.set(key, found);
  return found;
}

/** A share with its exact interval (95 %), and a mean with its own: the Monte Carlo error of the study. */
const share = (all: readonly Sizing[], which: (one: Sizing) => boolean) => {
  const found = exactBinomialInterval(all.filter(which).length, all.length);
  return { share: found.share, interval: [found.low, found.high] };
};
const meanOf = (all: readonly Sizing[], value: (one: Sizing) => number) => {
  const { mean, low, high } = meanWithInterval(all.map(value));
  return { mean, interval: [low, high] };
};

function figuresOf(
  all: readonly Sizing[],
  one: Setting,
  level: number,
  house: KnownHouse,
): unknown {
  const least = house.least(level);
  const below = all.filter(({ truth }) => truth < level);
  const common = {
    seeds: `coverage-0 to coverage-${all.length - 1}`,
    truth: one.engine ? 'the engine, held against the exact law (Markov chain)' : house.law,
    trueLevel: meanOf(all, ({ truth }) => truth),
    overBuy: meanOf(all, ({ cost }) => cost / least - 1),
    meanCertifiedOn: meanOf(all, ({ certifiedOn }) => certifiedOn).mean,
  };
  if (one.assured)
    return {
      ...common,
      held: share(all, ({ held }) => held === true),
      heldButTrulyBelow: share(all, ({ held, truth }) => held === true && truth < level),
      lowEndAboveTruth: share(all, ({ low, truth }) => low > truth),
      meanTries: meanOf(all, ({ tries }) => tries!).mean,
    };
  return {
    ...common,
    coverage: share(all, ({ low, high, truth }) => low <= truth && truth <= high),
    binomialCoverage: meanOf(all, ({ truth, certifiedOn }) => binomialCoverage(truth, certifiedOn))
      .mean,
    bias: meanOf(all, ({ said, truth }) => said - truth),
    trulyBelow: share(all, ({ truth }) => truth < level),
    meanBelowBy: below.length === 0 ? 0 : meanOf(below, ({ truth }) => level - truth).mean,
  };
}

/** Fewer sizings than this say too little. */
const LEAST = 50;

/**
 * Resumable: sizings that are done are not done again. `npm run study:coverage so-far` gives the figures of what was
 * sized so far, and sizes nothing.
 */
export async function main(folder: string, [word]: readonly string[]): Promise<void> {
  const soFar = word === 'so-far';
  const houses = new Map<string, KnownHouse>();
  const houseOf = (id: string): KnownHouse => {
    const house = houses.get(id) ?? (id === DEMO ? populationHouse(id) : chainHouse(id));
    houses.set(id, house);
    return house;
  };
  for (const one of SETTINGS)
    for (const level of LEVELS) {
      const name = nameOf(one, level);
      const figures = (existsSync(FILE) ? JSON.parse(readFileSync(FILE, 'utf8')) : {}) as Record<
        string,
        unknown
      >;
      if (name in figures && !soFar) continue;
      const log = join(folder, `coverage-${name.replace(/\W+/g, '-')}.jsonl`);
      const all: Sizing[] = existsSync(log)
        ? readFileSync(log, 'utf8')
            .trim()
            .split('\n')
            .map((line) => JSON.parse(line) as Sizing)
        : [];
      if (soFar && all.length < LEAST) continue;
      const house = houseOf(one.house);
      const sizeOnce = one.engine ? sizedByEngine : sizedByLaw;
      while (!soFar && all.length < one.repeats) {
        const sizing = await sizeOnce(house, one, level, `coverage-${all.length}`);
        all.push(sizing);
        appendFileSync(log, `${JSON.stringify(sizing)}\n`);
      }
      figures[name] = figuresOf(all, one, level, house);
      writeFileSync(FILE, `${JSON.stringify(figures, null, 1)}\n`);
      process.stdout.write(`${name}: ${JSON.stringify(figures[name])}\n`);
    }
}
