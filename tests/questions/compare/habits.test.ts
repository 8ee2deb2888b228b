import { describe, expect, it } from 'vitest';
import { candidatesOf, type Candidate } from '../../../src/questions/compare/alternatives.js';
import {
  eachHabitOff,
  edgesOf,
  habitGrid,
  shiftCount,
  timeOf,
  withHabits,
} from '../../../src/questions/compare/habits.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { idealised, instantMachine, steady } from '../../published/scenario-of.js';

/** A house of cups that washes part loads by their wait. */
function house(changes: Record<string, unknown>, washing: Record<string, unknown> = {}): Candidate {
  const tree = idealised({
    ...steady(1, 20),
    clearing: { every: '10 min', clearers: 1, tripPieces: 10, trip: '0 s' },
    washing: { machines: [instantMachine], hands: 'unlimited', partLoadWait: '8 min', ...washing },
    ...changes,
  });
  const read = readScenario(JSON.stringify(tree), 'house.json');
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const candidates = candidatesOf(read, 'house.json');
  if (!candidates.ok) throw new Error(candidates.problems[0]!.message);
  return candidates.all[0]!;
}

const MINUTE = 60_000;
const wait = ({ scenario }: Candidate): number => timeOf(scenario, ['washing', 'partLoadWait'])!;

describe('the grid of habits', () => {
  it('is half to four times the present wait, each as full as it is, and from 50, 75 and 90 %', () => {
    const grid = habitGrid(house({}));
    expect([...new Set(grid.map(({ waitMinutes }) => waitMinutes))]).toEqual([4, 8, 16, 32]);
    expect([...new Set(grid.map(({ from }) => from))]).toEqual([null, 0.5, 0.75, 0.9]);
    expect(grid).toHaveLength(16);
  });

  it('is what the scenario names, the filling as it is among it', () => {
    const tune = { partLoadWait: ['5 min', '20 min'], partLoadFrom: ['60 %'] };
    expect(habitGrid(house({ tune }))).toEqual(
      [5, 20].flatMap((waitMinutes) => [null, 0.6].map((from) => ({ waitMinutes, from }))),
    );
    expect(habitGrid(house({ tune: { partLoadFrom: ['60 %'] } }))).toHaveLength(8);
  });

  it('says where habits lie at an end of it', () => {
    const base = house({});
    expect(edgesOf(base, { waitMinutes: 32, from: 0.9 })).toEqual(['longestWait', 'fullest']);
    expect(edgesOf(base, { waitMinutes: 4, from: null })).toEqual(['shortestWait']);
    expect(edgesOf(base, { waitMinutes: 16, from: 0.75 })).toEqual([]);
    const one = house({ tune: { partLoadWait: ['9 min'], partLoadFrom: ['100 %'] } });
    expect(edgesOf(one, { waitMinutes: 9, from: 1 })).toEqual([]);
  });

  it('is empty where no part load goes by its wait', () => {
    expect(habitGrid(house({}, { partLoadWait: 'never' }))).toEqual([]);
  });

  it('is taken up by a house of any wait of its own', () => {
    const there = withHabits(
      house({}, { partLoadWait: 'about 3 min' }),
      { waitMinutes: 16, from: 0.75 },
      {},
    )!;
    expect(wait(there)).toBeCloseTo(16 * MINUTE, 6);
    expect(there.scenario.washing.partLoadFrom).toBe(0.75);
  });
});

it('every habit of a house is tried a fifth less and more, the filling up to full', () => {
  const filled = eachHabitOff(house({}, { partLoadFrom: '90 %' }), {});
  expect(filled).toHaveLength(shiftCount);
  const seen = filled.map(({ habit, times, house: { scenario } }) => [
    habit,
    times,
    {
      rounds: timeOf(scenario, ['clearing', 'every']),
      waits: timeOf(scenario, ['washing', 'partLoadWait']),
      fill: scenario.washing.partLoadFrom,
    }[habit],
  ]);
  expect(seen).toEqual([
    ['rounds', 0.8, 8 * MINUTE],
    ['rounds', 1.2, 12 * MINUTE],
    ['waits', 0.8, 6.4 * MINUTE],
    ['waits', 1.2, 9.6 * MINUTE],
    ['fill', 0.8, 0.72],
    ['fill', 1.2, 1],
  ]);
  // Without a least filling there is none to try.
  expect(eachHabitOff(house({}), {}).some(({ habit }) => habit === 'fill')).toBe(false);
});
