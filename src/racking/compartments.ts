/**
 * Compartment racks: one piece a compartment, or none.
 */
import { square } from '../elementary/powers.js';
import { direction, reach, rotated } from './convex.js';
import { outlineOf } from './outline.js';
import type { LoadingRule } from './open-rack.js';
import { clearanceOf, usableOf } from './rack.js';
import type { GridRack } from './rack.js';
import type { Placed } from './meeting.js';
import type { Vessel } from './vessel.js';

/** The narrowest square opening for a piece, and the angle of the handle at which it goes in. */
export interface Opening {
  readonly openingMm: number;
  readonly angleDeg: number;
}

/**
 * The smallest square opening that takes the piece, `clearanceMm` kept free on all sides.
 *
 * Between two angles at which the piece's farthest points change, its span along a wall is a concave function of the
 * angle, so the narrowest is at one of a few: along the wall, at 45°, or where two spans are equal; a search
 * from 0° to 90° in half degrees, refined, finds it for any footprint.
 */
export function smallestSquareOpening(
  vessel: Vessel,
  clearanceMm = 0,
  rule: LoadingRule = 'best',
): Opening {
  const { body, handle, plainDisc } = outlineOf(vessel);
  const parts = handle === null ? [body] : [body, handle];
  const far = (degrees: number, x: number, y: number): number =>
    Math.max(...parts.map((part) => reach(rotated(part, degrees), { x, y })));
  const side = (degrees: number): number =>
    Math.max(far(degrees, 1, 0) + far(degrees, -1, 0), far(degrees, 0, 1) + far(degrees, 0, -1));
  const at = (degrees: number): Opening => ({
    openingMm: side(degrees) + 2 * clearanceMm,
    angleDeg: degrees,
  });
  if (typeof rule === 'object') return at(rule.angleDeg);
  if (rule === 'straight' || plainDisc) return at(0);
  if (rule === 'at45') return at(45);
  let best = at(45);
  for (const degrees of [0, ...Array.from({ length: 180 }, (_, i) => i / 2)]) {
    const here = at(degrees);
    if (here.openingMm < best.openingMm - 1e-9) best = here;
  }
  for (let step = 0.25; step > 1e-7; step /= 2) {
    for (const degrees of [best.angleDeg - step, best.angleDeg + step]) {
      const here = at(degrees);
      if (here.openingMm < best.openingMm - 1e-9) best = here;
    }
  }
  return best;
}

/** Middle of every compartment, with the piece so turned and moved that it stands free in it. */
export function compartmentPositions(vessel: Vessel, rack: GridRack, angleDeg: number): Placed[] {
  const { x: width, y: depth } = usableOf(rack);
  const { body, handle } = outlineOf(vessel);
  const parts = (handle === null ? [body] : [body, handle]).map((part) => rotated(part, angleDeg));
  // A piece with a handle stands off the middle, so that it is as far from one wall as from the other.
  const off = [0, 90].map((turn) => {
    const ahead = direction(turn);
    const behind = { x: -ahead.x, y: -ahead.y };
    return (
      (Math.max(...parts.map((p) => reach(p, behind))) -
        Math.max(...parts.map((p) => reach(p, ahead)))) /
      2
    );
  });
  return Array.from({ length: square(rack.cells) }, (_, i) => ({
    x: ((i % rack.cells) + 0.5) * (width / rack.cells) + off[0]!,
    y: (Math.floor(i / rack.cells) + 0.5) * (depth / rack.cells) + off[1]!,
    angleDeg,
  }));
}

/** Pieces the floor of a compartment rack takes: all compartments or none. */
export function compartmentPieces(vessel: Vessel, rack: GridRack, rule: LoadingRule): number {
  return smallestSquareOpening(vessel, clearanceOf(rack), rule).openingMm <= rack.openingMm + 1e-6
    ? square(rack.cells)
    : 0;
}
