import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { consignmentTotal } from '../../src/ordering/costs/index.js';
import { freight } from '../../src/ordering/costs/freight.js';
import { goods } from '../../src/ordering/costs/goods.js';
import { holding } from '../../src/ordering/costs/holding.js';
import { tax } from '../../src/ordering/costs/tax.js';
import {
  landedBySize,
  landedLines,
  nextStepSentence,
  nextSteps,
  stepsWorthNaming,
  type NextStep,
} from '../../src/ordering/landed.js';
import { formatMoney, splitMinor } from '../../src/ordering/money.js';
import type { Consignment } from '../../src/ordering/supply.js';
import { quoteOf, stepOf, supplierOf } from './supply-samples.js';

const cup = quoteOf('cup', 12, 420, {
  cartonMassG: 4000,
  prices: [
    { fromCartons: 1, cartonMinor: 5040 },
    { fromCartons: 6, cartonMinor: 4680 },
  ],
});
const saucer = quoteOf('saucer', 24, 150, { cartonMassG: 6000 });
const harbour = supplierOf('harbour', [cup, saucer], {
  freight: [stepOf(1, 1200, 400, 20), stepOf(8, 6000)],
  freeFromMinor: 60_000,
  taxRate: 0.23,
});
const consignment = (cups: number, saucers: number): Consignment => ({
  supplier: harbour,
  handlingMinor: 550,
  lines: [
    { quote: cup, cartons: cups },
    ...(saucers > 0 ? [{ quote: saucer, cartons: saucers }] : []),
  ],
});

describe('what a consignment costs', () => {
  test('worked by hand', () => {
    // 3 × 50.40 + 2 × 36.00 = 223.20; freight 12 + 5 × 4 + 24 kg × 0.20 = 36.80; tax 23 % of 260.00 = 59.80; handling 5.50.
    const order = consignment(3, 2);
    expect([goods(order), freight(order), tax(order), consignmentTotal(order)]).toEqual([
      22_320, 3_680, 5_980, 32_530,
    ]);
  });

  test('the price break holds for every carton; the freight step and the free value replace the rate', () => {
    expect(goods(consignment(6, 0))).toBe(6 * 4680);
    expect(freight(consignment(8, 0))).toBe(6000);
    // 13 × 46.80 = 608.40 is past the 600 from which freight is free.
    expect(freight(consignment(13, 0))).toBe(0);
  });

  test('shares of freight and tax sum to the whole, by value and by mass', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom('value' as const, 'mass' as const),
        (cups, saucers, by) => {
          const order = consignment(cups, saucers);
          const lines = landedLines(order, by);
          const sum = (of: (line: (typeof lines)[number]) => number): number =>
            lines.reduce((total, line) => total + of(line), 0);
          expect(sum((line) => line.freightMinor)).toBe(freight(order));
          expect(sum((line) => line.taxMinor)).toBe(tax(order));
          expect(sum((line) => line.landedMinor) + 550).toBe(consignmentTotal(order));
        },
      ),
      { seed: 20 },
    );
    // By mass: 12 kg of cups and 12 kg of saucers share evenly, whatever they cost.
    expect(landedLines(consignment(3, 2), 'mass').map((line) => line.freightMinor)).toEqual([
      1840, 1840,
    ]);
    expect(landedLines(consignment(3, 2), 'value').map((line) => line.freightMinor)).toEqual([
      Math.round((3680 * 15_120) / 22_320),
      3680 - Math.round((3680 * 15_120) / 22_320),
    ]);
  });

  test('splitting an amount loses no minor unit and stays within one of the proportion', () => {
    fc.assert(
      fc.property(
        fc.nat(1_000_000),
        fc.array(fc.nat(5000), { minLength: 1, maxLength: 12 }),
        (minor, weights) => {
          const parts = splitMinor(minor, weights);
          const sum = weights.reduce((a, b) => a + b, 0);
          expect(parts.reduce((a, b) => a + b, 0)).toBe(minor);
          if (sum > 0)
            parts.forEach((part, index) =>
              expect(Math.abs(part - (minor * weights[index]!) / sum)).toBeLessThan(1),
            );
        },
      ),
      { seed: 20 },
    );
  });

  test('holding: 20 pieces of 4.20 for a year at 10 % cost 8.40', () => {
    expect(holding({ start: -60, lostARound: 0, pieceMinorARound: 42 }, [80])).toBe(840);
    // Two half years: 20 spare less 2, then 20 + 6 less 4 + 2, at 21 a half year.
    expect(holding({ start: -60, lostARound: 4, pieceMinorARound: 21 }, [80, 6])).toBe(
      (18 + 20) * 21,
    );
  });
});

describe('the size of an order', () => {
  const points = landedBySize(harbour, cup, 14);

  test('steps are named where they begin', () => {
    expect(
      points.filter(({ step }) => step !== null).map(({ cartons, step }) => [cartons, step]),
    ).toEqual([
      [6, 'price break'],
      [8, 'from 8'],
      [13, 'free freight'],
    ]);
  });

  test('within a step, a larger order never costs more a piece', () => {
    // Tax is rounded to the cent an order, so to a part of a cent a piece.
    for (let index = 1; index < points.length; index++)
      if (points[index]!.step === null)
        expect(points[index]!.perPieceMinor).toBeLessThanOrEqual(
          points[index - 1]!.perPieceMinor + 1 / points[index]!.pieces,
        );
  });

  test('orders below the minimum value are not offered', () => {
    expect(
      landedBySize({ ...harbour, minimumOrderMinor: 15_000 }, cup, 5).map(({ cartons }) => cartons),
    ).toEqual([3, 4, 5]);
  });
});

describe('the next step', () => {
  test('12 more cups cost 9 and save 31 of freight', () => {
    // Two cartons of 4.50 a dozen; freight 31 under 27 of goods, free from there.
    const dozen = quoteOf('cup', 12, 75);
    const supplier = supplierOf('quay', [dozen], {
      freight: [stepOf(1, 3100)],
      freeFromMinor: 2700,
    });
    const [step] = nextSteps({ supplier, handlingMinor: 0, lines: [{ quote: dozen, cartons: 2 }] });
    expect(step).toMatchObject({
      pieces: 12,
      cartons: 1,
      goodsMinor: 900,
      freightSavedMinor: 3100,
      netMinor: -2200,
      step: 'free freight',
    });
    const said = (more: Partial<NextStep>): string =>
      nextStepSentence(
        { ...step!, ...more },
        (ware) => `${ware}s`,
        (minor) => `${minor / 100}`,
      );
    expect(said({})).toBe(
      'cups: 12 more would cost 9 and save 31 of freight (free freight): 22 less in all.',
    );
    expect(said({ freightSavedMinor: 0, netMinor: 900, step: 'price break' })).toBe(
      'cups: 12 more would cost 9 (price break): 9 more in all.',
    );
    expect(said({ freightSavedMinor: -200, netMinor: 1100, step: 'price break' })).toBe(
      'cups: 12 more would cost 9 and add 2 of freight (price break): 11 more in all.',
    );
  });

  test('a break that makes the larger order cheaper is told as such', () => {
    const steps = nextSteps(consignment(5, 0));
    expect(steps[0]).toMatchObject({
      ware: 'cup',
      cartons: 1,
      goodsMinor: 6 * 4680 - 5 * 5040,
      step: 'price break',
    });
    expect(nextSteps({ ...consignment(20, 0) })).toEqual([]);
  });

  test('a step is named only where it pays for a quarter of what it adds', () => {
    const dozen = quoteOf('cup', 12, 75);
    const at = (fixedMinor: number) =>
      stepsWorthNaming({
        supplier: supplierOf('quay', [dozen], {
          freight: [stepOf(1, fixedMinor)],
          freeFromMinor: 3600,
        }),
        handlingMinor: 0,
        lines: [{ quote: dozen, cartons: 2 }],
      });
    // Two cartons of 9.00 more reach free freight: a quarter of them is 4.50.
    expect(at(449)).toEqual([]);
    expect(at(450)).toMatchObject([{ pieces: 24, goodsMinor: 1800, freightSavedMinor: 450 }]);
  });
});

test('money is written as the place writes it', () => {
  expect(formatMoney(123_456, 'EUR', 'en-IE')).toBe('€1,234.56');
  expect(formatMoney(123_456, 'JPY', 'en')).toBe('¥123,456');
  expect(formatMoney(421.375, 'EUR', 'en-IE', 2)).toBe('€4.2138');
});

test('an amount without a locale is written in English, whatever the machine speaks', () => {
  const { NumberFormat } = Intl;
  const asked: unknown[] = [];
  Intl.NumberFormat = class extends NumberFormat {
    constructor(locale?: string, options?: Intl.NumberFormatOptions) {
      super(locale, options);
      asked.push(locale);
    }
  } as typeof NumberFormat;
  try {
    expect(formatMoney(123_456, 'EUR', undefined)).toBe('€1,234.56');
    expect(asked).toEqual(['en']);
  } finally {
    Intl.NumberFormat = NumberFormat;
  }
});
