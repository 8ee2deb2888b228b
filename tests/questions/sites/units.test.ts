/** Units and parts: every unit is in exactly one part, and missing parts are those of missing units. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { missingParts, unitsOfPart } from '../../../src/questions/sites/units.js';

describe('parts of a study', () => {
  it('hold every unit once, as evenly as can be', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 70 }), (units, of) => {
        const all = Array.from({ length: units }, (_, at) => at);
        const parts = Array.from({ length: of }, (_, at) => unitsOfPart(all, at + 1, of));
        expect(parts.flat().toSorted((a, b) => a - b)).toEqual(all);
        const sizes = parts.map((part) => part.length);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
      }),
      { seed: 1, numRuns: 60 },
    );
  });

  it('are named where they are missing, in the form that engines take', () => {
    const there = (missing: readonly number[]): boolean[] =>
      Array.from({ length: 24 }, (_, at) => !missing.includes(at));
    expect(missingParts(there([]), 10)).toBe('');
    expect(missingParts(there([2, 6, 7, 8]), 24)).toBe('3,7-9');
    // Units 2, 12 and 22 are all in part 3 of 10.
    expect(missingParts(there([2, 12, 22, 0, 1]), 10)).toBe('1-3');
    expect(missingParts(there([0, 23]), 1)).toBe('1');
  });
});
