/**
 * Stacks of ware on a board: rows of square cells, the widest stacks first, as people set cups out.
 * Every row is as deep as its widest cell; a stack that no longer fits a row begins the next. Denser
 * settings exist, but this one can be cleared and filled by hand, and what it says fits does fit.
 *
 * Handles point all one way, at 45° to the right and the front, into the gap between four vessels of the
 * same kind. So a ware with handles has rows of its own, with room left for the handles of the last row
 * and column.
 */

export interface Board {
  readonly widthMm: number;
  readonly depthMm: number;
}

export interface StackKind {
  readonly ware: string;
  /** The side of the cell a stack stands in. */
  readonly cellMm: number;
  /** How far its handles reach past the cell to the right and the front. */
  readonly overhangMm: number;
  /** Stacks. */
  readonly count: number;
}

export interface PlacedStack {
  readonly ware: string;
  /** Which board, from 0. */
  readonly board: number;
  /** Centre of the stack from the back left corner. */
  readonly xMm: number;
  readonly yMm: number;
}

export interface Packing {
  readonly placed: readonly PlacedStack[];
  /** Stacks by ware that found no room. */
  readonly left: Readonly<Record<string, number>>;
}

export interface Vessel {
  /** Largest of rim and foot. */
  readonly diameterMm: number;
  /** Handle beyond the rim; 0: none. */
  readonly handleMm: number;
}

/** Width of a handle as is usual, mm; assumed. */
export const HANDLE_WIDTH_MM = 14;

/**
 * The side of the cell that a vessel needs beside its like: the gap between four vessels takes a handle of
 * up to (√2 − 1) of the cell, and lets it past the two at its sides where the cell is √2 × (radius + half the
 * handle's width); a longer or wider one widens the cell.
 */
export function cellOf({ diameterMm, handleMm }: Vessel, gapMm: number): number {
  return handleMm === 0
    ? diameterMm + gapMm
    : Math.max(
        diameterMm + gapMm,
        handleMm / (Math.SQRT2 - 1),
        (diameterMm + HANDLE_WIDTH_MM) / Math.SQRT2,
      );
}

/** How far a handle at 45° reaches past its cell, mm. */
export function overhangOf(vessel: Vessel, gapMm: number): number {
  if (vessel.handleMm === 0) return 0;
  return Math.max(
    0,
    (vessel.diameterMm / 2 + vessel.handleMm + HANDLE_WIDTH_MM / 2) / Math.SQRT2 -
      cellOf(vessel, gapMm) / 2,
  );
}

/** Sets stacks out on boards of one size, board after board. */
export function packStacks(stacks: readonly StackKind[], board: Board, boards: number): Packing {
  const placed: PlacedStack[] = [];
  const left: Record<string, number> = {};
  // Where the next stack goes; `rowMm` is what the row takes of the depth, its handles included.
  let at = { board: 0, x: 0, y: 0, rowMm: 0, handles: false };
  const newRow = (): void => {
    at = { ...at, x: 0, y: at.y + at.rowMm, rowMm: 0, handles: false };
  };
  for (const { ware, cellMm, overhangMm, count } of [...stacks].sort(
    (a, b) => b.cellMm - a.cellMm,
  )) {
    if (count > 0 && at.x > 0 && (overhangMm > 0 || at.handles)) newRow();
    for (let index = 0; index < count; index++) {
      if (at.x > 0 && at.x + cellMm + overhangMm > board.widthMm) {
        // Within one ware, handles of this row reach between the vessels of the next.
        at.rowMm -= overhangMm;
        newRow();
      }
      // On the last board a ware that no longer fits is passed over; a narrower one may yet.
      if (
        at.x === 0 &&
        at.y > 0 &&
        at.y + cellMm + overhangMm > board.depthMm &&
        at.board + 1 < boards
      )
        at = { board: at.board + 1, x: 0, y: 0, rowMm: 0, handles: false };
      if (
        boards === 0 ||
        cellMm + overhangMm > board.widthMm ||
        at.y + cellMm + overhangMm > board.depthMm
      ) {
        left[ware] = count - index;
        // The handles of the row before, if it was this ware's, are in the way again.
        if (index > 0 && at.x === 0 && at.y > 0) at.y += overhangMm;
        break;
      }
      placed.push({ ware, board: at.board, xMm: at.x + cellMm / 2, yMm: at.y + cellMm / 2 });
      at.x += cellMm;
      at.rowMm = Math.max(at.rowMm, cellMm + overhangMm);
      at.handles ||= overhangMm > 0;
    }
  }
  return { placed, left };
}
