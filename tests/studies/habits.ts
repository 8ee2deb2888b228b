/**
 * What ware the demo needs as its two habits change: minutes between clearing rounds, and minutes that a part rack
 * waits. Once with exact times, once with times that vary as people's do. Exact times fall together and make the
 * surface jump; varying ones should leave it smooth. Two seeds a point show how large chance differences are.
 */
import { readFileSync, writeFileSync } from 'node:fs';
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

async function surface(raw: unknown, time: (minutes: number) => string): Promise<Point[]> {
  const points: Point[] = [];
  for (const round of ROUNDS)
    for (const wait of WAITS) {
      const changed = withRawValue(
        withRawValue(raw, ['clearing', 'every'], time(round)),
        ['washing', 'partLoadWait'],
        time(wait),
      );
      const read = checkTree(changed, () => ({ line: 1, column: 1 }), HOUSE, {
        piecesPerRack: piecesPerRackOf,
      });
      if (!read.ok) throw new Error(read.problems[0]!.message);
      const costs: number[] = [];
      for (const seed of SEEDS) {
        const options = { seed, days: DAYS, certifyOn: 1, piecesPerRack: piecesPerRackOf };
        costs.push((await study(read.scenario, inThisThread(), options)).answer.cost);
      }
      points.push({ round, wait, costs });
    }
  return points;
}

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
        y: { field: 'round', type: 'ordinal', title: 'Minutes between rounds', sort: 'descending' },
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

export async function main(): Promise<void> {
  const read = readScenario(readFileSync(HOUSE, 'utf8'), HOUSE, { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const exact = await surface(read.raw, (minutes) => `${minutes} min`);
  const varying = await surface(read.raw, (minutes) => `about ${minutes} min`);
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
