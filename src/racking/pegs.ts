/**
 * Saucers and plates on edge in a peg rack, and cutlery loose in a basket.
 */
import { cos, sin } from '../elementary/angles.js';
import { hypot } from '../elementary/powers.js';
import { clearanceOf, usableOf } from './rack.js';
import type { BasketRack, PegRack, Rack } from './rack.js';
import type { Placed } from './meeting.js';
import { depthOf, widestOf } from './vessel.js';
import type { Vessel } from './vessel.js';

/**
 * Least room between two pieces on edge, foot ring of one to rim of the next, mm: assumed. It keeps faces apart, and
 * water has more room than that, as foot ring and rim are not opposite each other.
 */
export const LEAST_GAP_MM = 3;
export const LEAN_DEG = 15;
/** Saucers that one peg rack usually takes (common practice, no source). */
export const USUAL_ON_EDGE = { fewest: 24, most: 36 } as const;
export const COVER_SHARE = 0.6;

export interface PegLoad {
  readonly pieces: number;
  /** Pieces one behind the other along the pegs, and rows of them side by side. */
  readonly along: number;
  readonly rows: number;
  /** From one piece to the next along the pegs, mm; and what one leaning piece covers of that length. */
  readonly spacingMm: number;
  readonly coversMm: number;
  /** Room left between two faces, and the least that was asked for, mm. */
  readonly gapMm: number;
  readonly leastGapMm: number;
  /** Slots from one piece to the next; null where the spacing was measured. */
  readonly slotsEach: number | null;
  readonly alongLimit: 'slots' | 'length';
}

/**
 * How saucers or plates stand in a peg rack, leaning all one way. Pieces of depth t that lean by λ from upright and
 * stand s apart leave s·cos λ − t between them: they take the fewest whole slots that leave the least gap, so that
 * faces never touch. Each covers d·sin λ + t·cos λ of the length. A spacing tried in the rack takes the place of that.
 */
export function pegLoad(vessel: Vessel, rack: PegRack): PegLoad {
  const lean = ((rack.leanDeg ?? LEAN_DEG) * Math.PI) / 180;
  const depth = depthOf(vessel);
  const { x: length, y: width } = usableOf(rack);
  const coversMm = vessel.rimMm * sin(lean) + depth * cos(lean);
  const leastGapMm = rack.waterGapMm ?? LEAST_GAP_MM;
  const needed = (depth + leastGapMm) / cos(lean);
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
    gapMm: spacingMm * cos(lean) - depth,
    leastGapMm,
    slotsEach,
    alongLimit: bySlots <= byLength ? 'slots' : 'length',
  };
}

/** Pieces on edge that no choice of slots exceeds: as near one another as the least gap allows, or as near as was tried. */
export function onEdgeAtMost(vessel: Vessel, rack: PegRack): number {
  const { rows, leastGapMm, coversMm, along } = pegLoad(vessel, rack);
  if (along === 0) return 0;
  const lean = ((rack.leanDeg ?? LEAN_DEG) * Math.PI) / 180;
  const nearest = rack.triedMm ?? (depthOf(vessel) + leastGapMm) / cos(lean);
  const byLength = Math.floor((usableOf(rack).x - coversMm) / nearest + 1e-9) + 1;
  return Math.min(rack.slots, byLength) * rows;
}

/**
 * Whether a count on edge asks for a trial: it is above what is usual and rests on an assumed gap, not on a spacing tried.
 */
export const tryOnEdge = (rack: Rack, pieces: number): rack is PegRack =>
  rack.kind === 'peg' && rack.triedMm === undefined && pieces > USUAL_ON_EDGE.most;

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
