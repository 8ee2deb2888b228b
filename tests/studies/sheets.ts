/**
 * Mornings' sheets of houses whose truth is known, simulated and read back: how often the interval of each input holds
 * the truth (1,000 mornings, and 1,000 pairs of them pooled), how often equal mornings are called different, how far the stock's range really shrinks beside what was foretold (200 mornings of the
 * demo, and 60 pairs of them), and what is foretold beside brute force on a small house.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inThisThread } from '../../src/cafe/runner.js';
import { meanMs } from '../../src/engine/durations.js';
import { meanSize } from '../../src/measuring/tilted-sizes.js';
import { sheetFacts } from '../../src/questions/measure/facts.js';
import { habitReaders, measuredInputs } from '../../src/questions/measure/inputs.js';
import { editScenario } from '../../src/scenario/edit-scenario.js';
import { sheetsOf } from '../../src/questions/measure/given-sheets.js';
import { rangeWith, swingsOf, widthOf } from '../../src/questions/measure/worth.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import type { Scenario } from '../../src/scenario/scenario.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { contextOf } from '../../src/tell/context-of.js';
import { worthByBruteForce } from '../measuring/brute-force.js';
import { morningOf } from '../measuring/morning.js';

/** Mornings, and pairs of them, that intervals are counted on. */
const MORNINGS = 1000;
const READ = 200;
const PAIRS_READ = 60;
/** Of each reading: with fewer, chance moves the stock as much as an input that has been measured. */
const DAYS = 120;
const FILE = 'reports/study-sheets.json';
const HOUSES = ['1-commuter-bar', '2-brunch-room'] as const;
type Figures = Record<string, unknown>;

function opened(house: string) {
  const text = readFileSync(`scenarios/${house}.yaml`, 'utf8');
  const read = readScenario(text, house, { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return { text, read };
}

/** The truth of what a sheet measures, in the unit of the reading. */
function truths({ guests, clearing, washing }: Scenario): ReadonlyMap<string, number> {
  const minutes = (law: Parameters<typeof meanMs>[0]): number => meanMs(law) / 60_000;
  const truth = new Map<string, number>([
    ['guests.partySize', meanSize(guests.partySize)],
    ['guests.drinksEach', guests.drinksEach],
    ['guests.secondDrink', guests.secondDrink],
  ]);
  if (typeof guests.staysIn === 'number') truth.set('guests.staysIn', guests.staysIn);
  guests.dwell.forEach((law, at) => truth.set(`guests.dwell.bySize.${at + 1}`, minutes(law)));
  if (guests.dwell.length === 1) truth.set('guests.dwell', minutes(guests.dwell[0]!));
  if (clearing !== 'atOnce') {
    truth.set('clearing.every', minutes(clearing.every));
    truth.set('clearing.trip', minutes(clearing.trip) * 60);
  }
  const wait = washing.partLoadWait;
  if (wait !== null) truth.set('washing.partLoadWait', minutes(wait));
  return truth;
}

const share = (count: number, of: number) => {
  const { share: found, low, high } = exactBinomialInterval(count, of);
  return { share: found, interval: [low, high], of };
};
const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  return (
    (sorted[Math.floor((sorted.length - 1) / 2)]! + sorted[Math.ceil((sorted.length - 1) / 2)]!) / 2
  );
};

export async function main(folder: string): Promise<void> {
  const figures: Figures = existsSync(FILE)
    ? (JSON.parse(readFileSync(FILE, 'utf8')) as Figures)
    : {};
  const keep = (name: string, found: unknown): void => {
    figures[name] = found;
    writeFileSync(FILE, `${JSON.stringify(figures, null, 1)}\n`);
    process.stdout.write(`${name}: ${JSON.stringify(found)}\n`);
  };
  for (const house of HOUSES) {
    const name = `${house}: intervals of ${MORNINGS} mornings`;
    if (!(name in figures)) keep(name, coverage(house));
    const pairs = `${house}: intervals of ${MORNINGS} pairs of mornings`;
    if (!(pairs in figures)) keep(pairs, coverage(house, 2));
  }
  if (!('brute force' in figures))
    keep('brute force', await worthByBruteForce({ days: 100, draws: 100, mornings: 10 }));
  for (const house of HOUSES.slice(0, 1)) {
    const name = `${house}: range of the stock after ${READ} mornings`;
    if (!(name in figures)) keep(name, await narrowing(house, folder, READ));
    const pairs = `${house}: range of the stock after ${PAIRS_READ} pairs of mornings`;
    if (!(pairs in figures)) keep(pairs, await narrowing(house, folder, PAIRS_READ, 2));
  }
}

function coverage(house: string, together = 1): unknown {
  const { read } = opened(house);
  const { scenario, inputs } = read;
  // As if nothing had been measured, so that the sheet speaks of all it can.
  const unmeasured = inputs.map((input) => ({ ...input, basis: 'assumed' as const }));
  const truth = truths(scenario);
  const facts = sheetFacts(scenario, contextOf(scenario, inputs, '', piecesPerRackOf), []);
  const readers = habitReaders(scenario, 'readers');
  const seen = new Map<string, { inside: number; n: number; error: number; kept: number }>();
  let [named, compared] = [0, 0];
  for (let number = 0; number < MORNINGS; number += 1) {
    const sheets = Array.from({ length: together }, (_, morning) =>
      sheetOf(scenario, facts, 'sheets', number + morning * MORNINGS, morning),
    );
    const { measured, kept, differences } = measuredInputs(
      sheets,
      scenario,
      unmeasured,
      null,
      readers,
    );
    compared += differences?.compared ?? 0;
    if ((differences?.differ.length ?? 0) > 0) named += 1;
    const of = (path: string) => {
      const one = seen.get(path) ?? { inside: 0, n: 0, error: 0, kept: 0 };
      seen.set(path, one);
      return one;
    };
    for (const { path, low, high, mean } of measured) {
      const true_ = truth.get(path);
      if (true_ === undefined || low === null || high === null) continue;
      const one = of(path);
      one.n += 1;
      one.inside += low <= true_ && true_ <= high ? 1 : 0;
      one.error += mean / true_ - 1;
    }
    for (const { path } of kept) if (truth.has(path)) of(path).kept += 1;
  }
  const inputsFound = Object.fromEntries(
    [...seen].map(([path, { inside, n, error, kept }]) => [
      path,
      {
        covered: n === 0 ? null : share(inside, n),
        meanError: n === 0 ? null : error / n,
        saidTooLittle: kept,
      },
    ]),
  );
  return together === 1
    ? inputsFound
    : {
        inputs: inputsFound,
        // All mornings are of one house: each pair that is called different is so by chance.
        calledDifferent: share(named, MORNINGS),
        comparedInAPair: compared / MORNINGS,
      };
}

/** A morning's sheet, simulated and read back; the second is of another day. */
function sheetOf(
  scenario: Scenario,
  facts: Parameters<typeof sheetsOf>[1],
  seed: string,
  number: number,
  morning: number,
) {
  const bytes = new TextEncoder().encode(morningOf(scenario, seed, number).csv);
  const sheet = sheetsOf({ name: 'sheet.csv', bytes }, facts, '2026-12-31');
  if (!sheet.ok) throw new Error(sheet.problems.map(({ message }) => message).join('\n'));
  return { ...sheet.value[0]!, date: `2026-01-${15 + morning}` };
}

/** The range really left by each morning or pair, read at the ends of what its sheets say. Resumable one by one. */
async function narrowing(
  house: string,
  folder: string,
  readings: number,
  together: 1 | 2 = 1,
): Promise<unknown> {
  const { text, read } = opened(house);
  const { scenario, inputs } = read;
  const options = {
    level: scenario.level,
    seed: scenario.seed,
    days: DAYS,
    piecesPerRack: piecesPerRackOf,
  };
  const runner = inThisThread();
  // All parts that are on the printed sheet, the stays with the tally.
  const readers = habitReaders(scenario, 'readers');
  const found = await swingsOf(read, runner, options, readers);
  const foretold =
    widthOf(rangeWith(found, ['tally', 'stays', 'rounds', 'loads'], together)) /
    widthOf(rangeWith(found, []));
  const facts = sheetFacts(scenario, contextOf(scenario, inputs, '', piecesPerRackOf), []);
  const log = join(folder, `sheets-${house}${together === 1 ? '' : '-pairs'}.jsonl`);
  const done = existsSync(log)
    ? readFileSync(log, 'utf8')
        .trim()
        .split('\n')
        .map((line) => Number(line))
    : [];
  for (let number = done.length; number < readings; number += 1) {
    const sheets = Array.from({ length: together }, (_, morning) =>
      sheetOf(scenario, facts, 'narrowing', number + morning * READ, morning),
    );
    const { measured } = measuredInputs(sheets, scenario, inputs, null, readers);
    const after = readScenario(
      editScenario(
        text,
        measured.map(({ at, value, range, source }) => ({
          kind: 'set' as const,
          path: at,
          value,
          basis: 'measured' as const,
          range,
          source,
        })),
      ),
      house,
      { piecesPerRack: piecesPerRackOf },
    );
    if (!after.ok) throw new Error(after.problems.map(({ message }) => message).join('\n'));
    const factor =
      widthOf(rangeWith(await swingsOf(after, runner, options, readers), [])) /
      widthOf(rangeWith(found, []));
    done.push(factor);
    appendFileSync(log, `${factor}\n`);
  }
  return {
    days: DAYS,
    foretold,
    medianFound: median(done),
    foundOverForetold: median(done) / foretold,
    quartiles: [
      median(done.filter((one) => one <= median(done))),
      median(done.filter((one) => one >= median(done))),
    ],
  };
}
