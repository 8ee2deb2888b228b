/** The solver's buy against exhaustive search, which knows nothing of integer programmes. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  buyOf,
  buyProblems,
  mostCartons,
  needNow,
  openOptions,
  type BuyTask,
} from '../../src/ordering/buy.js';
import { chooseBuy } from '../../src/ordering/choose-buy.js';
import { nextSteps } from '../../src/ordering/landed.js';
import type { BuyLine } from '../../src/ordering/supply.js';
import { solver } from './solver.js';
import { quoteOf, stepOf, supplierOf } from './supply-samples.js';

/** Every number of cartons in every round from every supplier for every ware, up to some past what could ever help. */
function exhaustive(task: BuyTask, past: number): number {
  let least = Infinity;
  const cartonsUpTo = (most: number, rounds: number): number[][] =>
    rounds === 0
      ? [[]]
      : cartonsUpTo(most, rounds - 1).flatMap((before) =>
          Array.from({ length: most + 1 }, (_, now) => [...before, now]),
        );
  const build = (index: number, lines: readonly BuyLine[]): void => {
    const need = task.needs[index];
    if (need === undefined) {
      if (buyProblems(task, lines).length === 0)
        least = Math.min(least, buyOf(task, lines, false).totalMinor);
      return;
    }
    for (const option of openOptions(task, need)) {
      for (const cartons of cartonsUpTo(
        mostCartons(task, need.ware, need.options[option]!) + past,
        task.rounds,
      )) {
        const line = { ware: need.ware, supplier: need.options[option]!.supplier, option, cartons };
        // A line that falls short by itself cannot be mended by another ware.
        if (
          buyProblems(
            {
              ...task,
              needs: [need],
              suppliers: task.suppliers.map((one) => ({ ...one, minimumOrderMinor: 0 })),
            },
            [line],
          ).length === 0
        )
          build(index + 1, [...lines, line]);
      }
    }
  };
  build(0, []);
  return least;
}

const quoteArb = (ware: string) =>
  fc
    .record({
      carton: fc.constantFrom(6, 12),
      price: fc.integer({ min: 150, max: 500 }),
      least: fc.integer({ min: 1, max: 2 }),
      from: fc.integer({ min: 2, max: 5 }),
      off: fc.integer({ min: 0, max: 40 }),
      mass: fc.integer({ min: 1000, max: 9000 }),
    })
    .map((given) =>
      quoteOf(ware, given.carton, given.price, {
        minimumCartons: given.least,
        cartonMassG: given.mass,
        prices: [
          { fromCartons: 1, cartonMinor: given.carton * given.price },
          ...(given.off === 0
            ? []
            : [
                {
                  fromCartons: given.from,
                  cartonMinor: Math.round(given.carton * given.price * (1 - given.off / 100)),
                },
              ]),
        ],
      }),
    );

const supplierArb = (id: string) =>
  fc
    .record({
      a: quoteArb('cup'),
      b: quoteArb('saucer'),
      both: fc.boolean(),
      fixed: fc.integer({ min: 0, max: 6000 }),
      perCarton: fc.integer({ min: 0, max: 900 }),
      perKg: fc.constantFrom(0, 0, 30, 110),
      step: fc.option(
        fc.record({
          from: fc.integer({ min: 3, max: 7 }),
          fixed: fc.integer({ min: 0, max: 9000 }),
          each: fc.integer({ min: 0, max: 300 }),
        }),
      ),
      free: fc.option(fc.integer({ min: 3000, max: 9000 })),
      least: fc.constantFrom(0, 0, 2500, 6000),
      tax: fc.constantFrom(0, 0.2, 0.075),
    })
    .map((given) =>
      supplierOf(id, given.both ? [given.a, given.b] : [given.a], {
        freight: [
          stepOf(1, given.fixed, given.perCarton, given.perKg),
          ...(given.step ? [stepOf(given.step.from, given.step.fixed, given.step.each)] : []),
        ],
        freeFromMinor: given.free,
        minimumOrderMinor: given.least,
        taxRate: given.tax,
      }),
    );

const taskArb = fc
  .record({
    north: supplierArb('north'),
    south: supplierArb('south'),
    cups: fc.integer({ min: 1, max: 40 }),
    saucers: fc.integer({ min: 1, max: 30 }),
    handling: fc.integer({ min: 0, max: 2000 }),
    later: fc.boolean(),
  })
  .map(({ north, south, cups, saucers, handling, later }): BuyTask => ({
    suppliers: [
      {
        ...north,
        quotes:
          north.quotes.length === 2 ? north.quotes : [...north.quotes, quoteOf('saucer', 6, 210)],
      },
      south,
    ],
    handlingMinor: handling,
    rounds: 1,
    needs: [
      needNow('cup', { north: cups, south: later ? cups + 9 : cups }),
      needNow('saucer', { north: saucers, south: saucers }),
    ],
  }));

describe('the cheapest buy', () => {
  test('equals exhaustive search on random small cases', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(taskArb, async (task) => {
        const chosen = await chooseBuy(task, solver);
        expect(chosen.ok).toBe(true);
        if (!chosen.ok) return;
        expect(buyProblems(task, chosen.value.lines)).toEqual([]);
        // No step that is left could have paid, but for the rounding of tax.
        for (const consignment of chosen.value.consignments.flat())
          for (const step of nextSteps(consignment))
            expect(step.netMinor).toBeGreaterThanOrEqual(-1);
        // Tax is rounded to the cent a consignment, which the programme does not do: at most one cent apart for each.
        expect(Math.abs(chosen.value.totalMinor - exhaustive(task, 4))).toBeLessThanOrEqual(
          task.suppliers.some(({ taxRate }) => taxRate > 0) ? 2 : 1,
        );
      }),
      { seed: 20, numRuns: 40 },
    );
  });

  /** One ware over two or three rounds, from either supplier, each round or once; spares cost to hold. */
  const roundsArb = fc
    .record({
      north: supplierArb('north'),
      south: supplierArb('south'),
      rounds: fc.integer({ min: 2, max: 3 }),
      first: fc.integer({ min: 0, max: 25 }),
      each: fc.integer({ min: 0, max: 15 }),
      spare: fc.integer({ min: 0, max: 9 }),
      holding: fc.double({ min: 0, max: 400, noNaN: true }),
      handling: fc.integer({ min: 0, max: 2000 }),
      eachTime: fc.boolean(),
    })
    .map(({ north, south, rounds, first, each, spare, holding, handling, eachTime }): BuyTask => {
      const spares = { start: -first, lostARound: each, pieceMinorARound: holding };
      const all = Array.from({ length: rounds }, (_, round) => round);
      const often = {
        orderRounds: all,
        eachTime,
        pieces: all.map((round) =>
          round === rounds - 1 ? Math.max(1, first + round * each) : first + round * each,
        ),
        spares,
      };
      const once = {
        orderRounds: [0],
        eachTime: false,
        pieces: all.map(() => Math.max(1, first + (rounds - 1) * each + spare)),
        spares: { ...spares, start: -first / 2, pieceMinorARound: holding / 3 },
      };
      return {
        suppliers: [north, south],
        rounds,
        handlingMinor: handling,
        needs: [
          {
            ware: 'cup',
            options: [
              { supplier: 'north', ...often },
              { supplier: 'north', ...once },
              { supplier: 'south', ...once },
            ],
          },
        ],
      };
    });

  test('over several rounds it equals exhaustive search as well', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(roundsArb, async (task) => {
        const chosen = await chooseBuy(task, solver);
        if (!chosen.ok) throw new Error('every ware is sold');
        expect(chosen.value.proved).toBe(true);
        expect(buyProblems(task, chosen.value.lines)).toEqual([]);
        // Each consignment's tax, and the holding, are rounded to the cent; the programme rounds nothing.
        expect(Math.abs(chosen.value.totalMinor - exhaustive(task, 1))).toBeLessThanOrEqual(3);
      }),
      { seed: 20, numRuns: 40 },
    );
  });

  test('without a solver it keeps every rule, is never cheaper than the proved buy, and says that it proved nothing', async () => {
    await fc.assert(
      fc.asyncProperty(taskArb, async (task) => {
        const [plain, proved] = [await chooseBuy(task, null), await chooseBuy(task, solver)];
        if (!plain.ok || !proved.ok) throw new Error('every ware is sold');
        expect(buyProblems(task, plain.value.lines)).toEqual([]);
        expect(plain.value.proved).toBe(false);
        expect(plain.value.totalMinor).toBeGreaterThanOrEqual(proved.value.totalMinor - 2);
      }),
      { seed: 20, numRuns: 15 },
    );
  });

  test('without effort left it carries a bound that the least cost is not below; effort is spent by size', async () => {
    await fc.assert(
      fc.asyncProperty(taskArb, async (task) => {
        const least = await chooseBuy(task, solver);
        const none = await chooseBuy(task, solver, 0, { left: 0 });
        if (!least.ok || !none.ok) throw new Error('every ware is sold');
        expect(none.value.proved).toBe(false);
        // Tax and holding are rounded to the cent, the bound is not.
        expect(none.value.leastMinor!).toBeLessThanOrEqual(least.value.totalMinor + 2);
        expect(none.value.totalMinor).toBeGreaterThanOrEqual(least.value.totalMinor - 2);
        const effort = { left: 1_000_000 };
        expect(await chooseBuy(task, solver, 0, effort)).toEqual(least);
        expect(effort.left).toBeLessThan(1_000_000);
      }),
      { seed: 20, numRuns: 10 },
    );
  });

  test('of two suppliers alike in all but the cost of holding, the one that holds cheaper is taken', async () => {
    const option = (supplier: string, lostARound: number) => ({
      supplier,
      orderRounds: [0],
      eachTime: false,
      pieces: [24, 24],
      spares: { start: -10, lostARound, pieceMinorARound: 30 },
    });
    const task = (north: number, south: number): BuyTask => ({
      suppliers: [
        supplierOf('north', [quoteOf('cup', 12, 400)]),
        supplierOf('south', [quoteOf('cup', 12, 400)]),
      ],
      rounds: 2,
      handlingMinor: 0,
      needs: [{ ware: 'cup', options: [option('north', north), option('south', south)] }],
    });
    // More lost means fewer spares to hold.
    expect(await chooseBuy(task(5, 2), solver)).toMatchObject({
      value: { lines: [{ supplier: 'north' }] },
    });
    expect(await chooseBuy(task(2, 5), solver)).toMatchObject({
      value: { lines: [{ supplier: 'south' }] },
    });
  });

  test('a ware that nobody sells is told, with all others like it', async () => {
    const outcome = await chooseBuy(
      {
        suppliers: [supplierOf('north', [])],
        rounds: 1,
        handlingMinor: 0,
        needs: [needNow('cup', { north: 4 }), needNow('spoon', {})],
      },
      solver,
    );
    expect(outcome).toMatchObject({ ok: false, problems: [{ value: 'cup' }, { value: 'spoon' }] });
  });

  test('a few cartons more reach free freight where that is cheaper', async () => {
    // 3 cartons cost 3 × 48 + 40 freight = 184; a fourth makes freight free: 192 > 184. At 50 freight it pays.
    const task = (freight: number): BuyTask => ({
      suppliers: [
        supplierOf('north', [quoteOf('cup', 12, 400)], {
          freight: [stepOf(1, freight)],
          freeFromMinor: 19_000,
        }),
      ],
      rounds: 1,
      handlingMinor: 0,
      needs: [needNow('cup', { north: 30 })],
    });
    expect(await chooseBuy(task(4000), solver)).toMatchObject({
      value: { lines: [{ cartons: [3] }], totalMinor: 18_400 },
    });
    expect(await chooseBuy(task(5000), solver)).toMatchObject({
      value: { lines: [{ cartons: [4] }], totalMinor: 19_200 },
    });
  });
});
