/** Pieces as sets of points, to test layouts by other means than those that make them. */
import type { Vessel } from '../../src/racking/vessel.js';

export interface At {
  readonly x: number;
  readonly y: number;
  readonly angleDeg: number;
}

/** A disc of the rim and, for a handle, a straight bar from the centre: the axis of the bar and its half width. */
interface Plan {
  readonly radius: number;
  readonly bar: { readonly length: number; readonly half: number } | null;
}

export const planOf = ({ rimMm, handleMm = 0, handleWidthMm = 14 }: Vessel): Plan => ({
  radius: rimMm / 2,
  bar: handleMm > 0 ? { length: rimMm / 2 + handleMm, half: handleWidthMm / 2 } : null,
});

type Point = readonly [number, number];

function corners({ bar }: Plan, { x, y, angleDeg }: At): Point[] {
  const [c, s] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)];
  const { length, half } = bar!;
  return [
    [0, -half],
    [length, -half],
    [length, half],
    [0, half],
  ].map(([u, v]) => [x + u! * c - v! * s, y + u! * s + v! * c]);
}

const edges = (polygon: readonly Point[]): [Point, Point][] =>
  polygon.map((p, i) => [p, polygon[(i + 1) % polygon.length]!]);

function toSegment([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}

const cross = ([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number =>
  (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
const inside = (p: Point, polygon: readonly Point[]): boolean =>
  edges(polygon).every(([a, b]) => cross(a, b, p) >= 0);

function barToBar(a: readonly Point[], b: readonly Point[]): number {
  if (inside(a[0]!, b) || inside(b[0]!, a)) return 0;
  let least = Infinity;
  for (const [p, q] of edges(a)) {
    for (const [r, s] of edges(b)) {
      if (cross(p, q, r) * cross(p, q, s) < 0 && cross(r, s, p) * cross(r, s, q) < 0) return 0;
      least = Math.min(
        least,
        toSegment(p, r, s),
        toSegment(q, r, s),
        toSegment(r, p, q),
        toSegment(s, p, q),
      );
    }
  }
  return least;
}

const discToBar = (plan: Plan, disc: At, bar: readonly Point[]): number =>
  inside([disc.x, disc.y], bar)
    ? -plan.radius
    : Math.min(...edges(bar).map(([a, b]) => toSegment([disc.x, disc.y], a, b))) - plan.radius;

/** Gap between two like pieces, mm; negative where they overlap. */
export function gapBetween(plan: Plan, a: At, b: At): number {
  const discs = Math.hypot(a.x - b.x, a.y - b.y) - 2 * plan.radius;
  if (plan.bar === null) return discs;
  const [p, q] = [corners(plan, a), corners(plan, b)];
  return Math.min(discs, discToBar(plan, a, q), discToBar(plan, b, p), barToBar(p, q));
}

/** Gap of a piece to the walls of a rack, mm; negative where it stands out. */
export function gapToWalls(plan: Plan, at: At, width: number, depth: number): number {
  const points: Point[] = [
    [at.x - plan.radius, at.y - plan.radius],
    [at.x + plan.radius, at.y + plan.radius],
    ...(plan.bar === null ? [] : corners(plan, at)),
  ];
  return Math.min(...points.flatMap(([x, y]) => [x, y, width - x, depth - y]));
}
