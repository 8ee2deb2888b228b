/**
 * The upper edge of a rounded convex shape as a function of x: how high a piece must go to clear another.
 */
import { hypot } from '../elementary/powers.js';
import type { Rounded } from './convex.js';

/** Arcs and lines from left to right; the edge is concave between `left` and `right`. */
export interface UpperEdge {
  readonly left: number;
  readonly right: number;
  /** Where each stretch ends. */
  readonly end: readonly number[];
  /** Arcs: centre; lines: slope and height at x = 0. */
  readonly arc: readonly boolean[];
  readonly p: readonly number[];
  readonly q: readonly number[];
  readonly radiusSquared: number;
}

export function upperEdge(shape: Rounded): UpperEdge {
  const { points, radius } = shape;
  const [end, arc, p, q]: [number[], boolean[], number[], number[]] = [[], [], [], []];
  const n = points.length;
  // Counter-clockwise, the upper side runs from right to left; go through it the other way round.
  let from = 0;
  for (let i = 1; i < n; i += 1) {
    const [a, b] = [points[i]!, points[from]!];
    if (a.x < b.x - 1e-12 || (Math.abs(a.x - b.x) <= 1e-12 && a.y > b.y)) from = i;
  }
  let corner = points[from]!;
  for (let step = 1; step <= n; step += 1) {
    const next = points[(from - step + n) % n]!;
    const [dx, dy] = [next.x - corner.x, next.y - corner.y];
    const last = dx <= 1e-12;
    const length = hypot(dx, dy);
    // Outward (upward) normal of the edge from this corner to the next.
    const normalX = last ? 1 : -dy / length;
    const normalY = last ? 0 : dx / length;
    arc.push(true);
    p.push(corner.x);
    q.push(corner.y);
    end.push(corner.x + radius * normalX);
    if (last) break;
    const slope = dy / dx;
    arc.push(false);
    p.push(slope);
    q.push(corner.y + radius * normalY - slope * (corner.x + radius * normalX));
    end.push(next.x + radius * normalX);
    corner = next;
  }
  return {
    left: points[from]!.x - radius,
    right: end[end.length - 1]!,
    end,
    arc,
    p,
    q,
    radiusSquared: radius * radius,
  };
}

/** Height of the edge at x; -Infinity beside the shape (touching its side is beside it). */
export function heightAt(edge: UpperEdge, x: number): number {
  if (!(x > edge.left && x < edge.right)) return -Infinity;
  let i = 0;
  while (x > edge.end[i]!) i += 1;
  if (!edge.arc[i]!) return edge.p[i]! * x + edge.q[i]!;
  const d = x - edge.p[i]!;
  return edge.q[i]! + Math.sqrt(Math.max(0, edge.radiusSquared - d * d));
}

/** Where the shape, which contains the origin, ends on the x axis to the right. */
export function endOnAxis(shape: Rounded): number {
  const { points, radius } = shape;
  let end = 0;
  points.forEach((a, i) => {
    if (Math.abs(a.y) <= radius) end = Math.max(end, a.x + Math.sqrt(radius * radius - a.y * a.y));
    const b = points[(i + 1) % points.length]!;
    const length = hypot(b.x - a.x, b.y - a.y);
    if (length === 0) return;
    const [nx, ny] = [((b.y - a.y) / length) * radius, (-(b.x - a.x) / length) * radius];
    const [y1, y2] = [a.y + ny, b.y + ny];
    if (y1 === y2 || Math.min(y1, y2) > 0 || Math.max(y1, y2) < 0) return;
    end = Math.max(end, a.x + nx + ((b.x - a.x) * -y1) / (y2 - y1));
  });
  return end;
}
