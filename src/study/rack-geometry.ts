/** From the words of a scenario to shapes: a ware as a vessel, a kind of rack as a rack. */
import { rackKind, type RackKind } from '../catalogue/catalogue.js';
import { piecesPerRack } from '../racking/layout.js';
import type { Rack } from '../racking/rack.js';
import type { Vessel } from '../racking/vessel.js';
import type { Ware } from './pieces-per-rack.js';

/** A ware's shape; null where the scenario and its class do not tell enough. */
export function vesselOf(ware: Ware): Vessel | null {
  const { shape, rim, height, depth } = ware;
  const tall = height ?? depth;
  if (shape === undefined || rim === undefined || tall === undefined) return null;
  return {
    shape,
    rimMm: rim,
    heightMm: tall,
    footMm: ware.foot,
    handleMm: ware.handle,
    handleWidthMm: ware.handleWidth,
    depthMm: depth,
    massG: ware.mass ?? 0,
  };
}

/** Pitch of the pegs of a rack for plates and saucers, mm; assumed: three rows of saucers then make the usual 24 to 36. */
const PEG_PITCH_MM = 45;

/** A kind of rack as a shape; null where its class does not tell enough to compute (cutlery). */
export function rackOf(id: string): Rack | null {
  const kind = rackKind(id);
  return kind === null ? null : shapeOf(id, kind);
}

function shapeOf(id: string, kind: RackKind): Rack | null {
  const usableMm = kind.usable.value;
  if (kind.form === 'open') return { id, kind: 'open', usableMm };
  if (kind.form === 'grid' && kind.compartments !== undefined && kind.opening !== undefined) {
    return { id, kind: 'grid', usableMm, cells: Math.round(Math.sqrt(kind.compartments)), openingMm: kind.opening.value };
  }
  if (kind.form === 'peg') return { id, kind: 'peg', usableMm, slots: Math.floor(usableMm / PEG_PITCH_MM), pitchMm: PEG_PITCH_MM };
  return null;
}

/** Pieces of a ware in a rack of a kind, from their shapes; null where those are not known. */
export function piecesPerRackOf(ware: Ware, kind: string): number | null {
  const vessel = vesselOf(ware);
  const rack = rackOf(kind);
  return vessel === null || rack === null ? null : piecesPerRack(vessel, rack);
}
