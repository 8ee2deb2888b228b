/**
 * What holds the pieces in the machine: kinds of rack as plain data, with the defaults of the trade.
 *
 * Lengths are millimetres, masses grams. "Usable" is the clear inside of the rack.
 */
interface AnyRack {
  readonly id: string;
  /** Clear inside along x; absent: 460, from memory for a rack of 500 outside. */
  readonly usableMm?: number | undefined;
  /** Clear inside along y; absent: as along x. */
  readonly usableAcrossMm?: number | undefined;
  /** Outside; absent: 500. */
  readonly outerMm?: number | undefined;
  /** Mass of the empty rack; absent: 2000, an assumption. */
  readonly emptyMassG?: number | undefined;
  /** Largest mass it may have when loaded; absent or null: not limited. */
  readonly maxMassG?: number | null | undefined;
  /** Gap left between pieces, and between a piece and the wall; absent: 3 (open, peg) or 0 (the others). */
  readonly clearanceMm?: number | undefined;
  /** Tallest piece it takes; absent or null: not limited. Of a compartment rack: without extenders. */
  readonly innerHeightMm?: number | null | undefined;
}

/** One level floor, nothing between the pieces. */
export interface OpenRack extends AnyRack {
  readonly kind: 'open';
}

/** Compartments, `cells` each way: 5 for a rack of 25. */
export interface GridRack extends AnyRack {
  readonly kind: 'grid';
  readonly cells: number;
  /** Clear opening of a compartment: the largest diameter that goes in. */
  readonly openingMm: number;
  readonly extenders?: number | undefined;
  /** Height each extender adds; absent: 40, an assumption. */
  readonly extenderMm?: number | undefined;
}

/** Rows of pegs along x, in which saucers and plates stand on edge. */
export interface PegRack extends AnyRack {
  readonly kind: 'peg';
  /** Slots in one row of pegs. */
  readonly slots: number;
  readonly pitchMm: number;
  /** Least gap between two pieces, for the water; absent: 3, an assumption. */
  readonly waterGapMm?: number | undefined;
  /** Lean of a piece from upright; absent: 15, an assumption. */
  readonly leanDeg?: number | undefined;
  /** Spacing found by trying two saucers in the rack; replaces what pitch, depth, gap and lean would give. */
  readonly triedMm?: number | undefined;
}

/** Cutlery, loose and in one layer unless said. */
export interface BasketRack extends AnyRack {
  readonly kind: 'basket';
  /** Share of the floor that pieces may cover in a layer; absent: 0.6, an assumption. */
  readonly coverShare?: number | undefined;
  /** Absent: 1. */
  readonly layers?: number | undefined;
}

export type Rack = OpenRack | GridRack | PegRack | BasketRack;

export const USABLE_MM = 460;
export const OUTER_MM = 500;
export const EMPTY_MASS_G = 2000;
export const EXTENDER_MM = 40;

/** Clear inside along x and along y, mm. */
export const usableOf = (rack: Rack): { readonly x: number; readonly y: number } => {
  const x = rack.usableMm ?? USABLE_MM;
  return { x, y: rack.usableAcrossMm ?? x };
};

/** Gap round every piece, mm. The opening of a compartment already is the largest diameter that goes in. */
export const clearanceOf = (rack: Rack): number =>
  rack.clearanceMm ?? (rack.kind === 'open' || rack.kind === 'peg' ? 3 : 0);

/** Tallest piece the rack takes, with all its extenders, mm; Infinity where no limit is stated. */
export function tallestOf(rack: Rack): number {
  if (rack.innerHeightMm === undefined || rack.innerHeightMm === null) return Infinity;
  return (
    rack.innerHeightMm +
    (rack.kind === 'grid' ? (rack.extenders ?? 0) * (rack.extenderMm ?? EXTENDER_MM) : 0)
  );
}

/** Extenders a piece of this height needs in a compartment rack; 0 in any other. */
export function extendersFor(heightMm: number, rack: Rack): number {
  if (rack.kind !== 'grid' || rack.innerHeightMm === undefined || rack.innerHeightMm === null)
    return 0;
  return Math.max(
    0,
    Math.ceil((heightMm - rack.innerHeightMm) / (rack.extenderMm ?? EXTENDER_MM) - 1e-9),
  );
}
