/**
 * Saucers and plates on edge in a peg rack, and cutlery loose in a basket.
 */
import { cos, sin } from '../elementary/angles.js';
import { hypot } from '../elementary/powers.js';
import { clearanceOf, usableOf } from './rack.js';
import type { BasketRack, PegRack } from './rack.js';
import type { Placed } from './meeting.js';
import { depthOf, widestOf } from './vessel.js';
import type { Vessel } from './vessel.js';

export const WATER_GAP_MM = 8;
export const LEAN_DEG = 15;
export const COVER_SHARE = 0.6;

export interface PegLoad {
  readonly pieces: number;
  /** Pieces one behind the other along the pegs, and rows of them side by side. */
  readonly along: number;
  readonly rows: number;
  /** From one piece to the next along the pegs, mm; and what one leaning piece covers of that length. */
  readonly spacingMm: number;
  readonly coversMm: number;
  /** Slots from one piece to the next; null where the spacing was measured. */
  readonly slotsEach: number | null;
  readonly alongLimit: 'slots' | 'length';
}

/**
 * How saucers or plates stand in a peg rack. Parallel pieces of thickness t that lean by λ from upright and keep a gap w for
 * the water stand (t + w) / cos λ apart, in whole slots; each covers d·sin λ + t·cos λ of the length. A spacing
 * tried in the rack takes the place of that.
 */
export function pegLoad(vessel: Vessel, rack: PegRack): PegLoad {
  const lean = ((rack.leanDeg ?? LEAN_DEG) * Math.PI) / 180;
  const depth = depthOf(vessel);
  const { x: length, y: width } = usableOf(rack);
  const coversMm = vessel.rimMm * sin(lean) + depth * cos(lean);
  const needed = (depth + (rack.waterGapMm ?? WATER_GAP_MM)) / cos(lean);
  const slotsEach =
    rack.triedMm === undefined ? Math.max(1, Math.ceil(needed / rack.pitchMm - 1e-9)) : null;
  const spacingMm = rack.triedMm ?? slotsEach! * rack.pitchMm;
  const bySlots = slotsEach === null ? rack.slots : Math.floor((rack.slots - 1) / slotsEach) + 1;
  const byLength = coversMm > length ? 0 : Math.floor((length - coversMm) / spacingMm + 1e-9) + 1;
  const gap = clearanceOf(rack);
  const rows = Math.max(0, Math.floor((width - gap) / (widestOf(vessel) + gap) + 1e-9));
  const along = Math.max(0, Math.min(bySlots, byLength));
  return {
    pieces: along * rows,
    along,
    rows,
    spacingMm,
    coversMm,
    slotsEach,
    alongLimit: bySlots <= byLength ? 'slots' : 'length',
  };
}

/** Middle of every piece as it leans, seen from above; rows share the width evenly. */
export function pegPositions(vessel: Vessel, rack: PegRack): Placed[] {
  const load = pegLoad(vessel, rack);
  const { x: length, y: width } = usableOf(rack);
  const start = (length - (load.along - 1) * load.spacingMm) / 2;
  const share = width / Math.max(1, load.rows);
  return Array.from({ length: load.pieces }, (_, i) => ({
    x: start + (i % load.along) * load.spacingMm,
    y: (Math.floor(i / load.along) + 0.5) * share,
    angleDeg: 0,
  }));
}

/** Pieces of cutlery that lie loose on the floor of a basket, each taking the rectangle round it. */
export function basketPieces(vessel: Vessel, rack: BasketRack): number {
  const { x, y } = usableOf(rack);
  const long = vessel.rimMm;
  const broad = vessel.rimAcrossMm ?? vessel.rimMm;
  if (Math.min(long, broad) > Math.min(x, y) || Math.max(long, broad) > hypot(x, y)) return 0;
  return Math.floor(
    (x * y * (rack.coverShare ?? COVER_SHARE) * (rack.layers ?? 1)) / (long * broad) + 1e-9,
  );
}
