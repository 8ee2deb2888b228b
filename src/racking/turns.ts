/**
 * A piece turned four ways, as a row of them may stand: at an angle, and mirrored along either wall. What two rows so
 * turned forbid each other, exactly and as a table for quick searches.
 */
import { hypot } from '../elementary/powers.js';
import { difference, reach, rotated } from './convex.js';
import type { Rounded } from './convex.js';
import type { Outline } from './outline.js';
import { endOnAxis, heightAt, upperEdge } from './profile.js';
import type { UpperEdge } from './profile.js';
import type { Room, Walls } from './meeting.js';

/** By 4 × the lower row's turn + the upper one's: of sixteen pairs six differ; the others are those, or those seen in a mirror. */
export const KIND_OF_PAIR = [0, 1, 2, 4, 1, 0, 4, 2, 3, 5, 0, 1, 5, 3, 1, 0] as const;
export const MIRRORED = [0, 0, 0, 0, 1, 1, 0, 1, 0, 0, 0, 1, 0, 1, 0, 1] as const;
const PAIRS = [
  [0, 0],
  [0, 1],
  [0, 2],
  [2, 0],
  [0, 3],
  [3, 0],
] as const;

export interface Turns {
  readonly angleDeg: number;
  /** Handle's direction, 0 to 4 of them, and where the centres of a row so turned may be. */
  readonly degrees: readonly number[];
  readonly rooms: readonly Room[];
  /** Smallest pitch within a row. */
  readonly tight: number;
  /** Upper edges of what a row forbids the next, by kind of pair. */
  readonly edges: readonly (readonly UpperEdge[])[];
  /** The same as heights at whole steps of `unit` from `-reach` to `reach` steps. */
  readonly tables: readonly Float64Array[];
  readonly reach: number;
  readonly unit: number;
  /** No two pieces stand nearer than this, however they are turned, mm. */
  readonly nearest: number;
  /** No rack so wide and deep holds more, however they stand. */
  readonly mostPieces: number;
}

/** @param unit step of the tables, mm */
export function turnsOf(
  outline: Outline,
  walls: Walls,
  gapMm: number,
  angleDeg: number,
  unit: number,
): Turns {
  const { body, handle, plainDisc } = outline;
  const parts = handle === null ? [body] : [body, handle];
  const all = [angleDeg, 180 - angleDeg, 180 + angleDeg, 360 - angleDeg];
  const degrees = plainDisc ? [0] : handle === null ? all.slice(0, 2) : all;
  const turned = degrees.map((angle) => parts.map((part) => rotated(part, angle)));
  const kept = degrees.map((angle) =>
    (walls.keepClear ?? parts).map((part) => rotated(part, angle)),
  );
  const pairs = PAIRS.slice(0, plainDisc ? 1 : handle === null ? 2 : 6);
  const forbids = pairs.map(([a, b]) =>
    turned[a]!.flatMap((one) => turned[b]!.map((other) => difference(one, other, gapMm))),
  );
  const edges = forbids.map((shapes) => shapes.map(upperEdge));
  const farthest = Math.max(...edges.flat().map(({ left, right }) => Math.max(-left, right)));
  const steps = Math.ceil(farthest / unit) + 1;
  return {
    angleDeg,
    degrees,
    rooms: kept.map((shapes) => roomFor(shapes, walls, gapMm)),
    tight: Math.max(...forbids[0]!.map(endOnAxis)),
    edges,
    tables: edges.map((list) => tableOf(list, steps, unit)),
    reach: steps,
    unit,
    nearest: 2 * innerRadius(body) + gapMm,
    mostPieces: piecesAtMost(body, walls, gapMm),
  };
}

/**
 * Discs that lie within the bodies, at most: points no nearer than d in a convex region of area A and circumference P
 * are at most 2A / (√3 d²) + P / 2d + 1 (N. Oler, Acta Mathematica 105, 1961).
 */
export function piecesAtMost(body: Rounded, walls: Walls, gapMm: number): number {
  const inner = innerRadius(body);
  const apart = 2 * inner + gapMm;
  const [x, y] = [walls.width - 2 * (inner + gapMm), walls.depth - 2 * (inner + gapMm)];
  if (x < -1e-7 || y < -1e-7) return 0;
  const [wide, deep] = [Math.max(0, x), Math.max(0, y)];
  return Math.floor(
    (2 * wide * deep) / (Math.sqrt(3) * apart * apart) + (wide + deep) / apart + 1 + 1e-9,
  );
}

/** Radius of the largest disc about the origin within a shape. */
function innerRadius({ points, radius }: Rounded): number {
  if (points.length < 3) return radius;
  return (
    radius +
    Math.min(
      ...points.map((a, i) => {
        const b = points[(i + 1) % points.length]!;
        return (a.x * b.y - a.y * b.x) / hypot(b.x - a.x, b.y - a.y);
      }),
    )
  );
}

function roomFor(shapes: readonly Rounded[], walls: Walls, gapMm: number): Room {
  const far = (x: number, y: number): number =>
    Math.max(...shapes.map((shape) => reach(shape, { x, y }))) + gapMm;
  return {
    left: far(-1, 0),
    right: walls.width - far(1, 0),
    bottom: far(0, -1),
    top: walls.depth - far(0, 1),
  };
}

function tableOf(edges: readonly UpperEdge[], steps: number, unit: number): Float64Array {
  const table = new Float64Array(2 * steps + 2);
  for (const edge of edges) {
    const from = Math.max(-steps, Math.ceil(edge.left / unit));
    const to = Math.min(steps, Math.floor(edge.right / unit));
    for (let i = from; i <= to; i += 1) {
      const height = heightAt(edge, i * unit);
      if (height > table[i + steps]!) table[i + steps] = height;
    }
  }
  return table;
}

/** Exact rise between single pieces. */
export function exactRise(turns: Turns, below: number, above: number, dx: number): number {
  const pair = 4 * below + above;
  const toward = MIRRORED[pair] === 1 ? -dx : dx;
  let most = 0;
  for (const edge of turns.edges[KIND_OF_PAIR[pair]!]!)
    most = Math.max(most, heightAt(edge, toward));
  return most;
}
