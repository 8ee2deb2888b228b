/**
 * What goes into a rack: the shape of a piece as it stands inverted, seen from above.
 *
 * Lengths are millimetres, masses grams. The plan of a piece is its body (a disc, a rectangle or an
 * ellipse) joined with its handle (a straight bar from the centre outwards, flat or round at the tip).
 */
export type VesselShape =
  | 'cup'
  | 'mug'
  | 'glass'
  | 'bowl'
  | 'saucer'
  | 'plate'
  | 'spoon'
  | 'fork'
  | 'knife'
  | 'jug';
export type Footprint = 'round' | 'square' | 'oval';

export interface Vessel {
  readonly shape: VesselShape;
  /** Round: diameter of the rim. Square, oval and cutlery: length, along the handle. */
  readonly rimMm: number;
  /** Square, oval and cutlery: length across; absent: as long as wide. */
  readonly rimAcrossMm?: number | undefined;
  /** Diameter of the foot; counts only where it is wider than the rim of a round piece. */
  readonly footMm?: number | undefined;
  readonly heightMm: number;
  /** How far the handle stands out beyond the rim; absent or 0: no handle. */
  readonly handleMm?: number | undefined;
  /** Absent with a handle: 14 mm, an assumption. */
  readonly handleWidthMm?: number | undefined;
  readonly handleTip?: 'flat' | 'round' | undefined;
  readonly massG: number;
  /** Saucers and plates: overall depth, which is their thickness on edge; absent: the height. */
  readonly depthMm?: number | undefined;
  readonly footprint?: Footprint | undefined;
}

/** Width of a handle where none is stated; assumed. */
export const ASSUMED_HANDLE_WIDTH_MM = 14;

export const isCutlery = (vessel: Vessel): boolean =>
  vessel.shape === 'spoon' || vessel.shape === 'fork' || vessel.shape === 'knife';

export const isFlatware = (vessel: Vessel): boolean =>
  vessel.shape === 'saucer' || vessel.shape === 'plate';

/** Thickness of a piece on edge, mm. */
export const depthOf = (vessel: Vessel): number => vessel.depthMm ?? vessel.heightMm;

/** The longer side of the plan without the handle, mm. */
export const widestOf = (vessel: Vessel): number =>
  Math.max(
    vessel.rimMm,
    vessel.rimAcrossMm ?? 0,
    (vessel.footprint ?? 'round') === 'round' ? (vessel.footMm ?? 0) : 0,
  );
