/**
 * The fullest rack with every row free: angles in whole degrees, coarsely first, then near those that came close.
 */
import { cellsOf, rowsByTable } from './free-rows.js';
import { settled } from './settle.js';
import type { Settled } from './settle.js';
import { turnsOf } from './turns.js';
import type { Outline } from './outline.js';
import type { Placed, Walls } from './meeting.js';

/** Degrees from one angle tried first to the next, and how nearly rows must fit there for its neighbours to be tried, mm. */
const COARSE_DEG = 3;
const NEARLY_MM = 6;
/** By how much the tables may be mistaken, mm. */
const MISTAKEN_MM = 1.5;
/** Racks this wide are searched on tables of whole millimetres; others in proportion, by powers of two. */
const USUAL_MM = 480;

export const piecesOf = ({ rows }: Settled): number =>
  rows.reduce((sum, { pieces }) => sum + pieces, 0);

/**
 * Rows with more than `beat` pieces, the fullest found, or the first with `enough`; null where none is found.
 *
 * @param angle the one angle to be tried; absent: every whole degree of the quarter turn
 */
export function freeRows(
  outline: Outline,
  walls: Walls,
  gapMm: number,
  beat: number,
  enough: number,
  angle?: number,
): Settled | null {
  const unit = unitFor(Math.max(walls.width, walls.depth));
  let best: Settled | null = null;
  /** Looks at one angle; says whether rows there nearly beat the best. */
  const look = (angleDeg: number, tolerance: number): boolean => {
    const turns = turnsOf(outline, walls, gapMm, angleDeg, unit);
    let nearly = false;
    for (const cell of cellsOf(turns)) {
      for (;;) {
        const known = best === null ? beat : piecesOf(best);
        if (known >= enough) return nearly;
        const rows = rowsByTable(turns, cell, known, tolerance * unit);
        if (rows === null) break;
        nearly = true;
        const fits = settled(turns, rows, cell.pitch);
        if (fits === null) break;
        best = fits;
      }
    }
    return nearly;
  };
  const only = outline.plainDisc ? 0 : angle;
  if (only !== undefined) {
    look(only, MISTAKEN_MM);
    return best;
  }
  const near = new Set<number>();
  for (let angle = 0; angle <= 90; angle += COARSE_DEG) {
    if (!look(angle, NEARLY_MM)) continue;
    for (const other of [angle - 1, angle + 1]) if (other >= 0 && other <= 90) near.add(other);
  }
  for (const angle of near) look(angle, MISTAKEN_MM);
  return best;
}

/** Step of the tables, mm: 1 for racks within a factor of √2 of the usual, doubled or halved for others. */
function unitFor(longestMm: number): number {
  let unit = 1;
  while (longestMm > Math.SQRT2 * USUAL_MM * unit) unit *= 2;
  while (longestMm * Math.SQRT2 <= USUAL_MM * unit && unit > 1 / 1024) unit /= 2;
  return unit;
}

/** Centres of all pieces; room left over above is shared with that below. */
export function placedFree({ turns, pitch, rows }: Settled): Placed[] {
  const spare = Math.min(...rows.map(({ turn, y }) => turns.rooms[turn]!.top - y));
  return rows.flatMap(({ turn, pieces, x, y }) =>
    Array.from({ length: pieces }, (_, i) => ({
      x: x + i * pitch,
      y: y + Math.max(0, spare) / 2,
      angleDeg: turns.degrees[turn]! % 360,
    })),
  );
}
