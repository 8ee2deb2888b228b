/**
 * Convex polygons grown by a disc: points, discs, bars, rectangles and ovals are all of this one form,
 * and so is what two of them forbid each other.
 */
import { atan2, cos, sin } from '../elementary/angles.js';
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A convex polygon (counter-clockwise; one point or two are allowed) with everything within `radius` of it. */
export interface Rounded {
  readonly points: readonly Point[];
  readonly radius: number;
}

/** Cosine and sine of an angle in degrees, exact at whole quarter turns. */
export function direction(degrees: number): Point {
  const turn = ((degrees % 360) + 360) % 360;
  if (turn === 0) return { x: 1, y: 0 };
  if (turn === 90) return { x: 0, y: 1 };
  if (turn === 180) return { x: -1, y: 0 };
  if (turn === 270) return { x: 0, y: -1 };
  const radians = (turn * Math.PI) / 180;
  return { x: cos(radians), y: sin(radians) };
}

/** The shape turned about the origin, counter-clockwise. */
export function rotated(shape: Rounded, degrees: number): Rounded {
  const d = direction(degrees);
  return {
    points: shape.points.map((p) => ({ x: p.x * d.x - p.y * d.y, y: p.x * d.y + p.y * d.x })),
    radius: shape.radius,
  };
}

/** The shape moved. */
export const movedBy = (shape: Rounded, x: number, y: number): Rounded => ({
  points: shape.points.map((p) => ({ x: p.x + x, y: p.y + y })),
  radius: shape.radius,
});

/** The shape seen through the origin: every point p becomes -p. */
export const reflected = (shape: Rounded): Rounded => ({
  points: shape.points.map((p) => ({ x: -p.x, y: -p.y })),
  radius: shape.radius,
});

const mirrors = new WeakMap<Rounded, Rounded>();

function mirroredOf(shape: Rounded): Rounded {
  const known = mirrors.get(shape) ?? reflected(shape);
  mirrors.set(shape, known);
  return known;
}

/** How far the shape reaches in a direction of length 1. */
export function reach(shape: Rounded, toward: Point): number {
  let far = -Infinity;
  for (const p of shape.points) far = Math.max(far, p.x * toward.x + p.y * toward.y);
  return far + shape.radius;
}

/** Edges of a convex polygon with their direction from 0 to 2π, and its lowest corner (of two the left one). */
interface Edged {
  readonly lowest: Point;
  readonly edges: { readonly angle: number; readonly x: number; readonly y: number }[];
}

/** Kept while the polygon is: it is set against many others. */
const edged = new WeakMap<readonly Point[], Edged>();

function edgesOf(points: readonly Point[]): Edged {
  const known = edged.get(points);
  if (known !== undefined) return known;
  const lowest = points.reduce((low, p) =>
    p.y < low.y || (p.y === low.y && p.x < low.x) ? p : low,
  );
  const edges = points.flatMap((p, i) => {
    const next = points[(i + 1) % points.length]!;
    const [x, y] = [next.x - p.x, next.y - p.y];
    const angle = atan2(y, x);
    return x === 0 && y === 0 ? [] : [{ angle: angle < 0 ? angle + 2 * Math.PI : angle, x, y }];
  });
  const made = { lowest, edges };
  edged.set(points, made);
  return made;
}

/**
 * The displacements d for which `b` moved by d comes nearer than `gap` to `a`: their Minkowski
 * difference, grown by the gap. Its boundary is allowed, its inside is not.
 *
 * The edges of a sum of convex polygons are the edges of both in order of direction.
 */
export function difference(a: Rounded, b: Rounded, gap: number): Rounded {
  const [from, minus] = [edgesOf(a.points), edgesOf(mirroredOf(b).points)];
  const edges = [...from.edges, ...minus.edges].sort((e, f) => e.angle - f.angle);
  let [x, y] = [from.lowest.x + minus.lowest.x, from.lowest.y + minus.lowest.y];
  const points: Point[] = [{ x, y }];
  edges.forEach((edge, i) => {
    x += edge.x;
    y += edge.y;
    // Parallel edges run on as one; the last edge leads back to the start.
    const next = edges[i + 1];
    if (next !== undefined && next.angle - edge.angle > 1e-9) points.push({ x, y });
  });
  return { points, radius: a.radius + b.radius + gap };
}
