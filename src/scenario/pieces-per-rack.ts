/**
 * How many pieces of a ware fill a rack: as given, else computed from its shape, else typical of its class.
 */
import { wareClass } from '../catalogue/catalogue.js';
import type { Scenario } from './scenario.js';

export type Ware = Scenario['ware'][string];

/** Computes pieces per rack from a ware's shape; null where the shape is not known well enough. */
export type PiecesPerRack = (
  ware: Ware,
  rackKind: string,
  racks: Scenario['racks'],
) => number | null;

export interface RackFill {
  readonly pieces: number;
  readonly from: 'given' | 'shape' | 'class';
}

/** Pieces of `ware` in a rack of a kind; null if nothing tells; 0 pieces: it does not fit. */
export function rackFill(
  ware: Ware,
  rackKind: string,
  racks: Scenario['racks'],
  piecesPerRack?: PiecesPerRack,
): RackFill | null {
  if (ware.perRack !== undefined) return { pieces: ware.perRack, from: 'given' };
  const computed = piecesPerRack?.(ware, rackKind, racks) ?? null;
  if (computed !== null) return { pieces: computed, from: 'shape' };
  const typical = ware.like === undefined ? undefined : wareClass(ware.like)?.perRack[rackKind];
  return typical === undefined ? null : { pieces: typical, from: 'class' };
}

/** The family of a ware: the one it names, or its own id. */
export const familyOf = (id: string, ware: Ware): string => ware.family ?? id;

/** The kind of rack a family is washed in. */
export function rackKindOf(racks: Scenario['racks'], family: string): string {
  const families = racks?.families;
  return families && Object.hasOwn(families, family) ? families[family]! : 'open';
}
