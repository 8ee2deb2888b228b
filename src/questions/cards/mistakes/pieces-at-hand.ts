/** The pieces that pictures of mistakes are made from: the house's own where their shapes are known, else typical ones. */
import { wareClass } from '../../../catalogue/catalogue.js';
import { length } from '../../../quantities/units.js';
import { rackLayout, type RackLayout } from '../../../racking/layout.js';
import type { Rack } from '../../../racking/rack.js';
import { isCutlery, type Vessel, type VesselShape } from '../../../racking/vessel.js';
import { familyOf, rackKindOf } from '../../../scenario/pieces-per-rack.js';
import { rackOf, vesselOf } from '../../../scenario/rack-geometry.js';
import type { Scenario } from '../../../scenario/scenario.js';

export interface AtHand {
  /** Id of the ware; null: a typical piece, as the house has none whose shape is known. */
  readonly ware: string | null;
  readonly vessel: Vessel;
  readonly rack: Rack;
  readonly layout: RackLayout;
}

/** A spoon has no shape in the catalogue: measures of a common teaspoon, from memory. */
const TEASPOON: Vessel = {
  shape: 'spoon',
  rimMm: 140,
  rimAcrossMm: 30,
  heightMm: 15,
  massG: 20,
};

/** Ware of some shapes in the racks they are washed in, those whose pieces are drawn first. */
export function ownPieces(scenario: Scenario, shapes: readonly VesselShape[]): AtHand[] {
  return Object.entries(scenario.ware).flatMap(([id, ware]) => {
    const vessel = vesselOf(ware);
    const rack = rackOf(rackKindOf(scenario.racks, familyOf(id, ware)), scenario.racks);
    if (vessel === null || rack === null || !shapes.includes(vessel.shape)) return [];
    const layout = rackLayout(vessel, rack, scenario.racks?.loading ?? 'best');
    return layout.pieces < 2 || ware.perRack !== undefined
      ? []
      : [{ ware: id, vessel, rack, layout }];
  });
}

/** A typical piece of a class in a kind of rack. @throws RangeError where the catalogue lacks either */
export function typicalPiece(classId: string, kind: string): AtHand {
  const vessel = classId === 'teaspoon' ? TEASPOON : shapeOf(classId);
  const rack = rackOf(kind, undefined);
  if (rack === null) throw new RangeError(`the catalogue has no rack "${kind}"`);
  return { ware: null, vessel, rack, layout: rackLayout(vessel, rack) };
}

function shapeOf(classId: string): Vessel {
  const cls = wareClass(classId);
  if (cls === null) throw new RangeError(`the catalogue has no ware "${classId}"`);
  const of = (field: string): number | undefined => {
    const given = cls.fields[field] as { readonly value: string } | undefined;
    return given === undefined ? undefined : length.parse(given.value);
  };
  return {
    shape: cls.fields['shape'] as VesselShape,
    rimMm: of('rim')!,
    footMm: of('foot'),
    heightMm: of('height')!,
    handleMm: of('handle'),
    handleWidthMm: of('handleWidth'),
    massG: 0,
  };
}

/** Whether a family of the house holds glass beside anything else: then glass and china share racks here. */
export function sharesGlass(scenario: Scenario): boolean {
  const kinds = new Map<string, Set<boolean>>();
  for (const [id, ware] of Object.entries(scenario.ware)) {
    const vessel = vesselOf(ware);
    if (vessel === null || isCutlery(vessel)) continue;
    const family = familyOf(id, ware);
    kinds.set(family, (kinds.get(family) ?? new Set()).add(vessel.shape === 'glass'));
  }
  return [...kinds.values()].some((both) => both.size > 1);
}
