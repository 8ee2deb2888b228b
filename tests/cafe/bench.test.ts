import fc from 'fast-check';
import { expect, it } from 'vitest';
import { leastCommonMultiple } from '../../src/cafe/bench.js';

it('the least common multiple is the first that counting up to it finds', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }), (a, b) => {
      let found = a;
      while (found % b !== 0) found += a;
      expect(leastCommonMultiple(a, b)).toBe(found);
      expect(leastCommonMultiple(b, a)).toBe(found);
    }),
    { seed: 63, numRuns: 100 },
  );
  // Exact up to 2⁵³: the whole is never multiplied before it is divided.
  expect(leastCommonMultiple(2 ** 52, 2 ** 51)).toBe(2 ** 52);
});
