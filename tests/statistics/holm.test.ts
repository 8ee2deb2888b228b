import fc from 'fast-check';
import { expect, it } from 'vitest';
import { holm } from '../../src/statistics/holm.js';

/** All that can be chosen of some things. */
const subsets = <One>(of: readonly One[]): One[][] =>
  of.reduce<One[][]>((all, one) => [...all, ...all.map((some) => [...some, one])], [[]]);

// The closure principle (Marcus, Peritz and Gabriel, Biometrika 63, 1976): one stands where every set with it in has a chance below
// alpha shared out among the set. Holm's steps are a short way to the same answer.
it('says what testing every set of the chances says', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(0.05, 0.2),
      fc.array(fc.nat(40), { maxLength: 6 }),
      (alpha, some) => {
        // Among them the very shares of alpha that they are held against.
        const chances = some.map((one) => (one < 12 ? alpha / (1 + (one % 6)) : one / 500));
        const sets = subsets(chances.map((_, at) => at));
        const stands = chances.map((_, at) =>
          sets
            .filter((set) => set.includes(at))
            .every((set) => Math.min(...set.map((one) => chances[one]!)) < alpha / set.length),
        );
        expect(holm(chances, alpha)).toEqual(stands);
        if (alpha === 0.05) expect(holm(chances)).toEqual(stands);
      },
    ),
    { seed: 64, numRuns: 200 },
  );
});
