/** How many pieces the floor of a rack takes, and by what search. */
import { classCounts } from './class-counts.js';
import { compartmentPieces } from './compartments.js';
import { outlineOf } from './outline.js';
import { mostPieces } from './open-rack.js';
import type { LoadingRule, NamedPattern, OpenSearch } from './open-rack.js';
import { basketPieces, pegLoad } from './pegs.js';
import { EMPTY_MASS_G, clearanceOf, usableOf } from './rack.js';
import type { Rack } from './rack.js';
import type { Vessel } from './vessel.js';

export const openSearch = (
  vessel: Vessel,
  rack: Rack,
  rule: LoadingRule,
  first?: NamedPattern,
): OpenSearch => {
  const { x, y } = usableOf(rack);
  return {
    outline: outlineOf(vessel),
    widthMm: x,
    depthMm: y,
    gapMm: clearanceOf(rack),
    rule,
    first,
  };
};

/** Pieces whose mass the rack may carry. */
export const massLimit = (vessel: Vessel, rack: Rack): number =>
  rack.maxMassG === undefined || rack.maxMassG === null || vessel.massG <= 0
    ? Infinity
    : Math.max(
        0,
        Math.floor((rack.maxMassG - (rack.emptyMassG ?? EMPTY_MASS_G)) / vessel.massG + 1e-9),
      );

/** All that the count of an open rack hangs on, as text. */
export function countKey(vessel: Vessel, rack: Rack, rule: LoadingRule): string {
  const { footprint, rimMm, rimAcrossMm, footMm, handleMm, handleWidthMm, handleTip } = vessel;
  const { x, y } = usableOf(rack);
  const plan = [footprint, rimMm, rimAcrossMm, footMm, handleMm, handleWidthMm, handleTip];
  return JSON.stringify([...plan, x, y, clearanceOf(rack), rule]);
}

/** Pieces that the floor of the rack takes, whatever their mass. */
export function floorPieces(vessel: Vessel, rack: Rack, rule: LoadingRule): number {
  if (rack.kind === 'grid') return compartmentPieces(vessel, rack, rule);
  if (rack.kind === 'peg') return pegLoad(vessel, rack).pieces;
  if (rack.kind === 'basket') return basketPieces(vessel, rack);
  return classCounts[countKey(vessel, rack, rule)] ?? mostPieces(openSearch(vessel, rack, rule));
}
