import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brimFor, fillFor, pour, pourFaults, steamShare } from '../../src/suiting/pour.js';
import { FACTS } from '../../src/suiting/facts.js';
import { side } from './parts.js';

describe('steam', () => {
  // Common practice, no source: steaming adds about a tenth of water.
  test('steaming cold milk to serving temperature adds about a tenth', () => {
    expect(steamShare(5, 62)).toBeGreaterThan(0.08);
    expect(steamShare(5, 62)).toBeLessThan(0.11);
  });

  // Energy balance done apart, in kJ for a kilogram of milk: what the steam gives is what the milk takes.
  test('heat given equals heat taken', () => {
    const steamKg = steamShare(4, 60);
    const given = steamKg * (2257 + 4.186 * (100 - 60));
    expect(given).toBeCloseTo(3.93 * (60 - 4), 9);
  });

  test('no steam for milk that is warm enough', () => {
    expect(steamShare(62, 62)).toBe(0);
  });
});

describe('a pour', () => {
  // By hand: 200 ml brim at 95 % is 190 ml; 40 ml of shot leave 150 ml of steamed milk, 1 : 3.75; 4 g in 190 ml.
  test('without foam', () => {
    const poured = pour(side(200));
    expect(poured.servedMl).toBeCloseTo(190, 9);
    expect(poured.toppedMl).toBeCloseTo(150, 9);
    expect(poured.milkRatio).toBeCloseTo(3.75, 9);
    expect(poured.solidsPer100Ml).toBeCloseTo(400 / 190, 9);
    expect(poured.coffeeG).toBe(20);
  });

  // By hand: 10 mm of foam in 80 mm is 50.27 ml, at 60 % air 30.16 ml that dilute nothing.
  test('air in the foam takes room and dilutes nothing', () => {
    const poured = pour(side(200, { foam: { depthMm: 10 } }));
    expect(poured.foamMl).toBeCloseTo(Math.PI * 16, 9);
    expect(poured.servedMl).toBeCloseTo(190 - 0.6 * Math.PI * 16, 9);
    const byShare = pour(side(200, { foam: { share: 0.2 } }));
    expect(byShare.servedMl).toBeCloseTo(190 * (1 - 0.12), 9);
  });

  test('cold milk and steam make up the steamed milk by mass', () => {
    const poured = pour(side(200));
    expect(poured.coldMilkMl * FACTS.milkDensity.value + poured.steamG).toBeCloseTo(
      150 * FACTS.milkDensity.value,
      9,
    );
    expect(poured.massG).toBeCloseTo(40 + 150 * FACTS.milkDensity.value, 9);
  });

  test('a shot alone fills as far as it goes', () => {
    const poured = pour(side(70, { topUp: 'nothing', fill: null }));
    expect(poured.servedMl).toBe(40);
    expect(poured.fill).toBeCloseTo(40 / 70, 12);
    expect(poured.milkRatio).toBeNull();
    expect(poured.solidsPer100Ml).toBeCloseTo(10, 9);
  });

  test('water is no milk: no steam, no milk', () => {
    const poured = pour(side(200, { topUp: 'water' }));
    expect(poured.coldMilkMl).toBe(0);
    expect(poured.steamG).toBe(0);
    expect(poured.massG).toBeCloseTo(190, 9);
  });

  test('parts sum, and the inverse questions give the volume asked for', () => {
    const foams = fc.oneof(
      fc.constant(null),
      fc.record({ share: fc.double({ min: 0, max: 0.5, noNaN: true }) }),
      fc.record({ depthMm: fc.double({ min: 0, max: 15, noNaN: true }) }),
    );
    fc.assert(
      fc.property(
        fc.double({ min: 150, max: 500, noNaN: true }),
        fc.double({ min: 0.6, max: 1, noNaN: true }),
        foams,
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (brimMl, fill, foam, shotShare) => {
          const one = side(brimMl, { fill, foam, shotShare });
          fc.pre(pourFaults(one).length === 0);
          const poured = pour(one);
          expect(poured.airMl + poured.servedMl).toBeCloseTo(fill * brimMl, 8);
          expect(poured.shotMl + poured.toppedMl).toBeCloseTo(poured.servedMl, 8);
          const wanted = poured.servedMl * 0.9;
          expect(
            pour({ ...one, space: { ...one.space, brimMl: brimFor(one, wanted) } }).servedMl,
          ).toBeCloseTo(wanted, 7);
          expect(
            pour({ ...one, recipe: { ...one.recipe, fill: fillFor(one, wanted) } }).servedMl,
          ).toBeCloseTo(wanted, 7);
          const poursIt = pour({
            ...one,
            recipe: { ...one.recipe, fill: null, pouredMl: poured.servedMl },
          });
          expect(poursIt.fill).toBeCloseTo(fill, 8);
        },
      ),
      { seed: 20 },
    );
  });
});

describe('what cannot be poured', () => {
  test.each([
    ['over the brim', side(200, { fill: 1.05 }), 'fill'],
    ['liquid over the brim', side(200, { fill: null, pouredMl: 210 }), 'pours'],
    [
      'liquid and its foam over the brim',
      side(200, { fill: null, pouredMl: 195, foam: { depthMm: 10 } }),
      'pours',
    ],
    ['a shot larger than its vessel', side(35, { topUp: 'nothing', fill: null }), 'shot'],
    ['a shot larger than the liquid', side(40, { fill: 0.9 }), 'share'],
    ['foam deeper than the cup', side(60, { foam: { depthMm: 30 }, airInFoam: 0.3 }), 'foam'],
    ['foam as a depth without a rim', side(200, { foam: { depthMm: 10 } }, null), 'foam'],
  ])('%s', (_, one, field) => {
    expect(pourFaults(one).map((fault) => fault.field)).toEqual([field]);
    expect(pourFaults(one)[0]!.remedy).not.toBe('');
  });

  test('a sound pour has no fault, to the brim included', () => {
    expect(pourFaults(side(200))).toEqual([]);
    expect(pourFaults(side(200, { fill: 1 }))).toEqual([]);
  });
});
