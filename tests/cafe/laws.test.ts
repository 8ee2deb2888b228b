/** Laws of the floor, on drawn days of small cafés: what must hold whatever the rules and the luck. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import { PLENTY } from '../../src/cafe/ledger.js';
import type { CafeModel, Setting } from '../../src/cafe/model.js';
import { PLACE_COUNT, SHELF } from '../../src/cafe/places.js';
import { smallCafe, smallStock, wholeCafe } from '../oracles/generators.js';

const PARAMETERS = { seed: 20, numRuns: 400 };
const dayNumber = fc.nat(1_000_000);
const seed = fc.string({ maxLength: 8 });

function drawnDay(model: CafeModel, randomSeed: string, number: number): Day {
  const day = new Day();
  new Demand(model, randomSeed).draw(number, day);
  return day;
}

/** All that a day came to, in plain numbers. */
function told(floor: Floor): Record<string, unknown> {
  const { counter, ledger, seats, washing, clearing } = floor;
  return {
    peaks: floor.model.ware.map((_, w) => ledger.peak(w)),
    uses: [...ledger.uses],
    counts: [...ledger.counts],
    short: [...counter.short],
    firstShort: counter.firstShort,
    unserved: counter.unserved,
    waitedMs: counter.waitedMs,
    left: seats.guestsLeft,
    takeawayInstead: seats.guestsTakeawayInstead,
    loads: washing.loads,
    racks: washing.racks,
    trips: clearing.trips,
    endMs: floor.now,
  };
}

describe('pieces', () => {
  const anyStock = fc.option(smallStock(4, 8), { nil: null });

  it('are conserved at every event, and no place ever holds fewer than none', () => {
    let events = 0;
    const property = fc.property(
      wholeCafe({ lowWater: true }),
      anyStock,
      seed,
      dayNumber,
      (model, stock, randomSeed, number) => {
        const floor = new Floor(model, randomSeed);
        floor.run(drawnDay(model, randomSeed, number), number, stock, {
          before(_nextMs, { ledger }) {
            events += 1;
            for (let w = 0; w < model.ware.length; w += 1) {
              const places = ledger.counts.subarray(w * PLACE_COUNT, (w + 1) * PLACE_COUNT);
              if (places.some((pieces) => pieces < 0))
                throw new Error(
                  `ware ${w} has fewer than no pieces somewhere: ${places.join(' ')}`,
                );
              const sum = places.reduce((all, pieces) => all + pieces, 0);
              if (sum !== (stock === null ? PLENTY : stock[w]!))
                throw new Error(`ware ${w} has ${sum} pieces in all: ${places.join(' ')}`);
            }
          },
        });
      },
    );
    fc.assert(property, PARAMETERS);
    expect(events).toBeGreaterThan(PARAMETERS.numRuns * 20);
  });

  it('spend as many milliseconds somewhere as there are pieces and milliseconds', () => {
    const property = fc.property(
      wholeCafe({ lowWater: true }),
      smallStock(4, 8),
      seed,
      dayNumber,
      (model, stock, randomSeed, number) => {
        const floor = new Floor(model, randomSeed);
        floor.run(drawnDay(model, randomSeed, number), number, stock);
        const { ledger } = floor;
        model.ware.forEach((_, w) => {
          const offShelf = Array.from({ length: PLACE_COUNT }, (__, place) => place)
            .filter((place) => place !== SHELF)
            .map((place) => ledger.pieceMs(w, place));
          expect(Math.min(...offShelf)).toBeGreaterThanOrEqual(0);
          expect(offShelf.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(stock[w]! * ledger.now);
        });
      },
    );
    fc.assert(property, PARAMETERS);
  });
});

describe('the stock', () => {
  it('is never short where it is unlimited', () => {
    const property = fc.property(
      wholeCafe({ lowWater: true }),
      seed,
      dayNumber,
      (model, randomSeed, number) => {
        const floor = new Floor(model, randomSeed);
        floor.run(drawnDay(model, randomSeed, number), number, null);
        expect(floor.counter.firstShort).toBe(-1);
        expect([...floor.counter.short]).toEqual(model.ware.map(() => 0));
        expect(floor.counter.unserved).toBe(0);
      },
    );
    fc.assert(property, PARAMETERS);
  });

  it('leaves a day free of shortage exactly when no unlimited peak exceeds it, where no rule looks at the shelf', () => {
    const seen = { free: 0, short: 0 };
    const around = fc.array(fc.constantFrom(0, 0, 0, 1, 5, -1), { minLength: 4, maxLength: 4 });
    const property = fc.property(
      wholeCafe({ lowWater: false }),
      around,
      seed,
      dayNumber,
      (model, offsets, randomSeed, number) => {
        const floor = new Floor(model, randomSeed);
        const day = drawnDay(model, randomSeed, number);
        floor.run(day, number, null);
        const unlimited = told(floor);
        const peaks = model.ware.map((_, w) => floor.ledger.peak(w));
        const stock = peaks.map((peak, w) => Math.max(0, peak + offsets[w]!));
        floor.run(day, number, stock);
        const free = peaks.every((peak, w) => peak <= stock[w]!);
        expect(floor.counter.firstShort === -1).toBe(free);
        if (free) {
          // The very same day then, but for what is left on the shelf.
          const { counts: _, ...same } = told(floor);
          expect(unlimited).toMatchObject(same);
        }
        seen[free ? 'free' : 'short'] += 1;
      },
    );
    fc.assert(property, PARAMETERS);
    expect(Math.min(seen.free, seen.short)).toBeGreaterThan(PARAMETERS.numRuns / 10);
  });
});

describe('names and order', () => {
  it('mean nothing: other ids, the same numbers', () => {
    const property = fc.property(
      wholeCafe({ lowWater: true }),
      smallStock(4, 8),
      seed,
      dayNumber,
      (model, stock, randomSeed, number) => {
        const named = <T extends { readonly id: string }>(rows: readonly T[]): T[] =>
          rows.map((row, i) => ({ ...row, id: `${'zyx'[i % 3]!}${rows.length - i}` }));
        const { washing } = model;
        const renamed: CafeModel = {
          ...model,
          ware: named(model.ware),
          families: named(model.families),
          rackKinds: named(model.rackKinds),
          menu: named(model.menu),
          washing: { ...washing, machines: washing.machines && named(washing.machines) },
        };
        for (const pieces of [null, stock]) {
          const [one, other] = [model, renamed].map((each) => {
            const floor = new Floor(each, randomSeed);
            floor.run(drawnDay(each, randomSeed, number), number, pieces);
            return told(floor);
          });
          expect(other).toEqual(one);
        }
      },
    );
    fc.assert(property, PARAMETERS);
  });

  it('of ware, families and kinds of rack change no peak', () => {
    const orders = fc.record({ ware: shuffle(4), families: shuffle(3), kinds: shuffle(2) });
    const property = fc.property(
      smallCafe({ lowWater: true }),
      smallStock(4, 8),
      orders,
      seed,
      dayNumber,
      (model, pieces, order, randomSeed, number) => {
        const stock = pieces.slice(0, model.ware.length);
        const [wareTo, familyTo, kindTo] = [
          newPlaces(order.ware, model.ware.length),
          newPlaces(order.families, model.families.length),
          newPlaces(order.kinds, model.rackKinds.length),
        ];
        const moved = (setting: Setting): number[] => setting.map((w) => wareTo[w]!);
        const reordered: CafeModel = {
          ...model,
          ware: reorder(
            model.ware.map((row) => ({ ...row, family: familyTo[row.family]! })),
            wareTo,
          ),
          families: reorder(
            model.families.map((row) => ({ ...row, rackKind: kindTo[row.rackKind]! })),
            familyTo,
          ),
          rackKinds: reorder(model.rackKinds, kindTo),
          menu: model.menu.map((row) => ({
            ...row,
            setting: moved(row.setting),
            fallBacks: row.fallBacks.map(moved),
          })),
        };
        for (const [before, after] of [
          [null, null],
          [stock, reorder(stock, wareTo)],
        ] as const) {
          const one = new Floor(model, randomSeed);
          one.run(drawnDay(model, randomSeed, number), number, before);
          const other = new Floor(reordered, randomSeed);
          other.run(drawnDay(reordered, randomSeed, number), number, after);
          const peaksOf = (floor: Floor): number[] =>
            floor.model.ware.map((_, w) => floor.ledger.peak(w));
          expect(peaksOf(other)).toEqual(reorder(peaksOf(one), wareTo));
          expect([...other.counter.short]).toEqual(reorder([...one.counter.short], wareTo));
          expect(other.now).toBe(one.now);
        }
      },
    );
    fc.assert(property, PARAMETERS);
  });
});

/** Some order of 0 ... n - 1. */
function shuffle(n: number): fc.Arbitrary<number[]> {
  const all = Array.from({ length: n }, (_, i) => i);
  return fc.shuffledSubarray(all, { minLength: n, maxLength: n });
}

/** Where each of `count` rows goes, out of an order of at least as many. */
function newPlaces(order: readonly number[], count: number): number[] {
  return order.filter((i) => i < count);
}

/** The rows with row i at place `to[i]`. */
function reorder<T>(rows: readonly T[], to: readonly number[]): T[] {
  const out = [...rows];
  rows.forEach((row, i) => (out[to[i]!] = row));
  return out;
}
