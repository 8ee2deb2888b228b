/** From par to order: what is added up must come to what is ordered, whatever the house. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Bridge } from '../../src/ordering/bridge.js';
import type { OrderSheet } from '../../src/ordering/order-sheet.js';
import { sampleSheet, sampleSlice, sampleSupply, sampleWare } from './sheet-sample.js';

function expectToAddUp(bridge: Bridge): void {
  const { par, sparesUntilDelivery, sparesAfter, onHand, fromCartons, pieces } = bridge;
  expect(par + sparesUntilDelivery + sparesAfter - onHand + fromCartons).toBe(pieces);
  for (const part of [par, sparesUntilDelivery, sparesAfter, onHand, fromCartons])
    expect(part).toBeGreaterThanOrEqual(0);
  expect(bridge.goodsMinor + bridge.freightMinor + bridge.taxMinor + bridge.handlingMinor).toBe(
    bridge.totalMinor,
  );
}

const bridgesOf = ({ bridges }: OrderSheet): Bridge[] =>
  [bridges.ordered, bridges.smallest, bridges.horizon].filter((one) => one !== null);

describe('the bridge from par to order', () => {
  test('adds up for houses of any size, and the order is the one on the sheet', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 4, maxLength: 4 }),
        fc.nat(120),
        fc.constantFrom(1, 2, 4),
        async (pars, saucers, orders) => {
          const sheet = await sampleSheet({
            ware: sampleWare.map((ware, at) => ({ ...ware, par: pars[at]! })),
            supply: sampleSupply({ ...sampleSlice, orders, onHand: { saucer: saucers } }),
          });
          for (const bridge of bridgesOf(sheet)) expectToAddUp(bridge);
          const { ordered, horizon } = sheet.bridges;
          expect(ordered.pieces).toBe(sheet.totals.pieces);
          expect(ordered.totalMinor).toBe(sheet.totals.totalMinor);
          if (orders === 1) expect(horizon).toEqual(ordered);
        },
      ),
      { seed: 20, numRuns: 12 },
    );
  }, 120_000);

  test('buys no fewer pieces to last longer', async () => {
    const { bridges } = await sampleSheet();
    const spares = ({ sparesUntilDelivery, sparesAfter }: Bridge): number =>
      sparesUntilDelivery + sparesAfter;
    expect(spares(bridges.smallest!)).toBeLessThanOrEqual(spares(bridges.ordered));
    expect(spares(bridges.ordered)).toBeLessThanOrEqual(spares(bridges.horizon!));
  });

  test('has no prices where nobody sells', async () => {
    const { bridges } = await sampleSheet({ supply: sampleSupply({}) });
    expect(bridges.smallest).toBeNull();
    expect(bridges.ordered.totalMinor).toBe(0);
    expectToAddUp(bridges.ordered);
  });
});

describe('what is promised', () => {
  test('of each ware: all together is the product, and never more than the least of them', async () => {
    const sheet = await sampleSheet();
    const chances = sheet.lines.map(({ chance }) => chance);
    for (const chance of chances) expect(chance).toBeGreaterThanOrEqual(sheet.confidence - 1e-12);
    expect(sheet.chanceTogether).toBeCloseTo(
      chances.reduce((product, chance) => product * chance, 1),
      12,
    );
    expect(sheet.chanceTogether).toBeLessThanOrEqual(Math.min(...chances));
  });

  test('of all together: reached, at no fewer pieces held of any ware', async () => {
    const each = await sampleSheet({ supply: sampleSupply({ ...sampleSlice, orders: 2 }) });
    const together = await sampleSheet({
      supply: sampleSupply({ ...sampleSlice, orders: 2, promise: 'together' }),
    });
    expect(together.promise).toBe('together');
    expect(together.confidence).toBe(0.95);
    expect(together.chanceTogether).toBeGreaterThanOrEqual(0.95);
    const sum = (sheet: OrderSheet): number =>
      sheet.lines.reduce((total, { needed }) => total + needed, 0);
    expect(sum(together)).toBeGreaterThanOrEqual(sum(each));
    expect(together.plan!.chosen.totalMinor).toBeGreaterThanOrEqual(
      each.plan!.chosen.totalMinor * (1 - 0.005),
    );
  });
});
