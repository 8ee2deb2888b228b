import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FACTS } from '../../src/suiting/facts.js';
import {
  brewFromExtraction,
  brewFromTds,
  isLevel,
  solidsPer100Ml,
} from '../../src/suiting/strength.js';

const seed = { seed: 20 };
const doses = fc.double({ min: 6, max: 25, noNaN: true });
const shares = fc.double({ min: 0.05, max: 0.3, noNaN: true });

describe('solids of a shot', () => {
  // The defining identity of extraction and TDS (any brewing textbook): dose × extraction = yield × TDS.
  test('dose × extraction = yield × TDS, whichever is given', () => {
    fc.assert(
      fc.property(doses, doses, shares, (doseG, yieldG, share) => {
        const byExtraction = brewFromExtraction(doseG, yieldG, share);
        expect(byExtraction.doseG * byExtraction.extraction).toBeCloseTo(
          byExtraction.yieldG * byExtraction.tds,
          10,
        );
        const back = brewFromTds(doseG, yieldG, byExtraction.tds);
        expect(back.extraction).toBeCloseTo(share, 12);
        expect(back.solidsG).toBeCloseTo(byExtraction.solidsG, 10);
      }),
      seed,
    );
  });

  // Common practice, no source: a double of 18 to 23 g at 1 : 2 and 18 to 22 % reads 8 to 12 % TDS.
  test('the usual double reads the usual TDS', () => {
    for (const doseG of FACTS.doseG.range) {
      for (const extraction of FACTS.extraction.range) {
        const { tds } = brewFromExtraction(doseG, 2 * doseG, extraction);
        expect(tds).toBeGreaterThanOrEqual(FACTS.tds.range[0]);
        expect(tds).toBeLessThanOrEqual(FACTS.tds.range[1]);
      }
    }
  });

  // By hand: 20 g × 20 % = 4 g; in 180 ml that is 2.22 g in 100 ml; two thirds of the shot 1.48.
  test('solids in 100 ml', () => {
    const double = brewFromExtraction(20, 40, 0.2);
    expect(solidsPer100Ml(double, 1, 180)).toBeCloseTo(2.2222, 4);
    expect(solidsPer100Ml(double, 2 / 3, 180)).toBeCloseTo(1.4815, 4);
  });

  test('strength goes with solids and share, and against the liquid', () => {
    fc.assert(
      fc.property(
        doses,
        shares,
        fc.double({ min: 30, max: 500, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (doseG, extraction, ml, part) => {
          const brew = brewFromExtraction(doseG, 2 * doseG, extraction);
          const whole = solidsPer100Ml(brew, 1, ml);
          expect(solidsPer100Ml(brew, part, ml)).toBeCloseTo(whole * part, 9);
          expect(solidsPer100Ml(brew, 1, ml * 2)).toBeCloseTo(whole / 2, 9);
        },
      ),
      seed,
    );
  });
});

test('the edge of the tolerance still counts as level', () => {
  expect(isLevel(1.1, 0.1)).toBe(true);
  expect(isLevel(0.9, 0.1)).toBe(true);
  expect(isLevel(0.899, 0.1)).toBe(false);
  expect(isLevel(1.101, 0.1)).toBe(false);
});
