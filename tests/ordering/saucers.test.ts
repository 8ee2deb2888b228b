import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { poolingGain, poolingSentence } from '../../src/ordering/saucers.js';

describe('one saucer under several cups', () => {
  test('three cups that peak at different hours', () => {
    const separate = Array.from({ length: 100 }, (_, day) => [
      10 + (day % 3),
      20 + (day % 5),
      30 + (day % 7),
    ]);
    const pooled = separate.map(([a, b, c]) => Math.round(0.7 * (a! + b! + c!)));
    const gain = poolingGain(separate, pooled, 0.95);
    // At 95 % of 100 days five may be worse: the sixth largest of each.
    expect(gain.separate).toEqual([12, 24, 36]);
    expect(gain.pooled).toBe([...pooled].sort((x, y) => y - x)[5]);
    expect(gain.saved).toBe(12 + 24 + 36 - gain.pooled);
    expect(poolingSentence(gain)).toBe(
      `sharing it between 3 cups saves ${gain.saved} saucers (${gain.pooled} instead of 12 + 24 + 36, if nothing else could run out; so the par is higher)`,
    );
    expect(poolingSentence({ separate: [4, 5], pooled: 9, saved: 0 })).toBe(
      'sharing it between 2 cups saves none',
    );
  });

  test('a pool whose peak is at most the sum of the separate ones never costs saucers at level 1', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(60), fc.nat(60)), { minLength: 1, maxLength: 80 }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (days, overlap) => {
          const gain = poolingGain(
            days,
            days.map(([a, b]) => Math.max(a, b, Math.floor((a + b) * overlap))),
            1,
          );
          expect(gain.saved).toBeGreaterThanOrEqual(0);
        },
      ),
      { seed: 20 },
    );
  });
});
