import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Day } from '../../../src/cafe/day.js';
import { Floor } from '../../../src/cafe/floor.js';
import { fillDay } from '../../../src/cafe/listed-day.js';
import type { MachineModel } from '../../../src/cafe/model.js';
import { Observer } from '../../../src/cafe/observer.js';
import type { Machine } from '../../../src/cafe/washing/machines.js';
import { idealised, instantMachine, modelOf, steady } from '../../published/scenario-of.js';

const MINUTE = 60_000;
const CLOSING = 60;

interface Stops {
  readonly warmUp: number;
  readonly down: readonly (readonly [from: number, long: number])[];
  readonly breakdown: { readonly until: number; readonly repair: number } | null;
}

/** When a machine stops (1) and when it may start again (-1), minutes. */
function planned({ warmUp, down, breakdown }: Stops): [minute: number, change: number][] {
  const changes: [number, number][] = down.flatMap(([from, long]) => [
    [from, 1],
    [from + long, -1],
  ]);
  if (warmUp > 0) changes.push([0, 1], [warmUp, -1]);
  if (breakdown === null) return changes;
  // A machine that is repaired while the doors are open breaks down once more.
  for (let repaired = 0; repaired < CLOSING;) {
    const broken = repaired + breakdown.until;
    repaired = broken + breakdown.repair;
    changes.push([broken, 1], [repaired, -1]);
  }
  return changes;
}

/** For how many reasons each machine may not start, after each minute in which one of them came or went. */
const statesOf = (machines: readonly Stops[]): Map<string, number> =>
  new Map(
    machines.flatMap((stops, number) => {
      const changes = planned(stops);
      return changes.map(([minute]): [string, number] => [
        `machine ${number} at ${minute}`,
        changes.reduce((sum, [at, change]) => sum + (at <= minute ? change : 0), 0),
      ]);
    }),
  );

const constant = (minutes: number) => ({ law: 'constant', ms: minutes * MINUTE }) as const;
const minutes = fc.integer({ min: 1, max: 25 });
const stops: fc.Arbitrary<Stops> = fc.record({
  warmUp: fc.nat(12),
  down: fc.array(fc.tuple(minutes, minutes), { maxLength: 2 }),
  breakdown: fc.option(fc.record({ until: minutes, repair: minutes })),
});

it('each of several machines stops and starts again when its own times say so, and the day ends', () => {
  const empty = modelOf(idealised(steady(0, CLOSING)));
  const plain = modelOf(
    idealised({
      ...steady(0, CLOSING),
      washing: { machines: [instantMachine], hands: 1, partLoadWait: 'never' },
    }),
  ).washing.machines![0]!;
  fc.assert(
    fc.property(fc.array(stops, { minLength: 1, maxLength: 5 }), (all) => {
      const machines = all.map(({ warmUp, down, breakdown }): MachineModel => ({
        ...plain,
        warmUpMs: warmUp * MINUTE,
        down: down.map(([from, long]) => [from * MINUTE, (from + long) * MINUTE]),
        breakdown: breakdown && {
          until: constant(breakdown.until),
          repair: constant(breakdown.repair),
        },
      }));
      const floor = new Floor({ ...empty, washing: { ...empty.washing, machines } }, 'stops');
      const seen = new Map<string, number>();
      floor.ledger.observer = new (class extends Observer {
        override machine(number: number, { stopped }: Machine): void {
          seen.set(`machine ${number} at ${floor.now / MINUTE}`, stopped);
        }
      })();
      const day = new Day();
      fillDay({ parties: [] }, empty.menu, day);
      floor.run(day, 0, null);
      expect(seen).toEqual(statesOf(all));
      expect(floor.moreToCome).toBe(false);
    }),
    { seed: 61, numRuns: 60 },
  );
});
