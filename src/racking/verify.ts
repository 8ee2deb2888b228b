/**
 * The test every layout passes before it is returned: plain distances between the parts of the pieces as
 * placed, by none of the means that found the layout.
 */
import { hypot } from '../elementary/powers.js';
import { movedBy, reach, rotated } from './convex.js';
import type { Point, Rounded } from './convex.js';
import type { Outline } from './outline.js';
import type { Placed } from './meeting.js';

/** Least gap between any two pieces, and between any piece and a wall, mm; negative where they overlap or stand out. */
export interface Gaps {
  readonly betweenMm: number;
  readonly wallMm: number;
}

export function gapsOf(
  outline: Outline,
  positions: readonly Placed[],
  width: number,
  depth: number,
): Gaps {
  const parts = outline.handle === null ? [outline.body] : [outline.body, outline.handle];
  const pieces = positions.map((p) =>
    parts.map((part) => movedBy(rotated(part, p.angleDeg), p.x, p.y)),
  );
  // Pieces that lie alike to one another, to a ten-millionth of a millimetre, are measured once.
  const measured = new Map<string, number>();
  const apart = (i: number, j: number): number => {
    const [p, q] = [positions[i]!, positions[j]!];
    const key =
      [q.x - p.x, q.y - p.y].map((d) => Math.round(d * 1e7)).join() +
      `,${p.angleDeg},${q.angleDeg}`;
    let least = measured.get(key);
    if (least === undefined) {
      least = Math.min(...pieces[i]!.flatMap((a) => pieces[j]!.map((b) => distance(a, b))));
      measured.set(key, least);
    }
    return least;
  };
  const far = Math.max(
    ...parts.map((part) => part.radius + Math.max(...part.points.map((p) => hypot(p.x, p.y)))),
  );
  let [betweenMm, wallMm] = [Infinity, Infinity];
  pieces.forEach((piece, i) => {
    for (const part of piece) {
      const walls = [-1, 1].flatMap((sign) => [
        (sign > 0 ? width : 0) - reach(part, { x: sign, y: 0 }),
        (sign > 0 ? depth : 0) - reach(part, { x: 0, y: sign }),
      ]);
      wallMm = Math.min(wallMm, ...walls);
    }
    for (let j = i + 1; j < pieces.length; j += 1) {
      const [p, q] = [positions[i]!, positions[j]!];
      if (hypot(p.x - q.x, p.y - q.y) - 2 * far > betweenMm) continue;
      betweenMm = Math.min(betweenMm, apart(i, j));
    }
  });
  return { betweenMm, wallMm };
}

/** Distance between two rounded convex shapes, mm; minus the sum of their radii where the polygons themselves meet. */
export function distance(a: Rounded, b: Rounded): number {
  return (meet(a.points, b.points) ? 0 : polygonDistance(a.points, b.points)) - a.radius - b.radius;
}

/** Two convex polygons are apart just when a line along one of their edges, or across their nearest corners, parts them. */
function meet(a: readonly Point[], b: readonly Point[]): boolean {
  return inside(a[0]!, b) || inside(b[0]!, a) || polygonDistance(a, b) === 0;
}

function inside(p: Point, polygon: readonly Point[]): boolean {
  if (polygon.length < 3) return false;
  return polygon.every((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) >= 0;
  });
}

function polygonDistance(a: readonly Point[], b: readonly Point[]): number {
  let least = Infinity;
  for (let i = 0; i < a.length; i += 1) {
    for (let j = 0; j < b.length; j += 1) {
      least = Math.min(
        least,
        edgeDistance(a[i]!, a[(i + 1) % a.length]!, b[j]!, b[(j + 1) % b.length]!),
      );
    }
  }
  return least;
}

function edgeDistance(a: Point, b: Point, c: Point, d: Point): number {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(
    pointToEdge(a, c, d),
    pointToEdge(b, c, d),
    pointToEdge(c, a, b),
    pointToEdge(d, a, b),
  );
}

function pointToEdge(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t =
    square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
