/** A house grown from the pattern of a file: guests for each seat stay, nobody gets more work, no dishwasher more than it can do. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  grown,
  grownRaw,
  growthOf,
  machinesFor,
  type HouseSize,
  type Pattern,
} from '../../../src/questions/guide/grow.js';
import { busiestHour } from '../../../src/questions/size/house-measures.js';
import { compile } from '../../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { checkTree, readScenario } from '../../../src/scenario/read-scenario.js';
import type { Scenario } from '../../../src/scenario/scenario.js';
import { meanStaysIn } from '../../../src/scenario/shares-by-time.js';
import { changed, valid } from '../../scenario/a-scenario.js';

const reading = { piecesPerRack: piecesPerRackOf };

const staffed = changed(
  'clearing: atOnce',
  'clearing: { every: about 10 min, clearers: 2 }\nracks: { owned: { open: 5 } }',
  changed(
    '    - { class: undercounter }',
    '    - { class: undercounter, count: 2 }\n    - { class: hood }\n  hands: 3\n  otherLoads: { racks: 10 / h }',
  ),
);
const byTime = changed(
  'staysIn: 40 %',
  'staysIn: [{ for: 30 min, staysIn: 30 % }, { for: 30 min, staysIn: 50 % }]',
  staffed,
);

function patternOf(text: string, machinesBusy: number | null = null): Pattern {
  const read = readScenario(text, 'a.yaml', reading);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const { scenario, raw } = read;
  return { scenario, raw, seats: scenario.seats.count!, washingShare: 0, machinesBusy };
}

function grownFrom(pattern: Pattern, house: HouseSize): Scenario {
  const read = checkTree(
    grownRaw(pattern, house),
    () => ({ line: 1, column: 1 }),
    'a.yaml',
    reading,
  );
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.scenario;
}

const inHouse = (scenario: Scenario): number =>
  busiestHour(compile(scenario, piecesPerRackOf)) * meanStaysIn(scenario);
const machineCount = ({ washing }: Scenario): number =>
  (washing.machines as readonly { count?: number }[]).reduce(
    (sum, { count = 1 }) => sum + count,
    0,
  );

const houses = fc.record({
  seats: fc.integer({ min: 1, max: 400 }),
  takeaway: fc.option(fc.integer({ min: 0, max: 95 }).map((percent) => percent / 100)),
});
const runs = { seed: 20270301, numRuns: 60 };

describe('a house of another size', () => {
  it.each([
    ['one share all day', staffed, 0],
    ['shares by the time of day', byTime, 0.25],
  ])(
    'has the guests for each seat of the file, and the takeaway share asked: %s',
    (_, text, least) => {
      const pattern = patternOf(text);
      const own = inHouse(pattern.scenario) / pattern.seats;
      fc.assert(
        fc.property(houses, ({ seats, takeaway }) => {
          const share = takeaway === null ? null : Math.max(takeaway, least);
          const scenario = grownFrom(pattern, { seats, takeaway: share });
          expect(scenario.seats.count).toBe(seats);
          expect(inHouse(scenario) / seats).toBeCloseTo(own, 6);
          expect(meanStaysIn(scenario)).toBeCloseTo(
            share === null ? meanStaysIn(pattern.scenario) : 1 - share,
            8,
          );
        }),
        runs,
      );
    },
  );

  it('has the fewest people, racks and machines with no more work each', () => {
    const pattern = patternOf(staffed);
    const { scenario: file } = pattern;
    fc.assert(
      fc.property(houses, (house) => {
        const scenario = grownFrom(pattern, house);
        const { inHouse: sitting, making } = growthOf(pattern, house);
        const fewest = (count: number, before: number, times: number): void => {
          expect((before * times) / count).toBeLessThanOrEqual(1 + 1e-6);
          if (count > 1) expect((before * times) / (count - 1)).toBeGreaterThan(1 - 1e-6);
        };
        const clearers = ({ clearing }: Scenario): number =>
          (clearing as { clearers: number }).clearers;
        fewest(scenario.counter.makers!, file.counter.makers!, making);
        fewest(clearers(scenario), clearers(file), sitting);
        fewest(scenario.washing.hands as number, 3, sitting);
        fewest(scenario.racks!.owned!['open']!, 5, sitting);
        expect(machineCount(scenario)).toBeGreaterThanOrEqual(1);
      }),
      runs,
    );
  });

  it('has another dishwasher only where those of the file would be busy for more than half of the time', () => {
    // One machine, busy 29 % of the time: 36 % with a quarter more seats, 58 % with twice as many.
    const at = (busy: number | null, seats: number): number =>
      machineCount(grownFrom(patternOf(valid, busy), { seats, takeaway: null }));
    expect([10, 20, 25, 34, 35, 40, 68, 69].map((seats) => at(0.29, seats))).toEqual([
      1, 1, 1, 1, 2, 2, 2, 3,
    ]);
    // As busy as that already: no more work each than in the file.
    expect([20, 25, 40, 41].map((seats) => at(0.6, seats))).toEqual([1, 2, 2, 3]);
    // Three that have little to do stay three in the house of the file, and are fewer in a smaller one.
    const idle = patternOf(staffed, 0.1);
    expect(
      [20, 100].map((seats) => machineCount(grownFrom(idle, { seats, takeaway: null }))),
    ).toEqual([3, 3]);
    expect(machineCount(grownFrom(idle, { seats: 10, takeaway: null }))).toBeLessThan(3);
  });

  it('gives more work to those who make drinks where more is taken away, and less second drinks', () => {
    const pattern = patternOf(staffed);
    const at = (takeaway: number): number => growthOf(pattern, { seats: 20, takeaway }).making;
    expect(at(0.6)).toBeCloseTo(1, 9);
    // Worked by hand: per guest d drinks and, of the 40 % who stay, s second ones. Half away: 0.4 / 0.5 of the guests.
    const { drinksEach: d, secondDrink: s } = pattern.scenario.guests;
    expect(at(0.5)).toBeCloseTo((0.8 * (d + 0.5 * s)) / (d + 0.4 * s), 9);
    expect(at(0.9)).toBeGreaterThan(at(0.7));
  });

  it('leaves what is unlimited unlimited, and clearing at once', () => {
    const pattern = patternOf(
      changed(
        'counter: { makers: 2, making: 45 s }',
        'counter: { makers: unlimited, making: 45 s }',
      ),
    );
    const scenario = grownFrom(pattern, { seats: 90, takeaway: 0.2 });
    expect(scenario.counter.makers).toBeNull();
    expect(scenario.clearing).toBe('atOnce');
  });

  it('takes food ware along, and leaves out what the house owns', () => {
    const pattern = patternOf(`${staffed}have: { ware: { cup: 12 } }\n`);
    const scenario = grownFrom(pattern, { seats: 40, takeaway: null });
    const rate = ({ washing }: Scenario): number => washing.otherLoads!.racks as number;
    expect(rate(scenario) / rate(pattern.scenario)).toBeCloseTo(2, 9);
    expect(scenario.have).toBeUndefined();
  });
});

describe('how many machines', () => {
  it('are the fewest of the list, and then of its first, that wash so many times as much', () => {
    const capacities = fc.array(fc.double({ min: 0.1, max: 9, noNaN: true }), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(capacities, fc.double({ min: 0.01, max: 20, noNaN: true }), (own, times) => {
        const count = machinesFor(own, times);
        const first = (n: number): number =>
          Array.from({ length: n }, (_, at) => own[at] ?? own[0]!).reduce((a, b) => a + b, 0);
        const wanted = times * first(own.length);
        expect(first(count)).toBeGreaterThanOrEqual(wanted * (1 - 1e-6));
        if (count > 1) expect(first(count - 1)).toBeLessThan(wanted);
      }),
      runs,
    );
  });

  it('are those of the file where nothing grows, and none is lost to rounding', () => {
    expect(machinesFor([2, 1, 1], 1)).toBe(3);
    expect(machinesFor([1, 1], 0.4)).toBe(1);
    expect(machinesFor([1], 30 / 26)).toBe(2);
    expect(grown(26, 30 / 26)).toBe(30);
    expect(grown(2, 0.1)).toBe(1);
  });
});
