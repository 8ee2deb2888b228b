import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import type { CafeModel } from '../../src/cafe/model.js';
import { RunningDays, runDays } from '../../src/cafe/run-days.js';
import { mergeDays, type RushTask } from '../../src/cafe/rush.js';
import { isTooMuch } from '../../src/cafe/too-much.js';
import { Turns, runInTurns } from '../../src/cafe/turns.js';
import { compile } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { smallCafe, smallStock } from '../oracles/generators.js';

const taskOf = (model: CafeModel, days: number): RushTask => ({
  model,
  seed: 'turns',
  from: 3,
  days,
  stock: null,
  listed: null,
  byDay: true,
});

describe('days run a little at a time', () => {
  it('give the bytes of days run in one go, wherever the pauses fall', () => {
    fc.assert(
      fc.property(
        smallCafe({ lowWater: true, washUp: true }),
        smallStock(8),
        fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 }),
        (model, stock, pauses) => {
          const task = { ...taskOf(model, 4), stock: stock.slice(0, model.ware.length) };
          const whole = runDays(task);
          const run = new RunningDays(task);
          for (let turn = 0; !run.advance(pauses[turn % pauses.length]!);) turn += 1;
          expect(run.result()).toEqual(whole);
        },
      ),
      { seed: 31, numRuns: 60 },
    );
  });

  it('keep out of the way of other days of the same café that are run in between', () => {
    const model = demo();
    const [one, other] = [taskOf(model, 3), { ...taskOf(model, 2), from: 50 }];
    const expected = [runDays(one), runDays(other)];
    const [first, second] = [new RunningDays(one), new RunningDays(other)];
    for (let [a, b] = [false, false]; !a || !b;) {
      a = first.advance(97);
      b = second.advance(61);
    }
    expect([first.result(), second.result()]).toEqual(expected);
  });

  it('come in any order, in parts of any length', () => {
    const task = taskOf(demo(), 6);
    const parts = [1, 3, 2].map((days, i) => runDays({ ...task, from: 3 + [0, 1, 4][i]!, days }));
    for (const [a, b, c] of [
      [0, 1, 2],
      [0, 2, 1],
      [1, 0, 2],
      [1, 2, 0],
      [2, 0, 1],
      [2, 1, 0],
    ])
      expect(mergeDays([parts[a!]!, parts[b!]!, parts[c!]!])).toEqual(runDays(task));
  });

  it('pause within a day of many events', async () => {
    const { arrivals, ...rest } = demo();
    const busy = arrivals.map((step) => ({ ...step, partiesPerMs: step.partiesPerMs * 400 }));
    let pauses = 0;
    const pause = async (): Promise<void> => void (pauses += 1);
    await runInTurns(taskOf({ ...rest, arrivals: busy }, 1), pause);
    expect(pauses).toBeGreaterThan(0);
  });

  it('pause as often however many days the events fall on', async () => {
    const model = demo();
    const busy = model.arrivals.map((step) => ({
      ...step,
      partiesPerMs: step.partiesPerMs * 320,
    }));
    const crowded = { ...model, arrivals: busy };
    const [floor, day, demand] = [
      new Floor(crowded, 'turns'),
      new Day(),
      new Demand(crowded, 'turns'),
    ];
    let [pauses, events, days] = [0, 0, 0];
    const turns = new Turns(async () => void (pauses += 1));
    for (; days < 2; days += 1) {
      demand.draw(days, day);
      await turns.run(floor, day, days, null, { before: () => {} });
      events += floor.happened;
    }
    expect(pauses).toBeGreaterThan(1);
    // None is longer than a turn, and none is made before it is over.
    expect(pauses).toBe(Math.floor(events / 50_000));
  });

  it('end where a day has more events than anybody waits for, which is no fault of ours', () => {
    const model = demo();
    const endless = { ...model.clearing, every: { law: 'constant', ms: 1 } } as const;
    const run = (): unknown => runDays(taskOf({ ...model, clearing: endless }, 1));
    let thrown: unknown = null;
    try {
      run();
    } catch (error) {
      thrown = error;
    }
    expect(isTooMuch(thrown)).toBe(true);
    expect((thrown as Error).message).toMatch(
      /^more than 1,000,000 things happen on day 3 .*; check the guests per hour/,
    );
  });
});

function demo(): CafeModel {
  const file = 'scenarios/1-commuter-bar.yaml';
  const read = readScenario(readFileSync(file), file, { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error('the demo does not read');
  return compile(read.scenario, piecesPerRackOf);
}
