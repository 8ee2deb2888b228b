import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CafeModel } from '../../src/cafe/model.js';
import { runDays } from '../../src/cafe/run-days.js';
import { mergeDays, type DaysRun, type RushTask } from '../../src/cafe/rush.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import type { Peaks } from '../../src/sizing/peaks.js';
import { sizeStock } from '../../src/sizing/size-stock.js';
import { compile } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';

const DAYS = 30;

/** Read once: the shapes of the ware take longer than the days. */
const models = new Map<string, CafeModel>();

function modelOf(file: string): CafeModel {
  const known = models.get(file);
  if (known !== undefined) return known;
  const read = readScenario(readFileSync(`scenarios/${file}`), file, {
    piecesPerRack: piecesPerRackOf,
  });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const model = compile(read.scenario, piecesPerRackOf);
  models.set(file, model);
  return model;
}

function taskOf(file: string, random: boolean): RushTask {
  const model = modelOf(file);
  // Drawn machine times too, so that their streams are split as well.
  const cycle = { law: 'gamma', meanMs: 150_000, sdMs: 60_000 } as const;
  const machines = model.washing.machines?.map((machine) => ({ ...machine, cycle })) ?? null;
  return {
    model: random ? { ...model, washing: { ...model.washing, machines } } : model,
    seed: 'merge',
    from: 0,
    days: DAYS,
    stock: null,
    listed: null,
    byDay: true,
  };
}

const bytes = (run: DaysRun): string =>
  JSON.stringify({
    ...run,
    peaks: [...run.peaks],
    rackPeaks: [...run.rackPeaks],
    guestsAtDoor: [...run.guestsAtDoor],
    seatPermille: [...run.seatPermille],
    uses: [...run.uses],
    short: [...run.short],
    pieceMs: [...run.pieceMs],
    fetched: [...run.fetched],
    away: [...run.away],
    paper: [...run.paper],
  });

describe('days are chunks of work that anyone can take', () => {
  it.each(
    readdirSync('scenarios')
      .filter((file) => file.endsWith('.yaml'))
      .flatMap(
        (file) =>
          [
            [file, false],
            [file, true],
          ] as const,
      ),
  )(
    '%s (drawn machine times: %s): any split, merged in any order, gives the bytes of one run',
    (file, random) => {
      const task = taskOf(file, random);
      const whole = bytes(runDays(task));
      fc.assert(
        fc.property(
          fc.uniqueArray(fc.integer({ min: 1, max: DAYS - 1 }), { maxLength: 6 }),
          fc.boolean(),
          (cuts, backwards) => {
            const edges = [0, ...cuts.sort((a, b) => a - b), DAYS];
            const parts = edges
              .slice(1)
              .map((to, index) =>
                runDays({ ...task, from: edges[index]!, days: to - edges[index]! }),
              );
            expect(bytes(mergeDays(backwards ? parts.reverse() : parts)) === whole).toBe(true);
          },
        ),
        { seed: 20, numRuns: 10 },
      );
    },
  );

  it.each(['1-commuter-bar.yaml', '4-bakery-corner.yaml'])(
    '%s: the stock chosen and certified is the same, bit for bit, however its days were split',
    async (file) => {
      const task = { ...taskOf(file, true), byDay: false };
      const days = 40;
      const unitCostMinor = task.model.ware.map((_, index) => 150 + 35 * index);
      const sizedFrom = (cuts: readonly number[], backwards: boolean) => {
        const draw = new Stream(streamKey('merge', 'bootstrap'));
        const peaks = (from: number, count: number): Peaks => {
          const edges = [0, ...cuts.filter((cut) => cut < count), count];
          const parts = edges
            .slice(1)
            .map((to, index) =>
              runDays({ ...task, from: from + edges[index]!, days: to - edges[index]! }),
            );
          const run = mergeDays(backwards ? parts.reverse() : parts);
          return { days: run.days, ware: task.model.ware.length, data: run.peaks };
        };
        return sizeStock({
          level: 0.8,
          unitCostMinor,
          provider: { peaks },
          days,
          uniform: () => draw.uniform(),
        });
      };
      const whole = JSON.stringify(await sizedFrom([], false));
      await fc.assert(
        fc.asyncProperty(
          fc.uniqueArray(fc.integer({ min: 1, max: 999 }), { maxLength: 5 }),
          fc.boolean(),
          async (cuts, backwards) => {
            expect(
              JSON.stringify(
                await sizedFrom(
                  cuts.sort((a, b) => a - b),
                  backwards,
                ),
              ) === whole,
            ).toBe(true);
          },
        ),
        { seed: 20, numRuns: 3 },
      );
    },
  );

  it('refuses a gap between the parts', () => {
    const task = taskOf('1-commuter-bar.yaml', false);
    const parts = [runDays({ ...task, from: 0, days: 5 }), runDays({ ...task, from: 6, days: 5 })];
    expect(() => mergeDays(parts)).toThrow(/days 5 to 5 are missing/);
  });
});
