/**
 * How many pieces no arrangement in one layer can exceed, whatever way they are turned: the count found is held against it.
 *
 * Two bounds, the smaller of which counts. Grown by half the gap, pieces do not overlap and stay half a gap
 * off the walls, so their areas add up to no more than what is left. And the largest discs within the bodies keep
 * apart as the pieces do (`piecesAtMost`, the inequality of N. Oler, Acta Mathematica 105, 1961).
 */
import { square } from '../elementary/powers.js';
import { massLimit } from './open-search.js';
import { onEdgeAtMost } from './pegs.js';
import { clearanceOf, usableOf } from './rack.js';
import type { OpenRack, Rack } from './rack.js';
import { piecesAtMost } from './turns.js';
import { ASSUMED_HANDLE_WIDTH_MM } from './vessel.js';
import type { Vessel } from './vessel.js';

/** area, circles: the bounds above; compartments, pegs: what the rack itself has; mass: what it may carry. */
export type BoundBy = 'area' | 'circles' | 'compartments' | 'pegs' | 'mass';

export interface CountBound {
  readonly pieces: number;
  readonly by: BoundBy;
}

/** Layouts keep their gaps to within this, mm; the bound allows them as much. */
const TOLERANCE_MM = 1e-3;
const STRIPS = 64;

/** The most pieces of a vessel that one rack can hold; null for loose cutlery, of which nothing can be said. */
export function mostPossible(vessel: Vessel, rack: Rack): CountBound | null {
  if (rack.kind === 'basket') return null;
  const mass: CountBound = { pieces: massLimit(vessel, rack), by: 'mass' };
  const room: CountBound[] =
    rack.kind === 'grid'
      ? [{ pieces: square(rack.cells), by: 'compartments' }]
      : rack.kind === 'peg'
        ? [{ pieces: onEdgeAtMost(vessel, rack), by: 'pegs' }]
        : openBounds(vessel, rack);
  return [...room, mass].reduce((least, one) => (one.pieces < least.pieces ? one : least));
}

function openBounds(vessel: Vessel, rack: OpenRack): CountBound[] {
  const { x, y } = usableOf(rack);
  const gap = Math.max(0, clearanceOf(rack) - TOLERANCE_MM);
  const disc = { points: [{ x: 0, y: 0 }], radius: Math.min(...halves(vessel)) };
  const area = ((x - gap) * (y - gap)) / grownArea(vessel, gap / 2);
  return [
    { pieces: piecesAtMost(disc, { width: x, depth: y, keepClear: null }, gap), by: 'circles' },
    { pieces: Math.floor(area + 1e-9), by: 'area' },
  ];
}

/** Half the length and half the width of the body without its handle, mm. */
function halves(vessel: Vessel): readonly [number, number] {
  if ((vessel.footprint ?? 'round') !== 'round')
    return [vessel.rimMm / 2, (vessel.rimAcrossMm ?? vessel.rimMm) / 2];
  const radius = Math.max(vessel.rimMm, vessel.footMm ?? 0) / 2;
  return [radius, radius];
}

/** Area of the piece with all within `by` of it, mm²; where it is not exact, it is less. */
function grownArea(vessel: Vessel, by: number): number {
  const [a, b] = halves(vessel);
  const rounded = Math.PI * square(by);
  const body =
    vessel.footprint === 'square'
      ? 4 * a * b + 4 * (a + b) * by + rounded
      : // The perimeter of an ellipse is no less than π (a + b); of a circle, as much.
        Math.PI * a * b + Math.PI * (a + b) * by + rounded;
  return body + grownHandle(vessel, a, by);
}

/** What the grown handle adds beyond the grown body: strips along the handle, each as long as where it is shortest. */
function grownHandle(vessel: Vessel, a: number, by: number): number {
  const handle = vessel.handleMm ?? 0;
  if (handle <= 0) return 0;
  const half = (vessel.handleWidthMm ?? ASSUMED_HANDLE_WIDTH_MM) / 2;
  const beyond = vessel.rimMm / 2 + handle;
  const root = (value: number): number => Math.sqrt(Math.max(0, value));
  const tip = (y: number): number =>
    vessel.handleTip === 'round'
      ? beyond - half + root(square(half + by) - square(y))
      : y <= half
        ? beyond + by
        : beyond + root(square(by) - square(y - half));
  const edge = (y: number): number =>
    (vessel.footprint ?? 'round') === 'round' ? root(square(a + by) - square(y)) : a + by;
  const strip = (half + by) / STRIPS;
  let area = 0;
  for (let i = 0; i < STRIPS; i += 1)
    area += 2 * strip * Math.max(0, tip((i + 1) * strip) - edge(i * strip));
  return area;
}
