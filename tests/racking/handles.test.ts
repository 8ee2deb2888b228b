/** Racks just wide enough for handles at 45°, and one tenth too narrow: the packer against what plane geometry gives on paper (no source). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compartmentPositions, smallestSquareOpening } from '../../src/racking/compartments.js';
import { piecesPerRack } from '../../src/racking/layout.js';
import { planAreaOf } from '../../src/racking/outline.js';
import type { NamedPattern } from '../../src/racking/open-rack.js';
import type { GridRack, OpenRack } from '../../src/racking/rack.js';
import { leastWallGap } from './oracle.js';
import { cup, open } from './some.js';

const SQUARE_ROOT = Math.SQRT2;
const at45: NamedPattern = { pattern: 'grid', angleDeg: 45 };
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** The narrowest rack in which n × n pieces stand at a pitch of rim and gap with their handles at 45°. */
const rackFor = (n: number, rim: number, handle: number, width: number, gap: number): OpenRack => {
  const reach = Math.max(rim / 2, (rim / 2 + handle + width / 2) / SQUARE_ROOT);
  return { ...open, usableMm: rim / 2 + reach + (n - 1) * (rim + gap) + 2 * gap, clearanceMm: gap };
};

describe('a handle at 45° on a square grid', () => {
  test('is free against its neighbours up to (√2 - 1)(D + g), while w ≤ (√2 - 1) D - (2 - √2) g', () => {
    fc.assert(
      fc.property(double(55, 120), double(0, 5), double(0.2, 1), (rim, gap, share) => {
        const longest = (SQUARE_ROOT - 1) * (rim + gap);
        const width = share * 0.9 * ((SQUARE_ROOT - 1) * rim - (2 - SQUARE_ROOT) * gap);
        const fits = (handle: number) =>
          piecesPerRack(cup(rim, handle, width), rackFor(4, rim, handle, width, gap), at45);
        expect(fits(longest - 0.001)).toBe(16);
        expect(fits(longest + 0.05)).toBeLessThan(16);
      }),
      { seed: 20, numRuns: 100 },
    );
  });

  test('if long, is free only while it is narrow enough', () => {
    fc.assert(
      fc.property(double(55, 120), double(0, 4), (rim, gap) => {
        const handle = (SQUARE_ROOT - 1) * (rim + gap) - 0.001;
        const widest = (SQUARE_ROOT - 1) * rim - (2 - SQUARE_ROOT) * gap;
        const fits = (width: number) =>
          piecesPerRack(cup(rim, handle, width), rackFor(4, rim, handle, width, gap), at45);
        expect(fits(widest - 0.001)).toBe(16);
        expect(fits(widest + 0.05)).toBeLessThan(16);
      }),
      { seed: 21, numRuns: 100 },
    );
  });

  test('is free at the wall up to h + w/2 = (√2 - 1) D/2', () => {
    fc.assert(
      fc.property(double(55, 120), double(0, 5), double(0.1, 0.6), (rim, gap, share) => {
        const both = ((SQUARE_ROOT - 1) * rim) / 2;
        const width = 2 * share * both;
        const rack: OpenRack = { ...open, usableMm: 4 * rim + 5 * gap, clearanceMm: gap };
        expect(piecesPerRack(cup(rim, both - width / 2 - 0.001, width), rack, at45)).toBe(16);
        expect(piecesPerRack(cup(rim, both - width / 2 + 0.01, width), rack, at45)).toBeLessThan(
          16,
        );
      }),
      { seed: 22, numRuns: 100 },
    );
  });
});

describe('the smallest square opening', () => {
  test('takes every piece, and a narrower one takes it at no angle', () => {
    fc.assert(
      fc.property(
        double(50, 100),
        double(0.05, 0.6),
        double(0.05, 0.9),
        fc.constantFrom('flat' as const, 'round' as const),
        (rim, h, w, tip) => {
          const vessel = cup(rim, h * rim, w * rim, tip);
          const { openingMm, angleDeg } = smallestSquareOpening(vessel, 1);
          const one: GridRack = {
            id: 'one',
            kind: 'grid',
            cells: 1,
            usableMm: openingMm,
            openingMm,
            clearanceMm: 1,
          };
          expect(
            leastWallGap(vessel, compartmentPositions(vessel, one, angleDeg), openingMm, openingMm),
          ).toBeGreaterThan(1 - 1e-6);
          for (let degrees = 0; degrees < 360; degrees += 1.5) {
            const narrow = { ...one, usableMm: openingMm - 0.01 };
            expect(
              leastWallGap(
                vessel,
                compartmentPositions(vessel, narrow, degrees),
                openingMm - 0.01,
                openingMm - 0.01,
              ),
            ).toBeLessThan(1);
          }
        },
      ),
      { seed: 24, numRuns: 30 },
    );
  });
});

test('square pieces straight on a grid: whole lengths and whole widths', () => {
  fc.assert(
    fc.property(double(40, 150), double(40, 150), double(0, 5), (long, broad, gap) => {
      const vessel = {
        shape: 'bowl' as const,
        footprint: 'square' as const,
        rimMm: long,
        rimAcrossMm: broad,
        heightMm: 40,
        massG: 200,
      };
      const whole = (side: number): number => Math.floor((460 - gap) / (side + gap));
      expect(
        piecesPerRack(vessel, { ...open, clearanceMm: gap }, { pattern: 'grid', angleDeg: 0 }),
      ).toBe(whole(long) * whole(broad));
    }),
    { seed: 25, numRuns: 200 },
  );
});

test('the area of a plan: disc, rectangle, ellipse, and a bar beyond a square', () => {
  const plain = { shape: 'bowl' as const, heightMm: 40, massG: 200, rimMm: 100, rimAcrossMm: 60 };
  expect(planAreaOf({ ...plain, footprint: 'round' })).toBeCloseTo(Math.PI * 2500, 6);
  expect(planAreaOf({ ...plain, footprint: 'square' })).toBeCloseTo(6000, 6);
  expect(planAreaOf({ ...plain, footprint: 'oval' })).toBeCloseTo(Math.PI * 1500, 6);
  expect(
    planAreaOf({ ...plain, footprint: 'square', handleMm: 20, handleWidthMm: 12 }),
  ).toBeCloseTo(6240, 6);
  // With a half-round tip of radius 6: 14 mm of bar and half a disc.
  expect(
    planAreaOf({
      ...plain,
      footprint: 'square',
      handleMm: 20,
      handleWidthMm: 12,
      handleTip: 'round',
    }),
  ).toBeCloseTo(6000 + 14 * 12 + Math.PI * 18, 0);
});
