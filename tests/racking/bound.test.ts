/** No count is above its bound, and the bound is never below a packing that is known to exist. */
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { mostPossible } from '../../src/racking/bound.js';
import { piecesPerRack } from '../../src/racking/layout.js';
import { tryOnEdge } from '../../src/racking/pegs.js';
import type { PegRack } from '../../src/racking/rack.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { cup, disc, open, saucer, someRack, someVessel, spoon } from './some.js';

const table = readFileSync(
  new URL('../../shared/checks/circles-in-square.csv', import.meta.url),
  'utf8',
)
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
  .map(([n, radius]) => ({ n: Number(n), radius: Number(radius) }));
const atMost = (vessel: Vessel, rack: Parameters<typeof mostPossible>[1]): number =>
  mostPossible(vessel, rack)!.pieces;

describe('the most that one rack can hold', () => {
  test('is never below what a named pattern holds (of the best of all patterns, laws.test.ts)', () => {
    fc.assert(
      fc.property(
        someVessel,
        someRack,
        fc.constantFrom('grid' as const, 'staggered' as const, 'turned' as const),
        fc.constantFrom(0, 30, 45, 90),
        (vessel, rack, pattern, angleDeg) => {
          expect(piecesPerRack(vessel, rack, { pattern, angleDeg })).toBeLessThanOrEqual(
            atMost(vessel, rack),
          );
        },
      ),
      { seed: 32, numRuns: 200 },
    );
  });

  // E. Specht's table of best-known packings of equal circles in a square: n circles of this radius do go in.
  test.each(table)(
    'leaves room for the $n circles that are known to go in a square',
    ({ n, radius }) => {
      const rack = { ...open, usableMm: 460, clearanceMm: 3 };
      const widest = 2 * 457 * radius - 3;
      expect(atMost(disc(widest), rack)).toBeGreaterThanOrEqual(n);
      // So near for discs that a wrong constant would show: no more than 4 above, up to 36.
      expect(atMost(disc(widest), rack)).toBeLessThanOrEqual(n + 4);
    },
  );

  // E. Friedman, Packing unit squares in squares (Electronic Journal of Combinatorics, DS7), from memory: 5 go in a
  // square of 2 + 1/√2, 10 in one of 3 + 1/√2, 19 in one of 3 + 4/3 √2.
  test.each([
    [5, 2 + Math.SQRT1_2],
    [10, 3 + Math.SQRT1_2],
    [19, 3 + (4 / 3) * Math.SQRT2],
  ])('leaves room for %i turned squares in a square', (n, side) => {
    const square: Vessel = { ...disc(100), footprint: 'square', rimAcrossMm: 100 };
    const rack = { ...open, usableMm: 100 * side, clearanceMm: 0 };
    expect(atMost(square, rack)).toBeGreaterThanOrEqual(n);
    expect(atMost(square, rack)).toBeLessThanOrEqual(Math.floor(side * side + 1e-9));
  });

  test('counts the handle: long handles leave room for fewer than the bodies alone', () => {
    expect(mostPossible(cup(60, 50, 30), open)!.by).toBe('area');
    expect(atMost(cup(60, 50, 30), open)).toBeLessThan(atMost(cup(60, 0, 30), open));
  });

  test('is 0 where the piece is wider than the rack, and what the rack has elsewhere', () => {
    expect(atMost(disc(470), open)).toBe(0);
    expect(mostPossible(disc(60), { id: 'g', kind: 'grid', cells: 5, openingMm: 88 })).toEqual({
      pieces: 25,
      by: 'compartments',
    });
    expect(mostPossible(disc(60), { ...open, maxMassG: 4000, emptyMassG: 2000 })).toEqual({
      pieces: 10,
      by: 'mass',
    });
    expect(mostPossible(spoon, { id: 'b', kind: 'basket' })).toBeNull();
  });

  test('on edge, no choice of slots beats the least gap', () => {
    const lengths = fc.record({
      rim: fc.double({ min: 90, max: 200, noNaN: true }),
      depth: fc.double({ min: 8, max: 40, noNaN: true }),
      pitch: fc.double({ min: 15, max: 60, noNaN: true }),
      lean: fc.double({ min: 0, max: 40, noNaN: true }),
    });
    fc.assert(
      fc.property(lengths, ({ rim, depth, pitch, lean }) => {
        const piece = { ...saucer, rimMm: rim, depthMm: depth };
        const rack: PegRack = {
          id: 'peg',
          kind: 'peg',
          slots: Math.floor(460 / pitch),
          pitchMm: pitch,
          leanDeg: lean,
        };
        const pieces = piecesPerRack(piece, rack);
        expect(pieces).toBeLessThanOrEqual(atMost(piece, rack));
        expect(tryOnEdge(rack, pieces)).toBe(pieces > 36);
      }),
      { seed: 33, numRuns: 300 },
    );
  });
});
