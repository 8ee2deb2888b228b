/** The plan over the horizon, and laws of the sheet that is made from it. */
import { describe, expect, test } from 'vitest';
import { chanceParHolds } from '../../src/ordering/holding-target.js';
import { leadTimes } from '../../src/ordering/lead-time.js';
import { orderSheet } from '../../src/ordering/make-sheet.js';
import { usesACalendarDay } from '../../src/ordering/sheet-line.js';
import { planOrders, type PlannedWare } from '../../src/ordering/plan.js';
import { sampleInput, sampleSheet, sampleSlice, sampleSupply, sampleWare } from './sheet-sample.js';
import { solver } from './solver.js';

const cups: PlannedWare = {
  ware: 'cup',
  par: 62,
  rates: { usesADay: 240, perThousandUses: 0.5, walkOffPerYear: 0, retirementPerYear: 0.02 },
};
const only = (supplier: object, more: object = {}) =>
  sampleSupply({
    horizon: '730 days',
    holding: '0 %',
    suppliers: {
      quay: { leadTime: '7 days', quotes: { cup: { price: '4 EUR', carton: 6 } }, ...supplier },
    },
    ...more,
  });
const plan = async (...given: Parameters<typeof planOrders>) => {
  const outcome = await planOrders(...given);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
  return outcome.value;
};

describe('how often to order', () => {
  test('dear freight and free holding: once; dear holding and free freight: as often as is tried', async () => {
    const once = await plan([cups], only({ freight: { fixed: '200 EUR' } }), '2026-03-02', solver);
    expect(once.chosen).toMatchObject({ rounds: 1, orders: 1, laterMinor: 0, proved: true });
    const often = await plan([cups], only({}, { holding: '80 %' }), '2026-03-02', solver);
    expect(often.chosen).toMatchObject({ rounds: 4, orders: 4 });
    expect(often.coverDays['cup']).toBe(730 / 4);
  });

  test('each round leaves pieces enough to reach the next delivery: the holding and what has been lost', async () => {
    const supply = only({}, { holding: '80 %', orders: 4 });
    const { buy } = await plan([cups], supply, '2026-03-02', solver);
    const bought = buy.lines[0]!.cartons.map((cartons) => cartons * 6);
    const [hold] = bought;
    const spells = leadTimes(supply.suppliers[0]!.leadTime).map(({ days, weight }) => ({
      days: days + 730 / 4,
      weight,
    }));
    expect(chanceParHolds(62, hold!, cups.rates, spells)).toBeGreaterThanOrEqual(0.95);
    // 240 × 0.5 / 1000 × 182.5 = 21.9 break a round; retirement adds less than one.
    const lost = (round: number): number => 21.9 * round;
    bought.forEach((_, round) =>
      expect(
        bought.slice(0, round + 1).reduce((sum, pieces) => sum + pieces, 0),
      ).toBeGreaterThanOrEqual(62 + lost(round)),
    );
    expect(bought.slice(1).every((pieces) => pieces >= 18)).toBe(true);
  });

  test('no repeat supply: one round brings the range, whatever the number of rounds', async () => {
    const none = await plan([cups], only({ repeat: 'none' }, { orders: 3 }), '2026-03-02', solver);
    expect(none.buy.lines[0]!.cartons.slice(1)).toEqual([0, 0]);
    expect(
      chanceParHolds(62, none.buy.lines[0]!.cartons[0]! * 6, cups.rates, [
        { days: 730, weight: 1 },
      ]),
    ).toBeGreaterThanOrEqual(0.95);
  });

  test('supply that ends half way: nothing is ordered after it, and the last order lasts to the end', async () => {
    const ending = await plan(
      [cups],
      only({ repeat: { until: '2027-04-01' } }, { orders: 4, holding: '80 %' }),
      '2026-03-02',
      solver,
    );
    const { cartons } = ending.buy.lines[0]!;
    expect(cartons[3]).toBe(0);
    const total = cartons.reduce((sum, count) => sum + count, 0) * 6;
    const assured =
      (
        await plan([cups], only({}, { orders: 4, holding: '80 %' }), '2026-03-02', solver)
      ).buy.lines[0]!.cartons.reduce((sum, count) => sum + count, 0) * 6;
    expect(total).toBeGreaterThan(assured - 22);
  });

  test('enough on hand: nothing is bought', async () => {
    const full = await plan([cups], only({}, { onHand: { cup: 400 } }), '2026-03-02', solver);
    expect(full.buy.lines).toEqual([]);
    expect(full.chosen.totalMinor).toBe(0);
  });

  test('ware that nobody sells is a problem', async () => {
    expect(
      await planOrders([{ ...cups, ware: 'spoon' }], only({}), '2026-03-02', solver),
    ).toMatchObject({ ok: false, problems: [{ value: 'spoon' }] });
  });
});

describe('the sheet', () => {
  test('lines add up to consignments, and these to the totals', async () => {
    const sheet = await sampleSheet();
    for (const consignment of sheet.consignments) {
      const own = sheet.lines.filter(
        (line) => line.supplier === consignment.supplier && line.landedMinor !== null,
      );
      const sum = (of: (line: (typeof own)[number]) => number): number =>
        own.reduce((total, line) => total + of(line), 0);
      expect(sum((line) => line.goodsMinor!)).toBe(consignment.goodsMinor);
      expect(sum((line) => line.freightMinor!)).toBe(consignment.freightMinor);
      expect(sum((line) => line.taxMinor!)).toBe(consignment.taxMinor);
      expect(sum((line) => line.landedMinor!) + consignment.handlingMinor).toBe(
        consignment.totalMinor,
      );
      expect(sum((line) => line.cartons!)).toBe(consignment.cartons);
    }
    expect(sheet.totals.totalMinor).toBe(
      sheet.consignments.reduce((sum, { totalMinor }) => sum + totalMinor, 0),
    );
    expect(sheet.plan!.chosen.openingMinor).toBe(sheet.totals.totalMinor);
  });

  test('every line brings what it needs, and says where it comes from and whether it can be had again', async () => {
    const sheet = await sampleSheet();
    const line = (ware: string) => sheet.lines.find((one) => one.ware === ware)!;
    for (const one of sheet.lines) {
      expect(one.pieces + one.onHand).toBeGreaterThanOrEqual(one.par);
      expect(one.pieces).toBeGreaterThanOrEqual(one.needed);
      expect(one.spares.besideMachine + one.spares.inStore).toBe(one.spares.total);
    }
    expect(line('glass')).toMatchObject({
      supplier: 'mill',
      repeat: 'none',
      reorderPoint: null,
      reorder: null,
    });
    expect(line('glass').lifeOfRange).toBe(line('glass').hold);
    expect(line('saucer')).toMatchObject({
      supplier: 'quay',
      repeat: 'assured',
      lifeOfRange: null,
      onHand: 20,
    });
    expect(line('teaspoon')).toMatchObject({
      supplier: null,
      cartons: null,
      landedMinor: null,
      coverDays: 182,
    });
    expect(line('teaspoon').pieces).toBe(line('teaspoon').needed);
    expect(sheet.warnings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['life-of-range', 'no-quote']),
    );
    expect(sheet.cautions.map(({ id }) => id)).toEqual([
      'lifting',
      'hot-machine',
      'chipped',
      'broken-glass',
    ]);
    expect(sheet.suppliers).toMatchObject([
      { supplier: 'quay', missing: ['glass'], alone: null },
      { supplier: 'mill', missing: ['saucer'], alone: null },
    ]);
  });

  test('without suppliers there is still a sheet: pieces, reorder points, no money', async () => {
    const sheet = await sampleSheet({ supply: sampleSupply({ onHand: { cup: 10 } }) });
    expect(sheet.plan).toBeNull();
    expect(sheet.consignments).toEqual([]);
    expect(sheet.totals.totalMinor).toBe(0);
    expect(
      sheet.lines.every(
        (line) =>
          line.pieces === line.needed && line.reorderPoint !== null && line.landedMinor === null,
      ),
    ).toBe(true);
    expect(sheet.lines[0]!.needed).toBe(sheet.lines[0]!.hold - 10);
  });

  test('suppliers side by side: none alone is cheaper than the plan', async () => {
    const suppliers = Object.fromEntries(
      Object.entries(sampleSlice.suppliers).map(([id, supplier]) => [
        id,
        {
          ...supplier,
          quotes: {
            cup: { price: '4.20 EUR', carton: 12 },
            saucer: { price: '2.10 EUR', carton: 24 },
            glass: { price: '1.40 EUR', carton: 48 },
          },
        },
      ]),
    );
    const sheet = await sampleSheet({ supply: sampleSupply({ ...sampleSlice, suppliers }) });
    for (const { alone } of sheet.suppliers)
      expect(alone!.totalMinor).toBeGreaterThanOrEqual(sheet.plan!.chosen.totalMinor);
  });

  test('the same input gives the same sheet', async () => {
    expect(JSON.stringify(await sampleSheet())).toBe(JSON.stringify(await sampleSheet()));
  });

  test('pieces on hand of a ware that is not ordered are a problem', async () => {
    const outcome = await orderSheet(sampleInput({ ware: sampleWare.slice(0, 1) }), solver);
    expect(outcome).toMatchObject({
      ok: false,
      problems: [{ path: ['supply', 'onHand', 'saucer'] }],
    });
  });

  test('uses are spread over the whole day and the days the café is shut', () => {
    expect(usesACalendarDay(120, { rushShare: 0.6, openDaysAWeek: 5 })).toBeCloseTo(
      (120 / 0.6) * (5 / 7),
      12,
    );
  });
});
