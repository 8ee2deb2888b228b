import fc from 'fast-check';
import seedrandom from 'seedrandom';
import { describe, expect, it } from 'vitest';
import {
  chanceOfCrossing,
  criticalValue,
  reachOfMany,
} from '../../src/comparing/repeated-looks.js';
import { verdictOf } from '../../src/comparing/verdict.js';

const equal = (looks: number): number[] => Array.from({ length: looks }, (_, at) => at + 1);
const doubling = (looks: number): number[] => Array.from({ length: looks }, (_, at) => 2 ** at);

describe('repeated looks', () => {
  // Pocock's constants, two-sided .05, as published (Jennison & Turnbull 2000, table 2.1).
  it.each([
    [2, 2.178],
    [3, 2.289],
    [4, 2.361],
    [5, 2.413],
  ])('meets the published constant of %i equal looks', (looks, constant) =>
    expect(criticalValue(0.05, equal(looks))).toBeCloseTo(constant, 3),
  );

  // Error of testing at 1.96 at every look (Armitage, McPherson & Rowe 1969, table 2).
  it.each([
    [2, 0.0831],
    [3, 0.1073],
    [4, 0.1262],
    [5, 0.1417],
  ])('meets the published error of %i looks without a correction', (looks, error) =>
    expect(chanceOfCrossing(1.959964, equal(looks))).toBeCloseTo(error, 4),
  );

  // Worked out independently by another program for looks at doubling sizes, one-sided .05.
  it.each([
    [2, 1.8754],
    [3, 2.0177],
    [4, 2.1215],
    [5, 2.2031],
  ])('meets the constant of %i doubling looks, one-sided', (looks, constant) =>
    expect(criticalValue(0.05, doubling(looks), 1)).toBeCloseTo(constant, 3),
  );

  it('one look at one difference is the ordinary interval', () => {
    expect(criticalValue(0.05, [1000])).toBeCloseTo(1.959964, 5);
    // Any table of Student's t: 0.975 at 20 degrees.
    expect(reachOfMany(0.95, 1, [1000], 20)).toBeCloseTo(2.086, 3);
  });

  it('lies between no correction and Bonferroni, and rises with looks and differences', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.2, noNaN: true }),
        fc.integer({ min: 2, max: 5 }),
        (alpha, looks) => {
          const c = criticalValue(alpha, doubling(looks));
          expect(c).toBeGreaterThan(criticalValue(alpha, [1]));
          expect(c).toBeLessThan(criticalValue(alpha / looks, [1]));
          expect(reachOfMany(1 - alpha, 6, doubling(looks), 60)).toBeGreaterThan(
            reachOfMany(1 - alpha, 2, doubling(looks), 60),
          );
        },
      ),
      { seed: 1, numRuns: 20 },
    ));

  it('keeps its word on drawn sums: some look misses in 5 % of 4,000 runs, within four standard errors', () => {
    const random = seedrandom('looks');
    const normal = (): number =>
      Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const c = criticalValue(0.05, [1, 2, 4]);
    let missed = 0;
    for (let run = 0; run < 4000; run += 1) {
      const one = normal();
      const two = one + normal();
      const four = two + Math.SQRT2 * normal();
      if (Math.max(Math.abs(one), Math.abs(two) / Math.SQRT2, Math.abs(four) / 2) > c) missed += 1;
    }
    expect(Math.abs(missed / 4000 - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / 4000));
  });

  it('refuses looks that do not rise', () =>
    expect(() => criticalValue(0.05, [2, 2])).toThrow(RangeError));
});

describe('a verdict', () => {
  it.each([
    [-9, -1, 0, 'cheaper'],
    [-9, -1, 2, 'open'],
    [1, 9, 0, 'dearer'],
    [-1, 1, 0, 'open'],
    [-1, 1, 2, 'alike'],
    [0, 0, 0, 'open'],
  ] as const)(
    'from %d to %d with an indifference of %d is %s',
    (low, high, indifference, verdict) =>
      expect(verdictOf({ difference: (low + high) / 2, low, high }, indifference)).toBe(verdict),
  );
});
