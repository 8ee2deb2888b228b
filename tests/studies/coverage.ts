/**
 * Whether the interval of the certified level covers the truth as often as it says: houses whose truth is known
 * exactly (shared/checks/exact-peaks.json: Markov chain, uniformization) are sized again and again, each time with a
 * seed of its own, through the same function as `cuptide size`.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import published from '../../shared/checks/exact-peaks.json' with { type: 'json' };
import { inThisThread } from '../../src/cafe/runner.js';
import { study } from '../../src/questions/size/study.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { idealised, instantMachine } from '../published/scenario-of.js';

interface Sizing {
  readonly truth: number;
  readonly said: number;
  readonly covered: boolean;
  /** Pieces above the fewest that truly hold the level. */
  readonly over: number;
  readonly certifiedOn: number;
  /** Whether the truth is at or above the low end. */
  readonly above: boolean;
  readonly tries: number;
  readonly held: boolean;
}

/** `null`: as many days as it takes, as the command does. */
const RUNS: readonly {
  readonly house: string;
  readonly days: number | null;
  readonly repeats: number;
}[] = [
  { house: 'steady-180', days: 200, repeats: 1000 },
  { house: 'steady-180', days: null, repeats: 1000 },
  { house: 'morning-rush', days: 200, repeats: 1000 },
];
const LEVELS = [0.9, 0.95, 0.99];

/** Stocks whose level is assured: how often one that is truly below it passes, tries that failed counted in. */
const ASSURED = ['steady-180', 'morning-rush'].map((house) => ({ house, days: 200, repeats: 500 }));
const CONFIDENCE = 0.975;

type House = (typeof published.cases)[number] & { readonly loopMeanMinutes: number };

const houses = new Map(
  published.cases
    .filter((one): one is House => 'loopMeanMinutes' in one)
    .map((one) => [one.id as string, one]),
);

function scenarioOf(house: House) {
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

/** The exact chance that nothing runs out with so many pieces; the table ends where it is 0 or 1 to 3 digits. */
function truthOf(house: House, pieces: number): number {
  const known = Object.entries(house.probabilityPeakAtMost).map(
    ([at, p]) => [Number(at), p] as const,
  );
  const first = known[0]![0];
  return known.find(([at]) => at === pieces)?.[1] ?? (pieces < first ? 0 : 1);
}

const fewest = (house: House, level: number): number =>
  Number(
    Object.entries(house.probabilityPeakAtMost).find(([, probability]) => probability >= level)![0],
  );

async function sizeOnce(
  house: House,
  level: number,
  days: number | null,
  seed: string,
  confidence: number | null = null,
): Promise<Sizing> {
  const { answer } = await study(scenarioOf(house), inThisThread(), {
    level,
    seed,
    ...(confidence === null ? {} : { confidence }),
    ...(days === null ? {} : confidence === null ? { days, certifyOn: days } : { days }),
  });
  const { pieces } = answer.stock[0]!;
  const truth = truthOf(house, pieces);
  const certified = answer.certified!;
  return {
    truth,
    said: certified.level,
    covered: certified.low <= truth && truth <= certified.high,
    over: pieces - fewest(house, level),
    certifiedOn: answer.days.certifiedOn,
    above: certified.low <= truth,
    tries: answer.assured?.tries ?? 1,
    held: answer.assured?.held ?? false,
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((a, b) => a + b, 0) / values.length;

/** Exact coverage of the interval at this many days and this truth: the binomial law summed. */
function binomialCoverage(truth: number, days: number): number {
  let [log, covered] = [days * Math.log1p(-truth), 0];
  for (let safe = 0; safe <= days; safe += 1) {
    if (safe > 0) log += Math.log((days - safe + 1) / safe) + Math.log(truth) - Math.log1p(-truth);
    if (log < -30) continue;
    const { low, high } = exactBinomialInterval(safe, days);
    if (low <= truth && truth <= high) covered += Math.exp(log);
  }
  return covered;
}

const share = (count: number, of: number): { share: number; interval: [number, number] } => {
  const { share: found, low, high } = exactBinomialInterval(count, of);
  return { share: found, interval: [low, high] };
};

type Figures = Record<string, unknown>;

/** Resumable: a run that is complete in the figures is not run again. */
export async function main(): Promise<void> {
  const file = join('reports', 'study-coverage.json');
  const figures: Figures = existsSync(file)
    ? (JSON.parse(readFileSync(file, 'utf8')) as Figures)
    : {};
  const tell = (name: string, found: unknown): void => {
    figures[name] = found;
    writeFileSync(file, `${JSON.stringify(figures, null, 1)}\n`);
    process.stdout.write(`${name}: ${JSON.stringify(found)}\n`);
  };
  await assuredLevels(figures, tell);
  for (const { house: id, days, repeats } of RUNS)
    for (const level of LEVELS) {
      const name = `${id}, level ${level}, ${days === null ? 'default days' : `${days} + ${days} days`}`;
      if (name in figures) continue;
      const house = houses.get(id)!;
      const all: Sizing[] = [];
      for (let n = 0; n < repeats; n += 1)
        all.push(await sizeOnce(house, level, days, `coverage-${n}`));
      const covered = all.filter((one) => one.covered).length;
      const below = all.filter(({ truth }) => truth < level);
      const { low, high } = exactBinomialInterval(covered, repeats);
      const usual = all[0]!.certifiedOn;
      tell(name, {
        seeds: `coverage-0 to coverage-${repeats - 1}`,
        coverage: covered / repeats,
        coverageInterval: [low, high],
        binomialCoverage: mean(
          [...new Set(all.map(({ truth }) => truth))].map((truth) =>
            binomialCoverage(truth, usual),
          ),
        ),
        meanTruth: mean(all.map(({ truth }) => truth)),
        bias: mean(all.map(({ said, truth }) => said - truth)),
        trulyBelow: below.length / repeats,
        meanBelowBy: below.length === 0 ? 0 : mean(below.map(({ truth }) => level - truth)),
        meanPiecesOver: mean(all.map(({ over }) => over)),
      });
    }
}

async function assuredLevels(
  figures: Figures,
  tell: (name: string, found: unknown) => void,
): Promise<void> {
  for (const { house: id, days, repeats } of ASSURED)
    for (const level of LEVELS) {
      const name = `${id}, level ${level}, assured with confidence ${CONFIDENCE}, chosen on ${days} days`;
      if (name in figures) continue;
      const all: Sizing[] = [];
      for (let n = 0; n < repeats; n += 1)
        all.push(await sizeOnce(houses.get(id)!, level, days, `assured-${n}`, CONFIDENCE));
      const held = all.filter((one) => one.held);
      tell(name, {
        seeds: `assured-0 to assured-${repeats - 1}`,
        held: share(held.length, repeats),
        heldButTrulyBelow: share(held.filter(({ truth }) => truth < level).length, repeats),
        lowEndAboveTruth: share(all.filter(({ above }) => !above).length, repeats),
        meanTries: mean(all.map(({ tries }) => tries)),
        meanTruth: mean(held.map(({ truth }) => truth)),
        meanPiecesOver: mean(held.map(({ over }) => over)),
        testedOn: all[0]!.certifiedOn,
      });
    }
}
