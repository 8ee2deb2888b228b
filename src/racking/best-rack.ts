/**
 * The rack that holds most of a vessel, and the measure by which another would be the better one.
 */
import { cliffsOf, nearest } from './cliffs.js';
import type { Cliff } from './cliffs.js';
import { piecesPerRack } from './layout.js';
import type { LoadingRule } from './open-rack.js';
import type { Rack } from './rack.js';
import type { Vessel } from './vessel.js';

export interface BestRack {
  /** null: none of the racks takes it. */
  readonly rack: Rack | null;
  readonly pieces: number;
  /** "3 mm less rim: 25 instead of 16", whichever rack that would be. */
  readonly cliff: Cliff | null;
  readonly cliffs: readonly Cliff[];
}

/** Of racks that hold as many, the first. */
export function bestRack(vessel: Vessel, racks: readonly Rack[], rule: LoadingRule = 'best'): BestRack {
  const count = (other: Vessel): number => Math.max(0, ...racks.map((rack) => piecesPerRack(other, rack, rule)));
  const pieces = count(vessel);
  const cliffs = cliffsOf(vessel, pieces, count, (other, wanted) => count(other) >= wanted);
  return { rack: pieces === 0 ? null : racks.find((rack) => piecesPerRack(vessel, rack, rule) === pieces)!, pieces, cliff: nearest(cliffs), cliffs };
}
