/** The supply slice: what it reads, and every mistake reported at once. */
import { describe, expect, test } from 'vitest';
import { readSupply } from '../../src/ordering/read-supply.js';
import { SUPPLY_DEFAULTS } from '../../src/ordering/supply-model.js';
import { supplySchema } from '../../src/ordering/schema.js';
import { storageSchema } from '../../src/ordering/storage-schema.js';

const context = {
  currency: 'EUR',
  staffHourMinor: 2200,
  ware: [
    { id: 'cup', massG: 300 },
    { id: 'saucer', massG: null },
  ],
};
const read = (slice: object) => readSupply(supplySchema.parse(slice), context);
const problemsOf = (slice: object): string[] => {
  const outcome = read(slice);
  return outcome.ok ? [] : outcome.problems.map(({ path, rule }) => `${path.join('.')} ${rule}`);
};
const quay = (more: object = {}, quote: object = {}) => ({
  suppliers: {
    quay: {
      leadTime: '7 days',
      quotes: { cup: { price: '4.20 EUR', carton: 12, ...quote } },
      ...more,
    },
  },
});

describe('a slice that is right', () => {
  test('a carton costs the same however its price is written, breaks too', () => {
    const cartons = (price: string, later: string): unknown => {
      const outcome = read(quay({}, { price, carton: 24, breaks: [{ from: 48, price: later }] }));
      return outcome.ok && outcome.value.suppliers[0]!.quotes[0]!.prices;
    };
    const same = [
      { fromCartons: 1, cartonMinor: 300 },
      { fromCartons: 2, cartonMinor: 270 },
    ];
    expect(cartons('12.50 EUR a hundred', '11.25 EUR a hundred')).toEqual(same);
    expect(cartons('125 EUR a thousand', '2.70 EUR a carton')).toEqual(same);
    expect(problemsOf(quay({}, { price: '4.55 EUR a hundred', carton: 24 }))).toEqual([
      'supply.suppliers.quay.quotes.cup.price makes a carton of 24 cost 1.092 EUR, which has more decimals than EUR has',
    ]);
  });

  test('money in minor units, breaks and steps in cartons, staff hours converted', () => {
    const outcome = read({
      horizon: '365 days',
      handling: '0.5 staff hours',
      tax: '23 %',
      suppliers: {
        quay: {
          name: 'Quay Tableware',
          leadTime: { gamma: { mean: '10 days', sd: '3 days' } },
          minimumOrder: '50 EUR',
          repeat: { until: '2027-01-31' },
          freight: {
            steps: [
              { from: 1, fixed: '12 EUR', perCarton: '4 EUR' },
              { from: 20, name: 'pallet', fixed: '80 EUR' },
            ],
            freeFrom: '900 EUR',
          },
          quotes: {
            cup: {
              price: '4.20 EUR',
              carton: 12,
              breaks: [
                { from: 70, price: '3.90 EUR' },
                { from: 72, price: '3.80 EUR' },
              ],
            },
            saucer: {
              price: '0.1 staff hours',
              carton: 24,
              minimumCartons: 2,
              repeat: 'none',
              cartonMass: '6 kg',
            },
          },
        },
      },
    });
    expect(outcome).toEqual({
      ok: true,
      value: {
        reviewDays: SUPPLY_DEFAULTS.reviewDays,
        confidence: 0.95,
        openDaysAWeek: 7,
        rushShare: 1,
        holdingPerYear: 0.1,
        shareFreightBy: 'value',
        onHand: {},
        horizonDays: 365,
        promise: 'each',
        orders: null,
        handlingMinor: 1100,
        suppliers: [
          {
            id: 'quay',
            name: 'Quay Tableware',
            leadTime: { law: 'gamma', meanMs: 864_000_000, sdMs: 259_200_000 },
            minimumOrderMinor: 5000,
            freeFromMinor: 90_000,
            taxRate: 0.23,
            freight: [
              {
                fromCartons: 1,
                name: 'from 1 carton',
                fixedMinor: 1200,
                perCartonMinor: 400,
                perKgMinor: 0,
              },
              {
                fromCartons: 20,
                name: 'pallet',
                fixedMinor: 8000,
                perCartonMinor: 0,
                perKgMinor: 0,
              },
            ],
            quotes: [
              // Breaks at 70 and at 72 pieces are both reached by the sixth carton: the later holds.
              {
                ware: 'cup',
                cartonPieces: 12,
                minimumCartons: 1,
                cartonMassG: 300 * 12 * 1.08,
                repeat: { until: '2027-01-31' },
                prices: [
                  { fromCartons: 1, cartonMinor: 5040 },
                  { fromCartons: 6, cartonMinor: 4560 },
                ],
              },
              {
                ware: 'saucer',
                cartonPieces: 24,
                minimumCartons: 2,
                cartonMassG: 6000,
                repeat: 'none',
                prices: [{ fromCartons: 1, cartonMinor: 24 * 220 }],
              },
            ],
          },
        ],
      },
    });
  });
});

describe('mistakes of a file', () => {
  const schemaProblems = (slice: object): string[] =>
    (supplySchema.safeParse(slice).error?.issues ?? []).map(
      ({ path, message }) => `${path.join('.')} ${message}`,
    );

  test.each([
    [
      'a carton of nothing',
      quay({}, { carton: 0 }),
      'suppliers.quay.quotes.cup.carton is too few pieces per carton; write a whole number, 1 or more',
    ],
    [
      'no carton',
      quay({}, { carton: undefined }),
      'suppliers.quay.quotes.cup.carton is missing; write a whole number, 1 or more',
    ],
    [
      'a price without a currency',
      quay({}, { price: 4.2 }),
      'suppliers.quay.quotes.cup.price is a number without a unit where money is needed; write "4.2 EUR" (your currency) or "4.2 staff hours"',
    ],
    [
      'a date that does not exist',
      { date: '2026-02-30' },
      'date is not a date; write a date as year-month-day, such as "2026-03-02"',
    ],
    [
      'certainty',
      { confidence: '100 %' },
      'confidence is not a chance that can be planned for; write a share above 0 % and below 100 %, such as "95 %"',
    ],
    [
      'all spoons walk off',
      { losses: { spoon: { walkOff: '100 %' } } },
      'losses.spoon.walkOff is all of the pieces; write a share below 100 %',
    ],
    [
      'eight days a week',
      { openDaysAWeek: 8 },
      'openDaysAWeek is more days than a week has; write 7 or fewer',
    ],
    [
      'a review of an hour',
      { review: '1 h' },
      'review is shorter than a day; write a number of days, such as "28 days"',
    ],
    [
      'a promise that is none',
      quay({ repeat: 'maybe' }),
      'suppliers.quay.repeat does not say whether it can be bought again; write assured, none, or { until: "2027-06-30" }',
    ],
  ])('%s', (_, slice, message) => {
    expect(schemaProblems(slice)).toEqual([message]);
  });

  test('unknown keys are refused', () => {
    expect(supplySchema.safeParse({ supplier: {} }).success).toBe(false);
    expect(storageSchema.safeParse({ top: { height: '1 m' } }).success).toBe(false);
  });

  test.each([
    [
      'unknown ware in quotes, losses and stock',
      {
        ...quay(),
        onHand: { cups: 4 },
        losses: { plate: {} },
        suppliers: { quay: { leadTime: '7 days', quotes: { mug: { price: '4 EUR', carton: 6 } } } },
      },
      [
        'supply.onHand.cups is not a ware of this scenario',
        'supply.losses.plate is not a ware of this scenario',
        'supply.suppliers.quay.quotes.mug is not a ware of this scenario',
      ],
    ],
    [
      'two currencies',
      { ...quay({ freight: { fixed: '9 GBP' } }, { price: '5 USD' }) },
      [
        'supply.suppliers.quay.freight.fixed is a second currency; the scenario is in EUR',
        'supply.suppliers.quay.quotes.cup.price is a second currency; the scenario is in EUR',
      ],
    ],
    [
      'a lead time past the horizon',
      { horizon: '100 days', ...quay({ leadTime: { gamma: { mean: '60 days', sd: '40 days' } } }) },
      ['supply.suppliers.quay.leadTime may be longer than the time the order plans for (100 days)'],
    ],
    [
      'a review past the horizon',
      { horizon: '20 days', review: '21 days' },
      ['supply.review is longer than the time the order plans for (20 days)'],
    ],
    [
      'price breaks out of order',
      quay(
        {},
        {
          breaks: [
            { from: 72, price: '3.9 EUR' },
            { from: 48, price: '4 EUR' },
          ],
        },
      ),
      [
        'supply.suppliers.quay.quotes.cup.breaks.1.from is not more than the quantity before it',
        'supply.suppliers.quay.quotes.cup.breaks.1.price pieces cost no less per piece than a smaller quantity',
      ],
    ],
    [
      'freight steps out of order',
      quay({ freight: { steps: [{ from: 1 }, { from: 9 }, { from: 9 }] } }),
      ['supply.suppliers.quay.freight.steps.2.from does not start above the step before it'],
    ],
    [
      'no freight for small consignments',
      quay({ freight: { steps: [{ from: 5 }] } }),
      ['supply.suppliers.quay.freight.steps.0.from leaves smaller orders without a rate'],
    ],
    [
      'a rate beside steps',
      quay({ freight: { fixed: '3 EUR', steps: [{ from: 1 }] } }),
      ['supply.suppliers.quay.freight is given beside steps, which already say what freight costs'],
    ],
    [
      'a price of nothing',
      quay({}, { price: '0 EUR' }),
      ['supply.suppliers.quay.quotes.cup.price is not a price'],
    ],
    [
      'freight by mass without a mass',
      {
        suppliers: {
          quay: {
            leadTime: '7 days',
            freight: { perKg: '1 EUR' },
            quotes: { saucer: { price: '2 EUR', carton: 6 } },
          },
        },
      },
      [
        'supply.suppliers.quay.quotes.saucer.cartonMass is missing, but this supplier charges freight by weight',
      ],
    ],
  ])('%s', (_, slice, problems) => {
    expect(problemsOf(slice)).toEqual(problems);
  });

  test('the nearest name is offered', () => {
    const outcome = read({ onHand: { sauser: 3 } });
    expect(outcome).toMatchObject({
      ok: false,
      problems: [
        {
          value: 'sauser',
          remedy: 'did you mean "saucer"?',
          message:
            'supply.onHand.sauser: "sauser" is not a ware of this scenario; did you mean "saucer"?',
        },
      ],
    });
  });
});
