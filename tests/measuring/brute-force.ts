/**
 * What a morning is worth, by brute force: a small house is sized for inputs drawn from what is known before and from
 * what is known after simulated mornings, and the spreads of its stock are put side by side.
 */
import { inThisThread } from '../../src/cafe/runner.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { normalQuantile } from '../../src/engine/normal.js';
import { drawn } from '../../src/questions/compare/draw-inputs.js';
import { QuickReader } from '../../src/questions/compare/quick.js';
import { sheetFacts } from '../../src/questions/measure/facts.js';
import { readFilled } from '../../src/questions/measure/read.js';
import { rangeWith, swingsOf, widthOf } from '../../src/questions/measure/worth.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { withRawValue } from '../../src/scenario/raw-paths.js';
import { checkTree, readScenario } from '../../src/scenario/read-scenario.js';
import { contextOf } from '../../src/tell/context-of.js';
import { idealised } from '../published/scenario-of.js';
import { morningOf } from './morning.js';

const lognormal = (mean: number, sd: number) => ({
  lognormal: { mean: `${mean} min`, sd: `${sd} min` },
});

/** One cup; stays and the share that stays in are assumed, with ranges. All else is instant. */
export const smallHouse = JSON.stringify(
  idealised({
    hours: { from: '08:00', to: '11:00' },
    arrivals: { steps: [{ for: '180 min', parties: '0.6 / min' }], dayFactor: 0 },
    guests: {
      partySize: 1,
      staysIn: { value: '60 %', basis: 'assumed', range: ['35 %', '85 %'] },
      drinksEach: { value: 1, basis: 'measured' },
      secondDrink: { value: '0 %', basis: 'measured' },
      dwell: {
        value: lognormal(30, 13.5),
        basis: 'assumed',
        range: [lognormal(15, 6.75), lognormal(45, 20.25)],
      },
    },
  }),
);

function opened(text: string) {
  const read = readScenario(text, 'small.json', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read;
}
type House = ReturnType<typeof opened>;

const spread = (values: readonly number[]): number => {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  return Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1));
};

/** Cost of the stock with inputs drawn normal about their values, their ranges taken as 95 % intervals. */
async function costs(
  house: House,
  reader: QuickReader,
  draws: number,
  seed: string,
): Promise<number[]> {
  const stream = new Stream(streamKey(seed, 'draws'));
  const ranged = house.inputs.filter(({ range }) => range !== null);
  const all: number[] = [];
  for (let draw = 0; draw < draws; draw += 1) {
    const raw = ranged.reduce<unknown>((tree, input) => {
      const z = normalQuantile(stream.uniform());
      const rank = Math.min(1, Math.max(0, 0.5 + z / 3.92));
      return withRawValue(tree, input.at, drawn(input, rank));
    }, house.raw);
    const read = checkTree(raw, () => ({ line: 1, column: 1 }), 'drawn', {
      piecesPerRack: piecesPerRackOf,
    });
    if (read.ok) all.push((await reader.read(read.scenario)).stockCost);
  }
  return all;
}

/** @returns widths after over before: as foretold, and by brute force over all mornings */
export async function worthByBruteForce({
  days,
  draws,
  mornings,
}: {
  readonly days: number;
  readonly draws: number;
  readonly mornings: number;
}): Promise<{ foretold: number; found: number }> {
  const house = opened(smallHouse);
  const options = { level: 0.95, seed: 'brute', days, piecesPerRack: piecesPerRackOf };
  const runner = inThisThread();
  const swings = await swingsOf(house, runner, options);
  const foretold = widthOf(rangeWith(swings, ['tally', 'stays'])) / widthOf(rangeWith(swings, []));
  const reader = new QuickReader(runner, options);
  const before = spread(await costs(house, reader, draws, 'before'));
  const facts = sheetFacts(
    house.scenario,
    contextOf(house.scenario, house.inputs, '', piecesPerRackOf),
    [],
  );
  let squares = 0;
  for (let morning = 0; morning < mornings; morning += 1) {
    const { csv } = morningOf(house.scenario, 'brute', morning);
    const read = await readFilled({
      files: [{ name: 'sheet.csv', bytes: new TextEncoder().encode(csv) }],
      opened: house,
      text: smallHouse,
      facts,
      today: '2026-12-31',
      runner,
      options: { ...options, days: 1 },
    });
    if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
    const after = opened(read.value.text);
    squares += spread(await costs(after, reader, draws, `after ${morning}`)) ** 2;
  }
  return { foretold, found: Math.sqrt(squares / mornings) / before };
}
