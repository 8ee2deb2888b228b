import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../src/cafe/runner.js';
import { study } from '../../src/questions/size/study.js';
import { calendarOf } from '../../src/scenario/calendar.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { idealised, steady } from '../published/scenario-of.js';

const tree = (changes: Record<string, unknown>): Record<string, unknown> =>
  idealised({
    ...steady(1, 60),
    guests: {
      partySize: 1,
      staysIn: '100 %',
      drinksEach: 1,
      secondDrink: 0,
      dwell: { exponential: '10 min' },
    },
    ...changes,
  });
const read = (changes: Record<string, unknown>) =>
  readScenario(JSON.stringify(tree(changes), null, 1), 'cafe.json');
const problemsOf = (changes: Record<string, unknown>) => {
  const found = read(changes);
  return found.ok ? [] : found.problems;
};
const scenarioOf = (changes: Record<string, unknown>) => {
  const found = read(changes);
  if (!found.ok) throw new Error(found.problems.map(({ message }) => message).join('\n'));
  return found.scenario;
};

describe('the calendar', () => {
  it.each([
    [{}, 312, 6],
    [{ calendar: { daysAYear: 260 } }, 260, 5],
    [{ calendar: { daysAWeek: 5, weeksAYear: 50 } }, 250, 250 / 52],
    [{ costs: { daysAYear: 104 } }, 104, 2],
    [{ supply: { openDaysAWeek: 7 } }, 364, 7],
  ])('reads %j', (changes, daysAYear, daysAWeek) =>
    expect(calendarOf(scenarioOf(changes))).toEqual({ daysAYear, daysAWeek }),
  );

  it('refuses a file that says two things, at both places', () => {
    const found = problemsOf({ calendar: { daysAYear: 250 }, supply: { openDaysAWeek: 7 } });
    expect(found.map(({ path }) => path).toSorted()).toEqual([
      'calendar.daysAYear',
      'supply.openDaysAWeek',
    ]);
    for (const { message } of found) expect(message).toMatch(/250.*364|364.*250/s);
  });

  it('takes two figures that say the same', () =>
    expect(problemsOf({ costs: { daysAYear: 260 }, supply: { openDaysAWeek: 5 } })).toEqual([]));

  it.each([
    [{ calendar: { daysAWeek: 8 } }, 'calendar.daysAWeek'],
    [{ calendar: { daysAYear: 400 } }, 'calendar.daysAYear'],
    [{ calendar: { weeksAYear: 50 } }, 'calendar.weeksAYear'],
    [{ calendar: {} }, 'calendar'],
  ])('refuses %j', (changes, path) =>
    expect(problemsOf(changes).map((one) => one.path)).toEqual([path]),
  );
});

describe('what a house has', () => {
  it('is named by ware, class and kind', () =>
    expect(
      problemsOf({
        have: { ware: { mug: 3 }, machines: { undercountre: 1 }, racks: { opne: 2 } },
      }).map(({ path, message }) => [path, /did you mean|cup/.test(message)]),
    ).toEqual([
      ['have.ware.mug', true],
      ['have.machines.undercountre', true],
      ['have.racks.opne', true],
    ]));

  it('is kept, and the rest is what to add', async () => {
    const size = async (changes: Record<string, unknown>) =>
      (await study(scenarioOf(changes), inThisThread(), { days: 300 })).answer;
    const none = await size({});
    const some = await size({ have: { ware: { cup: 5 } } });
    const plenty = await size({ have: { ware: { cup: 90 } } });
    const needed = none.stock[0]!.pieces;
    expect(none.stock[0]).toMatchObject({ have: 0, add: needed });
    expect(some.stock[0]).toMatchObject({ pieces: needed, have: 5, add: needed - 5 });
    expect(some.spend).toBeCloseTo(needed - 5, 9);
    expect(plenty.stock[0]).toMatchObject({ pieces: 90, have: 90, add: 0 });
    expect(plenty.spend).toBe(0);
  });
});

describe('a given stock', () => {
  it('is judged on days that no stock was chosen or certified on', async () => {
    const asked: number[] = [];
    const inner = inThisThread();
    const listening = {
      apart: inner.apart,
      run: (task: Parameters<typeof inner.run>[0]) => {
        asked.push(task.from);
        return inner.run(task);
      },
    };
    const scenario = scenarioOf({});
    await study(scenario, listening, { stock: { cup: 20 }, days: 100 });
    expect(Math.min(...asked)).toBeGreaterThan(2_000_000);
  });
});
