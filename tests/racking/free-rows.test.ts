/** Rows that are each free: known layouts and laws. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outlineOf } from '../../src/racking/outline.js';
import { piecesPerRack, rackLayout } from '../../src/racking/layout.js';
import { piecesAtMost } from '../../src/racking/turns.js';
import { leastGap, leastWallGap } from './oracle.js';
import { cup, open, someRack, someVessel } from './some.js';

describe('rows that are each turned and shifted', () => {
  // Found by a search of another kind over all turns and shifts, and measured by the plain geometry of `oracle.ts`.
  test.each([
    ['a straight mug', cup(85, 34, 18), 24],
    ['an espresso cup', cup(61, 21, 11), 49],
  ])('%s: as many as are known to fit', (_, vessel, pieces) => {
    const layout = rackLayout(vessel, open);
    expect(layout.pieces).toBeGreaterThanOrEqual(pieces);
    expect(layout.positions).toHaveLength(layout.pieces);
    expect(leastGap(vessel, layout.positions)).toBeGreaterThan(3 - 1e-4);
    expect(leastWallGap(vessel, layout.positions, 460, 460)).toBeGreaterThan(3 - 1e-4);
  });

  test('no layout holds more than discs of the body could (Oler 1961), and each keeps its gaps', () => {
    let mixed = 0;
    fc.assert(
      fc.property(someVessel, someRack, (vessel, rack) => {
        if (vessel.rimMm < 70) return;
        const layout = rackLayout(vessel, rack);
        const walls = {
          width: rack.usableMm!,
          depth: rack.usableAcrossMm!,
          keepClear: null,
        };
        expect(layout.pieces).toBeLessThanOrEqual(
          piecesAtMost(outlineOf(vessel).body, walls, rack.clearanceMm!),
        );
        if (layout.pieces === 0) return;
        expect(leastGap(vessel, layout.positions)).toBeGreaterThan(rack.clearanceMm! - 1e-4);
        expect(leastWallGap(vessel, layout.positions, walls.width, walls.depth)).toBeGreaterThan(
          rack.clearanceMm! - 1e-4,
        );
        if (layout.pattern === 'mixed') mixed += 1;
      }),
      { seed: 40, numRuns: 10 },
    );
    expect(mixed).toBeGreaterThan(0);
  });

  test('twice as large in every measure is as many', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 80, max: 120, noNaN: true }),
        fc.double({ min: 0.2, max: 0.45, noNaN: true }),
        (rim, share) => {
          const twice = { ...open, usableMm: 920, clearanceMm: 6 };
          expect(piecesPerRack(cup(2 * rim, 2 * share * rim, 30), twice)).toBe(
            piecesPerRack(cup(rim, share * rim, 15), { ...open, usableMm: 460, clearanceMm: 3 }),
          );
        },
      ),
      { seed: 41, numRuns: 4 },
    );
  });

  test('an angle named is never better than all of them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 75, max: 120, noNaN: true }),
        fc.double({ min: 0.2, max: 0.45, noNaN: true }),
        fc.integer({ min: 0, max: 30 }),
        (rim, share, third) => {
          const vessel = cup(rim, share * rim, 0.18 * rim);
          const named = { pattern: 'mixed', angleDeg: 3 * third } as const;
          expect(piecesPerRack(vessel, open, named)).toBeLessThanOrEqual(
            piecesPerRack(vessel, open),
          );
        },
      ),
      { seed: 42, numRuns: 5 },
    );
  });
});
