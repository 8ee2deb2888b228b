/**
 * Whether a lead rests on beats: rounds by the clock and waits that never vary can fall together well or badly, and
 * then a habit seems worth more or less than it is. Each house is read with its rounds, and with its part-load
 * wait, a minute shorter and longer; a lead that means something stays.
 */
import type { Beat } from './answer.js';
import type { Candidate } from './alternatives.js';
import { extraOf } from './evaluate.js';
import { QuickReader, type QuickOptions } from './quick.js';
import type { Path } from '../../scenario/path.js';
import { checkTree, type PositionOf, type ReadOptions } from '../../scenario/read-scenario.js';
import { withRawValue } from '../../scenario/raw-paths.js';
import type { Runner } from '../../cafe/runner.js';
import type { Scenario } from '../../scenario/scenario.js';

const MINUTE = 60_000;

const clocks: readonly {
  readonly what: Beat['what'];
  readonly path: Path;
  readonly of: (scenario: Scenario) => number | null;
}[] = [
  {
    what: 'rounds',
    path: ['clearing', 'every'],
    of: ({ clearing }) => (clearing === 'atOnce' ? null : clearing.every),
  },
  {
    what: 'waits',
    path: ['washing', 'partLoadWait'],
    of: ({ washing }) => (typeof washing.partLoadWait === 'number' ? washing.partLoadWait : null),
  },
];

/** What `best` costs more than the base over the horizon, minor units, on the same days: as written first, then shifted. Empty for the base. */
export async function beatsOf(
  base: Candidate,
  best: Candidate,
  runner: Runner,
  options: QuickOptions,
  reading: ReadOptions,
): Promise<Beat[]> {
  if (best.id === base.id) return [];
  const reader = new QuickReader(runner, options);
  const total = async (candidate: Candidate, scenario: Scenario): Promise<number> =>
    (await reader.read(scenario, extraOf(candidate, scenario.staffHour.minor))).costs.total;
  const difference = async (of: (candidate: Candidate) => Scenario): Promise<number> =>
    (await total(best, of(best))) - (await total(base, of(base)));
  const beats: Beat[] = [
    { what: 'asWritten', minutes: 0, difference: await difference(({ scenario }) => scenario) },
  ];
  for (const { what, path, of } of clocks) {
    // A clock of a minute or less cannot be a minute shorter.
    const least = Math.min(...[base, best].flatMap(({ scenario }) => of(scenario) ?? []));
    for (const minutes of Number.isFinite(least) ? [...(least > MINUTE ? [-1] : []), 1] : []) {
      const shifted = (candidate: Candidate): Scenario => {
        const now = of(candidate.scenario);
        return now === null
          ? candidate.scenario
          : readAgain(candidate, path, `${now + minutes * MINUTE} ms`, reading);
      };
      beats.push({ what, minutes, difference: await difference(shifted) });
    }
  }
  return beats;
}

const nowhere: PositionOf = () => ({ line: 1, column: 1 });

function readAgain(
  { raw, name }: Candidate,
  path: Path,
  value: string,
  reading: ReadOptions,
): Scenario {
  const read = checkTree(withRawValue(raw, path, value), nowhere, name, reading);
  if (!read.ok)
    throw new Error(`a clock a minute off makes no valid scenario: ${read.problems[0]!.message}`);
  return read.scenario;
}
