/**
 * What ware the demo needs as its two habits change: minutes between clearing rounds, and minutes that a part rack
 * waits. Once with exact times, once with times that vary as people's do. Exact times fall together and make the
 * surface jump; varying ones should leave it smooth. Two seeds a point show how large chance differences are.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inThisThread } from '../../src/cafe/runner.js';
import { study } from '../../src/questions/size/study.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario, checkTree } from '../../src/scenario/read-scenario.js';
import { withRawValue } from '../../src/scenario/raw-paths.js';
import { framed, type ChartSpec } from '../../src/tell/charts/style.js';
import { renderSvg, standaloneSvg } from '../../src/tell/render-svg.js';

const HOUSE = 'scenarios/1-commuter-bar.yaml';
const DAYS = 2000;
const SEEDS = ['habits-1', 'habits-2'];
const ROUNDS = Array.from({ length: 12 }, (_, at) => at + 4);
const WAITS = Array.from({ length: 15 }, (_, at) => at + 1);

interface Point {
  readonly round: number;
  readonly wait: number;
  /** Cost of the ware, by seed. */
  readonly costs: readonly number[];
}

type Habit = 'varying' | 'exact';
interface Reading {
  readonly seed: string;
  readonly habit: Habit;
  readonly round: number;
  readonly wait: number;
  readonly cost: number;
}

const keyOf = ({ seed, habit, round, wait }: Omit<Reading, 'cost'>): string =>
  [seed, habit, round, wait].join('/');

/** Every reading of the study; seed by seed, so that a run that was stopped has whole surfaces. */
const wanted = SEEDS.flatMap((seed) =>
  (['varying', 'exact'] as const).flatMap((habit) =>
    ROUNDS.flatMap((round) => WAITS.map((wait) => ({ seed, habit, round, wait }))),
  ),
);

async function read(raw: unknown, at: Omit<Reading, 'cost'>): Promise<Reading> {
  const time = (minutes: number): string =>
    at.habit === 'exact' ? `${minutes} min` : `about ${minutes} min`;
  const changed = withRawValue(
    withRawValue(raw, ['clearing', 'every'], time(at.round)),
    ['washing', 'partLoadWait'],
    time(at.wait),
  );
  const reading = { piecesPerRack: piecesPerRackOf };
  const house = checkTree(changed, () => ({ line: 1, column: 1 }), HOUSE, reading);
  if (!house.ok) throw new Error(house.problems[0]!.message);
  const options = { seed: at.seed, days: DAYS, certifyOn: 1, ...reading };
  return { ...at, cost: (await study(house.scenario, inThisThread(), options)).answer.cost };
}

/** The points of one surface, from the readings of all seeds. */
const surface = (readings: ReadonlyMap<string, Reading>, habit: Habit): Point[] =>
  ROUNDS.flatMap((round) =>
    WAITS.map((wait) => ({
      round,
      wait,
      costs: SEEDS.map((seed) => readings.get(keyOf({ seed, habit, round, wait }))!.cost),
    })),
  );

const mean = (values: readonly number[]): number =>
  values.reduce((a, b) => a + b, 0) / values.length;

/** Relative changes from each point to the next longer round or wait; more of either should never need less. */
function stepsOf(points: readonly Point[]) {
  const at = new Map(points.map((point) => [`${point.round}/${point.wait}`, point]));
  const steps = points.flatMap((from) =>
    [at.get(`${from.round + 1}/${from.wait}`), at.get(`${from.round}/${from.wait + 1}`)].flatMap(
      (to) =>
        to === undefined
          ? []
          : [{ from, to, bySeed: from.costs.map((cost, seed) => to.costs[seed]! / cost - 1) }],
    ),
  );
  const changes = steps.map((step) => ({ ...step, change: mean(step.bySeed) }));
  // Two seeds: the variance of one reading is half the mean square of their difference.
  const error = Math.sqrt(
    mean(changes.map(({ bySeed: [a, b] }) => (a! - b!) * (a! - b!))) / 2 / SEEDS.length,
  );
  const largest = changes.toSorted((a, b) => Math.abs(b.change) - Math.abs(a.change))[0]!;
  const reversal = changes.toSorted((a, b) => a.change - b.change)[0]!;
  const told = ({ from, to, change }: (typeof changes)[number]) => ({
    from: { round: from.round, wait: from.wait },
    to: { round: to.round, wait: to.wait },
    change,
  });
  return {
    standardErrorOfAStep: error,
    largestStep: told(largest),
    largestReversal: told(reversal),
    stepsAbove4Percent: changes.filter(({ change }) => Math.abs(change) > 0.04).length,
    steps: changes.length,
  };
}

function picture(
  all: readonly { readonly habit: string; readonly points: readonly Point[] }[],
): ChartSpec {
  return {
    ...framed({
      title: 'Exact times make the ware needed jump; times that vary leave it smooth',
      description: 'Cost of the ware by minutes between rounds and minutes that a part rack waits.',
      locale: 'en-IE',
    }),
    data: {
      values: all.flatMap(({ habit, points }) =>
        points.map(({ round, wait, costs }) => ({ habit, round, wait, cost: mean(costs) })),
      ),
    },
    facet: { column: { field: 'habit', type: 'nominal', sort: null, title: null } },
    spec: {
      width: 300,
      height: 240,
      mark: 'rect',
      encoding: {
        x: { field: 'wait', type: 'ordinal', title: 'A part rack waits, minutes' },
        y: {
          field: 'round',
          type: 'ordinal',
          title: 'Minutes between rounds',
          sort: 'descending',
          // Above the names of the two pictures.
          axis: { titleY: -28 },
        },
        color: {
          field: 'cost',
          type: 'quantitative',
          title: 'Ware, €',
          scale: { scheme: 'viridis' },
        },
      },
    },
  };
}

/**
 * Reads every point that the log does not hold yet, then sums up.
 * @param log file of readings, one a line; beside the bundle unless it is named
 */
export async function main(
  folder: string,
  [log = join(folder, 'habits.jsonl')]: readonly string[],
): Promise<void> {
  const file = readScenario(readFileSync(HOUSE, 'utf8'), HOUSE, { piecesPerRack: piecesPerRackOf });
  if (!file.ok) throw new Error(file.problems[0]!.message);
  const lines = existsSync(log) ? readFileSync(log, 'utf8').split('\n').filter(Boolean) : [];
  const done = new Map(
    lines.map((line) => JSON.parse(line) as Reading).map((one) => [keyOf(one), one]),
  );
  for (const at of wanted) {
    if (done.has(keyOf(at))) continue;
    const reading = await read(file.raw, at);
    done.set(keyOf(at), reading);
    appendFileSync(log, `${JSON.stringify(reading)}\n`);
  }
  const [exact, varying] = [surface(done, 'exact'), surface(done, 'varying')];
  const figures = {
    house: HOUSE,
    days: DAYS,
    seeds: SEEDS,
    exact: stepsOf(exact),
    varying: stepsOf(varying),
    surfaces: { exact, varying },
  };
  writeFileSync(join('reports', 'study-habits.json'), `${JSON.stringify(figures)}\n`);
  const spec = picture([
    { habit: 'exact times', points: exact },
    { habit: 'times that vary', points: varying },
  ]);
  writeFileSync(join('reports', 'study-habits.svg'), standaloneSvg(await renderSvg(spec)));
  process.stdout.write(
    `${JSON.stringify({ exact: figures.exact, varying: figures.varying }, null, 1)}\n`,
  );
}
