import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import published from '../../shared/checks/published.json' with { type: 'json' };
import {
  annuityFactor,
  netPresentValue,
  presentCost,
  yearlyPayment,
} from '../../src/comparing/annuity.js';
import { breakEven } from '../../src/comparing/break-even.js';
import { waterHeatKWh } from '../../src/comparing/costs.js';

describe('money over years', () => {
  // Annuity table of Brealey, Myers & Allen, Principles of Corporate Finance, appendix: from memory, three decimals.
  it.each([
    [5, 0.08, 3.993],
    [10, 0.1, 6.145],
    [20, 0.05, 12.462],
    [3, 0.15, 2.283],
  ])('%d years at a rate of %d are worth %d', (years, rate, factor) =>
    expect(annuityFactor(rate, years)).toBeCloseTo(factor, 3),
  );

  const rates = fc.double({ min: 0, max: 0.4, noNaN: true });
  const years = fc.integer({ min: 1, max: 40 });

  it('an even payment each year is worth, flow by flow, what was paid', () => {
    fc.assert(
      fc.property(rates, years, fc.integer({ min: 1, max: 1_000_000 }), (rate, life, price) => {
        const flows = [0, ...Array.from({ length: life }, () => yearlyPayment(price, rate, life))];
        expect(netPresentValue(rate, flows) / price).toBeCloseTo(1, 9);
      }),
    );
  });

  it('a thing whose life divides the horizon costs what buying it again and again costs', () => {
    fc.assert(
      fc.property(
        rates,
        fc.integer({ min: 1, max: 10 }),
        fc.integer({ min: 1, max: 4 }),
        (rate, life, times) => {
          const flows = Array.from({ length: life * times }, (_, year) =>
            year % life === 0 ? 1000 : 0,
          );
          expect(
            presentCost(1000, life, rate, life * times) / netPresentValue(rate, flows),
          ).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('refuses no years', () => expect(() => annuityFactor(0.05, 0)).toThrow(RangeError));
});

describe('the heat in water', () => {
  const value = (id: string) => published.find((one) => one.id === id)!;

  it('is that of the published calorie', () =>
    expect(waterHeatKWh(1, 1) * 1000).toBeCloseTo(
      (value('water-heat').expected as { Wh: number }).Wh,
      12,
    ));

  it('of a rack at the ENERGY STAR water limit, from 50 to 180 °F', () => {
    const { inputs, expected } = value('water-heat-gal') as unknown as {
      inputs: { gal: number; fromF: number; toF: number };
      expected: { kWh: number };
    };
    const litres = inputs.gal * 3.785411784;
    expect(waterHeatKWh(litres, ((inputs.toF - inputs.fromF) * 5) / 9)).toBeCloseTo(
      expected.kWh,
      6,
    );
  });
});

describe('the price at which a ranking flips', () => {
  it('makes both cost the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9999 }),
        fc.integer({ min: -5000, max: 5000 }),
        fc.integer({ min: 1, max: 40 }),
        (price, rest, units) => {
          const { flipsAt } = breakEven('a cup', price, rest + units * price, units * price);
          if (flipsAt === null) expect(rest).toBeGreaterThanOrEqual(0);
          else expect(rest + units * flipsAt).toBeCloseTo(0, 6);
        },
      ),
    );
  });

  it('is none where the price is in both alike', () =>
    expect(breakEven('water', 4, 100, 0).flipsAt).toBeNull());
});
