import { describe, expect, test } from 'vitest';
import published from '../../shared/checks/published.json' with { type: 'json' };
import { ML_PER_FLUID_OUNCE } from '../../src/quantities/unit-sizes.js';
import { paperBrim } from '../../src/suiting/papers.js';

const paper = (
  nominalMl: number | null,
  brimMl: number | null = null,
): Parameters<typeof paperBrim>[0] => ({ nominalMl, brimMl });

describe('paper cups', () => {
  // NIST Handbook 44, appendix C: a US gallon is 231 cubic inches of 16.387064 ml; an ounce 1/128 of it.
  test('the US fluid ounce is exact', () => {
    expect(ML_PER_FLUID_OUNCE).toBe((231 * 16.387064) / 128);
    const check = published.find((entry) => entry.id === 'us-floz')!.expected as { ml: number };
    expect(ML_PER_FLUID_OUNCE).toBe(check.ml);
  });

  // Common practice, no source: a 12 oz cup is 355 to 360 ml nominal.
  test('12 oz is 355 ml nominal, and 360 ml names much the same cup', () => {
    expect(12 * ML_PER_FLUID_OUNCE).toBeGreaterThanOrEqual(354.5);
    expect(12 * ML_PER_FLUID_OUNCE).toBeLessThanOrEqual(360);
    const [byOunces, byMetric] = [
      paperBrim(paper(12 * ML_PER_FLUID_OUNCE))!,
      paperBrim(paper(360))!,
    ];
    expect(Math.abs(byMetric.brimMl / byOunces.brimMl - 1)).toBeLessThan(0.02);
  });

  // Reported by sellers, common practice: "8 oz" holds 265 to 295 ml, "12 oz" 385 to 420 ml to the brim.
  test.each([
    [8, 265, 295],
    [12, 385, 420],
  ])('%d oz', (ounces, low, high) => {
    const brim = paperBrim(paper(ounces * ML_PER_FLUID_OUNCE))!;
    expect(brim.lowMl).toBeCloseTo(low, 9);
    expect(brim.highMl).toBeCloseTo(high, 9);
    expect(brim.basis).toBe('assumed');
  });

  test('sizes between and beyond stay above their nominal size and in order', () => {
    const sizes = [4, 6, 8, 10, 12, 16, 20].map((ounces) => ({
      nominal: ounces * ML_PER_FLUID_OUNCE,
      brim: paperBrim(paper(ounces * ML_PER_FLUID_OUNCE))!,
    }));
    for (const { nominal, brim } of sizes) expect(brim.lowMl).toBeGreaterThan(nominal);
    for (let i = 1; i < sizes.length; i++) {
      expect(sizes[i]!.brim.lowMl).toBeGreaterThan(sizes[i - 1]!.brim.lowMl);
      expect(sizes[i]!.brim.highMl).toBeGreaterThan(sizes[i - 1]!.brim.highMl);
    }
  });

  test('a measured brim goes before a guess; nothing known is said', () => {
    expect(paperBrim(paper(236, 281))).toEqual({
      lowMl: 281,
      brimMl: 281,
      highMl: 281,
      basis: 'measured',
    });
    expect(paperBrim(paper(null))).toBeNull();
  });
});
