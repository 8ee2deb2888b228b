/** The two things everything rests on: that distances are right, and that the search for a pitch misses none. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { piecesPerRack, rackLayout } from '../../src/racking/layout.js';
import { outlineOf } from '../../src/racking/outline.js';
import { gapsOf } from '../../src/racking/verify.js';
import type { Vessel } from '../../src/racking/vessel.js';
import { leastGap, leastWallGap } from './oracle.js';
import { cup, open, someVessel } from './some.js';

const within = (far: number) => fc.double({ min: -far, max: far, noNaN: true });

test('the check of layouts measures as another geometry does, also where pieces overlap or stand out', () => {
  let [apart, over] = [0, 0];
  fc.assert(
    fc.property(
      someVessel,
      within(200),
      within(200),
      fc.integer({ min: 0, max: 359 }),
      fc.integer({ min: 0, max: 359 }),
      (vessel, x, y, a, b) => {
        const pair = [
          { x: 250, y: 250, angleDeg: a },
          { x: 250 + x, y: 250 + y, angleDeg: b },
        ];
        const gaps = gapsOf(outlineOf(vessel), pair, 460, 460);
        expect(gaps.wallMm).toBeCloseTo(leastWallGap(vessel, pair, 460, 460), 6);
        const expected = leastGap(vessel, pair);
        // Of parts without a radius that overlap, both say 0.
        expect(gaps.betweenMm).toBeCloseTo(expected, 6);
        if (expected > 0) apart += 1;
        else over += 1;
      },
    ),
    { seed: 20, numRuns: 1500 },
  );
  expect(Math.min(apart, over)).toBeGreaterThan(200);
});

/** Pieces of one angle in evenly spaced rows, every second one shifted by a share of the pitch: every pitch in steps of 1 mm. */
function scannedRows(vessel: Vessel, angleDeg: number, shift: number): number {
  const [side, gap, step] = [460, 3, 1];
  // How far the piece stands out over the left wall when its middle is on it, turned so that each side comes to the left.
  const reach = (turn: number): number =>
    -leastWallGap(vessel, [{ x: 0, y: 5e5, angleDeg: angleDeg + turn }], 1e6, 1e6);
  const room = {
    x: side - 2 * gap - reach(0) - reach(180),
    y: side - 2 * gap - reach(-90) - reach(90),
  };
  const clear = (x: number, y: number): boolean =>
    leastGap(vessel, [
      { x: 0, y: 0, angleDeg },
      { x, y, angleDeg },
    ]) >= gap;
  let most = 0;
  for (let pitch = vessel.rimMm + gap; pitch <= room.x; pitch += step) {
    if (!clear(pitch, 0)) continue;
    const counts = [0, shift].map((share) => Math.floor(room.x / pitch - share) + 1);
    const pieces = (rows: number): number =>
      Math.ceil(rows / 2) * counts[0]! + Math.floor(rows / 2) * counts[1]!;
    let rise = 20;
    // Row on row, and the next but one, in either order of the shift.
    const blocked = (): boolean =>
      [-2, -1, 0, 1, 2].some(
        (i) =>
          !clear((i + shift) * pitch, rise) ||
          !clear((i - shift) * pitch, rise) ||
          !clear(i * pitch, 2 * rise),
      );
    while (pieces(Math.floor(room.y / rise) + 1) > most && blocked()) rise += step;
    most = Math.max(most, pieces(Math.floor(room.y / rise) + 1));
  }
  return most;
}

describe('the search for a pitch', () => {
  test.each([
    [61, 21, 11, 45],
    [89.5, 28.5, 14, 0],
    [85, 34, 15, 30],
  ])(
    'rim %d, handle %d by %d at %d°: no fewer than by trying every pitch',
    (rim, handle, width, angleDeg) => {
      const vessel = cup(rim, handle, width);
      expect(
        piecesPerRack(vessel, open, { pattern: 'staggered', angleDeg }),
      ).toBeGreaterThanOrEqual(scannedRows(vessel, angleDeg, 0.5));
    },
  );

  // Long handles at odd angles: the widest pitch that leaves as many in a row is not the one that lets most rows in.
  test.each([
    [111.52, 59.7, 5.82, 34, 12],
    [108.1, 86.36, 15.17, 61, 10],
    [109.32, 84.62, 7.04, 58, 10],
    [105.09, 76.14, 11.17, 57, 12],
    [106.39, 46.73, 12.98, 74, 13],
  ])(
    'rim %d, handle %d by %d at %d°: finds the layout of %d',
    (rim, handle, width, angleDeg, pieces) => {
      const vessel = cup(rim, handle, width);
      const layout = rackLayout(vessel, open, { pattern: 'staggered', angleDeg });
      expect(layout.pieces).toBe(pieces);
      expect(leastGap(vessel, layout.positions)).toBeGreaterThan(3 - 1e-4);
      expect(leastWallGap(vessel, layout.positions, 460, 460)).toBeGreaterThan(3 - 1e-4);
    },
  );
});
