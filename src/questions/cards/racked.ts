/** A ware in the rack of its family. */
import { rackLayout, type RackLayout } from '../../racking/layout.js';
import type { Rack } from '../../racking/rack.js';
import type { Vessel } from '../../racking/vessel.js';
import { rackFill } from '../../scenario/pieces-per-rack.js';
import { piecesPerRackOf, rackOf, vesselOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';

/** A ware of the family, and how it stands in its rack; `drawn` is null where its shape is not known. */
export interface Racked {
  readonly id: string;
  readonly pieces: number;
  readonly from: 'given' | 'shape' | 'class';
  readonly drawn: {
    readonly vessel: Vessel;
    readonly rack: Rack;
    readonly layout: RackLayout;
  } | null;
}

export function rackedOf(scenario: Scenario, id: string, kind: string): Racked {
  const ware = scenario.ware[id]!;
  const fill = rackFill(ware, kind, scenario.racks, piecesPerRackOf) ?? {
    pieces: 0,
    from: 'class' as const,
  };
  const [vessel, rack] = [vesselOf(ware), rackOf(kind, scenario.racks)];
  if (vessel === null || rack === null) return { id, ...fill, drawn: null };
  const layout = rackLayout(vessel, rack, scenario.racks?.loading ?? 'best');
  // A number that the house counted goes before ours, and a drawing of another number would gainsay it.
  return {
    id,
    ...fill,
    drawn: layout.pieces === fill.pieces && fill.pieces > 0 ? { vessel, rack, layout } : null,
  };
}
