/**
 * From rows proposed by rough means to rows that fit: exact heights, and small changes of shifts and pitch while rows stand too high.
 */
import type { Row } from './free-rows.js';
import { exactRise } from './turns.js';
import type { Turns } from './turns.js';

/** Rows with one pitch, each with the height of its centres, mm. */
export interface Settled {
  readonly turns: Turns;
  readonly pitch: number;
  readonly rows: readonly (Row & { readonly y: number })[];
}

const ROUNDS = 14;
const ENOUGH_MM = 1e-9;

/** Rise of one row on another, mm. */
function riseOf(turns: Turns, pitch: number, below: Row, above: Row): number {
  let most = 0;
  for (let k = 1 - below.pieces; k < above.pieces; k += 1)
    most = Math.max(most, exactRise(turns, below.turn, above.turn, above.x - below.x + k * pitch));
  return most;
}

/** Heights of the rows, each as low as it may, and by how much the worst stands too high. */
function heightsOf(
  turns: Turns,
  pitch: number,
  rows: readonly Row[],
): { readonly ys: readonly number[]; readonly over: number } {
  const ys: number[] = [];
  let over = -Infinity;
  rows.forEach((row, j) => {
    const room = turns.rooms[row.turn]!;
    let y = room.bottom;
    for (let i = j - 1; i >= 0; i -= 1) {
      if (ys[i]! + 2 * turns.reach * turns.unit < y) continue;
      y = Math.max(y, ys[i]! + riseOf(turns, pitch, rows[i]!, row));
    }
    ys.push(y);
    over = Math.max(over, y - room.top);
  });
  return { ys, over };
}

/** The row moved by `by`, kept within the walls. */
function moved(turns: Turns, pitch: number, row: Row, by: number): Row {
  const { left, right } = turns.rooms[row.turn]!;
  const last = right - (row.pieces - 1) * pitch;
  return { ...row, x: Math.max(left, Math.min(last, row.x + by)) };
}

const within = (turns: Turns, pitch: number, rows: readonly Row[]): boolean =>
  rows.every(({ turn, pieces }) => {
    const { left, right } = turns.rooms[turn]!;
    return left + (pieces - 1) * pitch <= right + ENOUGH_MM;
  });

/** The rows as they fit; null where no small change makes them fit. */
export function settled(turns: Turns, proposed: readonly Row[], at: number): Settled | null {
  let pitch = at;
  let rows = proposed;
  if (!within(turns, pitch, rows)) return null;
  let now = heightsOf(turns, pitch, rows);
  let step = turns.unit;
  for (let round = 0; round < ROUNDS && now.over > ENOUGH_MM; round += 1) {
    const before = now.over;
    const consider = (other: readonly Row[], otherPitch: number): void => {
      const then = heightsOf(turns, otherPitch, other);
      if (then.over < now.over - 1e-12) [now, rows, pitch] = [then, other, otherPitch];
    };
    for (let j = 0; j < rows.length && now.over > ENOUGH_MM; j += 1)
      for (const by of [-step, step])
        consider(
          rows.map((row, i) => (i === j ? moved(turns, pitch, row, by) : row)),
          pitch,
        );
    for (const by of [-step, step]) {
      const other = Math.max(turns.tight, pitch + by / 4);
      if (other !== pitch && within(turns, other, rows))
        consider(
          rows.map((row) => moved(turns, other, row, 0)),
          other,
        );
    }
    if (now.over > before - step / 100) step /= 2;
  }
  if (now.over > ENOUGH_MM) return null;
  return { turns, pitch, rows: rows.map((row, j) => ({ ...row, y: now.ys[j]! })) };
}
