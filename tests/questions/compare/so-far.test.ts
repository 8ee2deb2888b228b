/** What a comparison says of its houses while it still runs. */
import { expect, it } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { candidatesOf } from '../../../src/questions/compare/alternatives.js';
import { House } from '../../../src/questions/compare/evaluate.js';
import type { RowSoFar } from '../../../src/questions/compare/so-far.js';
import { compareStudy } from '../../../src/questions/compare/study.js';
import { study } from '../../../src/questions/size/study.js';
import { daysOfSizing } from '../../../src/sizing/size-stock.js';
import { idealised, steady } from '../../published/scenario-of.js';
import { accepted } from '../../scenario/a-scenario.js';

const text = JSON.stringify(
  idealised({
    ...steady(1, 20),
    seats: { count: 12 },
    alternatives: {
      slower: { change: { 'counter.making': '4 min' } },
      longer: { change: { 'guests.dwell': '12 min' } },
      busier: { scale: { arrivals: '150 %' } },
    },
  }),
);

it('gives a row more as each house is worked out; the last rows are those of the answer', async () => {
  const candidates = candidatesOf(accepted(text), 'a.yaml');
  if (!candidates.ok) throw new Error('the alternatives are refused');
  const options = { days: 20, noLevel: true };
  const said: (readonly RowSoFar[])[] = [];
  let run = 0;
  const daysAt: number[] = [];
  const comparison = await compareStudy(
    candidates.all,
    inThisThread((days) => (run += days)),
    {
      ...options,
      soFar: async (rows) => {
        said.push(rows);
        daysAt.push(run);
      },
    },
  );
  expect(said.slice(0, 5).map(({ length }) => length)).toEqual([1, 2, 3, 4, 4]);
  // Each as soon as its own days are run, not once all are.
  expect(daysAt[1]! - daysAt[0]!).toBe(20);
  expect(daysAt[3]! - daysAt[2]!).toBe(20);
  expect(said.at(-1)).toEqual(
    comparison.alternatives.map(({ name, pieces, stockCost, total }, at) => ({
      name,
      planFor: at === 3,
      pieces,
      stockCost,
      total,
    })),
  );
  expect(new Set(said.at(-1)!.map(({ pieces }) => pieces)).size).toBeGreaterThan(1);
  // Looking on changes nothing; nor does it that the house's own size is known, which then is not worked out again.
  const { answer } = await study(candidates.all[0]!.scenario, inThisThread(), { days: 20 });
  let runAgain = 0;
  const runner = inThisThread((days) => (runAgain += days));
  expect(await compareStudy(candidates.all, runner, { ...options, certified: answer })).toEqual(
    comparison,
  );
  expect(run - runAgain).toBe(daysOfSizing(20));
});

it('leaves no trace of an early look at a house in the last one', async () => {
  const guests = { partySize: 1, staysIn: '100 %', drinksEach: 1, secondDrink: 0, dwell: '8 min' };
  const tree = idealised({ ...steady(1, 20), guests });
  const candidates = candidatesOf(accepted(JSON.stringify(tree)), 'a.yaml');
  if (!candidates.ok) throw new Error('the house is refused');
  const options = { level: 0.95, seed: 'early', partDays: 1 };
  const house = new House(candidates.all[0]!, inThisThread(), options);
  const early = await house.look(40, [0], false);
  const last = await house.look(40, [8]);
  expect(last.stock[0]).toBeLessThan(early.stock[0]!);
  expect(await house.look(40, [0])).toBe(last);
});
