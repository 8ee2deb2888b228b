/**
 * What pieces in rows forbid each other, and the room that the walls leave them.
 */
import { difference, reach, reflected, rotated } from './convex.js';
import type { Rounded } from './convex.js';
import type { Outline } from './outline.js';
import { endOnAxis, upperEdge } from './profile.js';
import type { UpperEdge } from './profile.js';

export interface Placed {
  readonly x: number;
  readonly y: number;
  /** Direction of the handle, counter-clockwise from x. */
  readonly angleDeg: number;
}

/** Where the centres of one row's pieces may be. */
export interface Room {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** All that the search needs to know of a vessel at an angle in a rack. */
export interface Meeting {
  readonly angleDeg: number;
  readonly turned: boolean;
  readonly rooms: readonly [Room, Room];
  /** Smallest pitch within a row. */
  readonly tight: number;
  /** Upper edges of what a piece forbids to one of its own row's kind, and to the next row's, going up. */
  readonly same: readonly UpperEdge[];
  readonly onto: readonly [readonly UpperEdge[], readonly UpperEdge[]];
}

/** What a vessel's parts forbid each other at angle 0; made once, then turned. */
export interface Forbidden {
  readonly same: readonly Rounded[];
  readonly turned: readonly Rounded[];
}

export function forbiddenBy(outline: Outline, gapMm: number): Forbidden {
  const { body, handle } = outline;
  const bodies = difference(body, body, gapMm);
  if (handle === null) return { same: [bodies], turned: [bodies] };
  // Handle against handle lies within these while the handle is no wider than the body.
  const reaching = difference(handle, body, gapMm);
  return {
    same: [bodies, reaching, reflected(reaching)],
    turned: [bodies, reaching, difference(handle, reflected(handle), gapMm)],
  };
}

/** Inside of the rack, mm; `keepClear` are the parts that must stay within it, all of them unless said. */
export interface Walls {
  readonly width: number;
  readonly depth: number;
  readonly keepClear: readonly Rounded[] | null;
}

/** Rows of the vessel at an angle, every second one turned by 180° or not; `gapMm` is left free along the walls as well. */
export function meetingOf(
  outline: Outline,
  forbidden: Forbidden,
  walls: Walls,
  gapMm: number,
  angleDeg: number,
  turned: boolean,
): Meeting {
  const kept =
    walls.keepClear ?? (outline.handle === null ? [outline.body] : [outline.body, outline.handle]);
  const roomAt = (degrees: number): Room => {
    const parts = kept.map((part) => rotated(part, degrees));
    const far = (x: number, y: number): number =>
      Math.max(...parts.map((part) => reach(part, { x, y }))) + gapMm;
    return {
      left: far(-1, 0),
      right: walls.width - far(1, 0),
      bottom: far(0, -1),
      top: walls.depth - far(0, 1),
    };
  };
  const same = forbidden.same.map((shape) => rotated(shape, angleDeg));
  const first = roomAt(angleDeg);
  const sameEdges = same.map(upperEdge);
  const tight = Math.max(...same.map(endOnAxis));
  if (!turned)
    return {
      angleDeg,
      turned,
      rooms: [first, first],
      tight,
      same: sameEdges,
      onto: [sameEdges, sameEdges],
    };
  const facing = forbidden.turned.map((shape) => rotated(shape, angleDeg));
  const backing = facing.map(reflected);
  return {
    angleDeg,
    turned,
    rooms: [first, roomAt(angleDeg + 180)],
    tight,
    same: sameEdges,
    onto: [facing.map(upperEdge), backing.map(upperEdge)],
  };
}
