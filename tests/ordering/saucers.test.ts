import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { poolingGain, poolingSentence, saucerFits } from '../../src/ordering/saucers.js';

const cups = [
  { id: 'espresso-cup', footMm: 37, colour: 'white' },
  { id: 'medium-cup', footMm: 45, colour: 'White ' },
  { id: 'large-cup', footMm: 60, colour: 'grey' },
  { id: 'mug', footMm: null },
];
const saucers = [
  { id: 'small-saucer', wellMm: 40, colour: 'white' },
  { id: 'saucer', wellMm: 46, colour: 'white', takes: ['espresso-cup', 'mug'] },
  { id: 'blue-saucer', wellMm: 62, colour: 'blue' },
  { id: 'bare-saucer', wellMm: null },
];

describe('which cup sits on which saucer', () => {
  const { pairs, orphanCups, orphanSaucers, pools } = saucerFits(cups, saucers);
  const pair = (cup: string, saucer: string) =>
    pairs.find((one) => one.cup === cup && one.saucer === saucer)!;

  test('computed from foot and well with the stated clearance, given, or barred by colour', () => {
    expect(pair('espresso-cup', 'small-saucer')).toMatchObject({
      fits: true,
      reason: 'computed',
      clearanceMm: 3,
    });
    expect(pair('medium-cup', 'small-saucer')).toMatchObject({
      fits: false,
      reason: 'foot too wide',
      clearanceMm: -5,
    });
    expect(pair('medium-cup', 'saucer')).toMatchObject({
      fits: true,
      reason: 'computed',
      clearanceMm: 1,
    });
    // 9 mm would let the cup slide, but somebody tried it.
    expect(pair('espresso-cup', 'saucer')).toMatchObject({
      fits: true,
      reason: 'given',
      clearanceMm: 9,
    });
    expect(pair('mug', 'saucer')).toMatchObject({ fits: true, reason: 'given', clearanceMm: null });
    expect(pair('mug', 'small-saucer')).toMatchObject({ fits: false, reason: 'measures missing' });
    expect(pair('large-cup', 'blue-saucer')).toMatchObject({
      fits: false,
      reason: 'colours differ',
    });
    expect(saucerFits([{ id: 'c', footMm: 30 }], [{ id: 's', wellMm: 45 }]).pairs[0]).toMatchObject(
      { fits: false, reason: 'cup would slide' },
    );
  });

  test('orphans on both sides, and pools', () => {
    expect(orphanCups).toEqual(['large-cup']);
    expect(orphanSaucers).toEqual(['blue-saucer', 'bare-saucer']);
    expect(pools).toEqual([{ saucer: 'saucer', cups: ['espresso-cup', 'medium-cup', 'mug'] }]);
  });

  test('a wider well never makes a foot too wide, and every pair is judged once', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (footMm, wellMm, wider) => {
          const [before, after] = [wellMm, wellMm + wider].map(
            (well) => saucerFits([{ id: 'c', footMm }], [{ id: 's', wellMm: well }]).pairs[0]!,
          );
          if (before!.reason !== 'foot too wide') expect(after!.reason).not.toBe('foot too wide');
        },
      ),
      { seed: 20 },
    );
    expect(pairs).toHaveLength(cups.length * saucers.length);
  });
});

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
      `one saucer for 3 cups saves ${gain.saved} saucers (${gain.pooled} instead of 12 + 24 + 36)`,
    );
    expect(poolingSentence({ separate: [4, 5], pooled: 9, saved: 0 })).toBe(
      'one saucer for 2 cups saves none',
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
