/** From the words of a scenario to shapes: a ware as a vessel, a kind of rack as a rack. */
import { rackKind } from '../catalogue/catalogue.js';
import { piecesPerRack, rackLayout } from '../racking/layout.js';
import type { Rack } from '../racking/rack.js';
import type { Vessel } from '../racking/vessel.js';
import type { Ware } from './pieces-per-rack.js';
import type { Scenario } from './scenario.js';

/** A ware's shape; null where the scenario and its class do not tell enough. */
export function vesselOf(ware: Ware): Vessel | null {
  const { shape, rim, height, depth } = ware;
  const tall = height ?? depth;
  if (shape === undefined || rim === undefined || tall === undefined) return null;
  return {
    shape,
    rimMm: rim,
    rimAcrossMm: ware.rimAcross,
    footprint: ware.footprint,
    heightMm: tall,
    footMm: ware.foot,
    handleMm: ware.handle,
    handleWidthMm: ware.handleWidth,
    handleTip: ware.handleTip,
    depthMm: depth,
    massG: ware.mass ?? 0,
  };
}

/** A kind of rack as a shape, with the measures that the scenario gives of it; null where too little is known. */
export function rackOf(id: string, racks: Scenario['racks']): Rack | null {
  const kind = rackKind(id);
  if (kind === null) return null;
  const own = racks?.measures?.[id];
  const any = {
    id,
    usableMm: own?.usable ?? kind.usable.value,
    usableAcrossMm: own?.usableAcross,
    clearanceMm: own?.clearance,
    innerHeightMm: own?.innerHeight ?? kind.innerHeight.value,
    emptyMassG: own?.emptyMass,
    maxMassG: own?.maxMass,
  };
  if (kind.form === 'open') return { ...any, kind: 'open' };
  if (kind.form === 'cutlery') return { ...any, kind: 'basket' };
  if (kind.form === 'peg') {
    const pitchMm = own?.pitch ?? kind.pitch?.value;
    if (pitchMm === undefined) return null;
    return {
      ...any,
      kind: 'peg',
      pitchMm,
      slots: own?.slots ?? Math.floor(any.usableMm / pitchMm),
      waterGapMm: own?.waterGap,
      triedMm: own?.tried,
    };
  }
  const openingMm = own?.opening ?? kind.opening?.value;
  if (kind.compartments === undefined || openingMm === undefined) return null;
  // A rack that is measured has the extenders it is said to have; the usual one as many as its ware needs.
  const extenders =
    own?.extenders ?? (own?.innerHeight === undefined ? kind.extendersMost?.value : 0);
  return {
    ...any,
    kind: 'grid',
    cells: Math.round(Math.sqrt(kind.compartments)),
    openingMm,
    extenders,
    extenderMm: own?.extenderHeight ?? kind.extenderHeight?.value,
  };
}

/** Pieces of a ware in a rack of a kind, from their shapes; null where those are not known. */
export function piecesPerRackOf(ware: Ware, kind: string, racks: Scenario['racks']): number | null {
  const vessel = vesselOf(ware);
  const rack = rackOf(kind, racks);
  return vessel === null || rack === null
    ? null
    : piecesPerRack(vessel, rack, racks?.loading ?? 'best');
}

/** Which measure keeps a ware out of a kind of rack. */
export interface Misfit {
  /** Field of the ware: "height", "handle". */
  readonly field: string;
  readonly valueMm: number;
  readonly rule: string;
}

/** Why a ware of known shape does not go in a rack of a kind; null where it does, or where no measure of it is at fault. */
export function misfitOf(ware: Ware, kind: string, racks: Scenario['racks']): Misfit | null {
  const vessel = vesselOf(ware);
  const rack = rackOf(kind, racks);
  if (vessel === null || rack === null) return null;
  const [first] = rackLayout(vessel, rack, racks?.loading ?? 'best').problems;
  const field = first?.path.at(-1);
  if (
    first === undefined ||
    first.path[0] !== 'vessel' ||
    typeof first.value !== 'number' ||
    typeof field !== 'string' ||
    !field.endsWith('Mm')
  )
    return null;
  return { field: field.slice(0, -2), valueMm: first.value, rule: first.rule };
}
