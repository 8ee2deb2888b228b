/**
 * A walk through a day tells the day that the rush runs: the same peaks, shortages and tightest moment,
 * and at every moment the same pieces seen from two sides, the ledger's counts and the things they lie in.
 */
import fc from 'fast-check';
import { serialize } from 'node:v8';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ListedDay } from '../../../src/cafe/listed-day.js';
import type { CafeModel } from '../../../src/cafe/model.js';
import {
  BENCH,
  CARRIED,
  DIRTY_TABLE,
  IN_USE,
  RACKED,
  SHELF,
  WASHING,
} from '../../../src/cafe/places.js';
import { runDays } from '../../../src/cafe/run-days.js';
import { momentAt, piecesAt } from '../../../src/page/walk/moment.js';
import { compile } from '../../../src/scenario/compile.js';
import { walkDay, type DayWalk } from '../../../src/questions/walk/day.js';
import { MACHINE_STAGES } from '../../../src/questions/walk/parts.js';
import { tightestMoment } from '../../../src/questions/size/evidence.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { smallRush, smallStock, wholeCafe } from '../../oracles/generators.js';

const scenarios = readdirSync('scenarios')
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => {
    const read = readScenario(readFileSync(`scenarios/${name}`, 'utf8'), name, {
      piecesPerRack: piecesPerRackOf,
    });
    if (!read.ok) throw new Error(name);
    return { name, model: compile(read.scenario, piecesPerRackOf), seed: read.scenario.seed };
  });

interface Task {
  readonly model: CafeModel;
  readonly seed: string;
  readonly day: number;
  readonly stock: readonly number[] | null;
  readonly listed: readonly ListedDay[] | null;
}

/** The day's peaks with unlimited ware: a stock with which it just goes well. */
const peaksOf = ({ model, seed, day, listed }: Task): number[] => [
  ...runDays({ model, seed, from: day, days: 1, stock: null, listed, byDay: false }).peaks,
];

const sum = (values: Iterable<number>): number => {
  let all = 0;
  for (const value of values) all += value;
  return all;
};

/** Every piece is somewhere; what stands on tables, trips, racks and machines is what the ledger counts there. Returns what is wrong. */
function flaws(walk: DayWalk): string[] {
  const found: string[] = [];
  const wares = walk.wares.map((_, ware) => ware);
  // Long days are looked at in steps: the moments depend on one another, so that what is lost stays lost.
  const step = Math.ceil(walk.times.length / 1000);
  for (let index = 0; index < walk.times.length; index += step) {
    if (index > 0 && walk.times[index]! <= walk.times[index - 1]!)
      found.push(`moment ${index} is not after the one before`);
    const { tables, trips, openRacks, waitingRacks, machines } = momentAt(walk, index);
    const seen = (ware: number, dirty: boolean): number =>
      sum(
        tables
          .filter((table) => table.dirty === dirty)
          .map(({ party, pieces }) => pieces.filter((piece) => party.ware[piece] === ware).length),
      );
    for (const ware of wares) {
      const at = (place: number): number => piecesAt(walk, index, ware, place);
      const held = (racks: readonly { readonly ware: readonly number[] }[]): number =>
        sum(racks.map((rack) => rack.ware.filter((one) => one === ware).length));
      const say = (what: string, told: number, counted: number): void => {
        if (told !== counted)
          found.push(
            `moment ${index}, ware ${ware}: ${told} ${what}, but the ledger has ${counted}`,
          );
      };
      say('in all', sum(walk.places.map((_, place) => at(place))), walk.stock[ware]!);
      if (walk.places.some((_, place) => at(place) < 0))
        found.push(`moment ${index}, ware ${ware}: fewer than none somewhere`);
      say('on dirty tables', seen(ware, true), at(DIRTY_TABLE));
      say(
        'carried',
        sum(trips.map(({ pieces }) => pieces.filter((one) => one === ware).length)),
        at(CARRIED),
      );
      say('racked', held([...openRacks, ...waitingRacks]), at(RACKED));
      say('in machines', held(machines.flatMap(({ racks }) => racks)), at(WASHING));
      // The rest of what is in use is being made.
      const making = at(IN_USE) - seen(ware, false);
      if (making < 0) found.push(`moment ${index}, ware ${ware}: more before guests than in use`);
      if (making > 0 && walk.makersBusy[index] === 0)
        found.push(
          `moment ${index}, ware ${ware}: ${making} in use, but neither before guests nor being made`,
        );
      if (at(BENCH) > 0 && openRacks.some(({ rack }) => rack.family === walk.familyOf[ware])) {
        const open = openRacks.find(({ rack }) => rack.family === walk.familyOf[ware])!;
        if (
          sum(open.ware.map((one) => 1 / walk.perRack[one]!)) + 1 / walk.perRack[ware]! <=
          1 - 1e-9
        )
          found.push(`moment ${index}, ware ${ware}: loose beside an open rack with room`);
      }
    }
    for (const { spell, racks, foodRacks } of machines) {
      const working = spell !== null && MACHINE_STAGES[spell.stage] !== 'stopped';
      if (working !== racks.length + foodRacks > 0)
        found.push(`moment ${index}: a machine ${working ? 'works without' : 'stands with'} racks`);
    }
    if (
      walk.seats !== null &&
      sum(tables.filter(({ dirty }) => !dirty).map(({ party }) => party.size)) > walk.seats
    )
      found.push(`moment ${index}: more guests than seats`);
  }
  const end = walk.times.length - 1;
  for (const ware of wares)
    if (piecesAt(walk, 0, ware, SHELF) > walk.stock[ware]!)
      found.push('opens with more than there is');
  // Guests whose drink nobody can ever serve stay.
  if (walk.drinksWaiting[end] === 0 && momentAt(walk, end).tables.some(({ dirty }) => !dirty))
    found.push('guests sit for ever');
  return found.slice(0, 5);
}

/** The walk of a task agrees with the rush about it. */
function agrees(task: Task): DayWalk {
  const walk = walkDay(task);
  const run = runDays({
    model: task.model,
    seed: task.seed,
    from: task.day,
    days: 1,
    stock: task.stock,
    listed: task.listed,
    byDay: true,
  });
  expect(flaws(walk)).toEqual([]);
  expect(walk.peaks).toEqual([...run.peaks]);
  expect(
    walk.wares.map((_, ware) => walk.shortages.filter((one) => one.ware === ware).length),
  ).toEqual(run.byDay[0]!.short);
  expect(walk.firstShortIndex === -1 ? -1 : walk.times[walk.firstShortIndex]).toBe(
    run.byDay[0]!.firstShortMs,
  );
  return walk;
}

describe.each(scenarios)('a walk through $name', ({ model, seed }) => {
  it('tells the same day as the rush, with unlimited ware and with a stock that runs out', () => {
    for (const day of [0, 7]) {
      const task = { model, seed, day, stock: null, listed: null };
      agrees(task);
      const peaks = peaksOf(task);
      expect(agrees({ ...task, stock: peaks }).shortages).toEqual([]);
      const fewer = agrees({ ...task, stock: peaks.map((pieces) => Math.floor(pieces * 0.8)) });
      expect(fewer.shortages.length).toBeGreaterThan(0);
    }
  });

  it('reaches the peaks at its tightest moments, where `tightestMoment` finds them', async () => {
    const task = { model, seed, day: 3, listed: null };
    const stock = peaksOf({ ...task, stock: null });
    const walk = walkDay({ ...task, stock });
    const pause = async (): Promise<void> => {};
    for (const [ware, id] of walk.wares.entries()) {
      const told = await tightestMoment({ ...task, stock, days: 0, pause }, 3, ware);
      const at = walk.tightest[ware]!;
      expect([told.ware, told.minute]).toEqual([id, walk.times[at]! / 60_000]);
      // Of the other ware some may move in the same instant.
      expect(told.pieces[ware]!.counts).toEqual(
        walk.places.slice(1).map((_, place) => piecesAt(walk, at, ware, place + 1)),
      );
      expect(walk.stock[ware]! - piecesAt(walk, at, ware, SHELF)).toBe(walk.peaks[ware]);
    }
  });

  it('is the same walk for the same input, survives being sent, and stays small', () => {
    const task = {
      model,
      seed,
      day: 1,
      stock: peaksOf({ model, seed, day: 1, stock: null, listed: null }),
      listed: null,
    };
    const walk = walkDay(task);
    expect(walkDay(task)).toEqual(walk);
    expect(structuredClone(walk)).toEqual(walk);
    expect(serialize(walk).byteLength).toBeLessThan(walk.parties.length > 300 ? 4e6 : 1e6);
  });
});

describe('a walk through any small café', () => {
  it('keeps every piece in sight, on drawn and on listed days', () => {
    fc.assert(
      fc.property(
        wholeCafe({ lowWater: true }),
        fc.option(smallStock(4, 8), { nil: null }),
        fc.nat(1000),
        (model, stock, day) => {
          const task = {
            model,
            seed: 'walk',
            day,
            stock: stock?.slice(0, model.ware.length) ?? null,
            listed: null,
          };
          const walk = walkDay(task);
          const run = runDays({ ...task, from: day, days: 1, byDay: true });
          expect(flaws(walk)).toEqual([]);
          expect(walk.peaks).toEqual([...run.peaks]);
          expect(walk.shortages.length).toBe(sum(run.byDay[0]!.short));
        },
      ),
      { seed: 20, numRuns: 300 },
    );
  });
});

describe('a walk through a listed day', () => {
  it('tells the same day as the rush, at a stock that may run out and with unlimited ware', () => {
    let short = 0;
    fc.assert(
      fc.property(
        smallRush({ lowWater: true }),
        fc.boolean(),
        ({ model, day, stock }, unlimited) => {
          const walk = agrees({
            model,
            seed: 'walk',
            day: 0,
            listed: [day],
            stock: unlimited ? null : stock,
          });
          if (walk.shortages.length > 0) short += 1;
        },
      ),
      { seed: 20, numRuns: 300 },
    );
    expect(short).toBeGreaterThan(50);
  });

  it('of the scenario runs, party by party', () => {
    const { model, seed } = scenarios[0]!;
    const drink = model.menu[0]!.id;
    const listed = [
      {
        parties: Array.from({ length: 12 }, (_, n) => ({
          minute: 5 * n,
          size: 2,
          staysIn: true,
          dwellMinutes: 20,
          drinks: [
            { drink, makeMinutes: 1 },
            { drink, makeMinutes: 1 },
          ],
          seconds: [],
        })),
      },
    ];
    const walk = agrees({ model, seed, day: 0, listed, stock: null });
    expect(walk.parties.map(({ party, size }) => [party, size])).toEqual(
      Array.from({ length: 12 }, (_, n) => [n, 2]),
    );
    for (const { from, left } of walk.parties)
      expect(walk.times[left]! - walk.times[from]!).toBe(21 * 60_000);
  });

  it.each([-1, 0.5, 1])('refuses day %s of one listed day', (day) => {
    const { model, seed } = scenarios[0]!;
    expect(() => walkDay({ model, seed, day, stock: null, listed: [{ parties: [] }] })).toThrow(
      RangeError,
    );
  });
});
