/**
 * Rows that are each free: turned one of four ways, shifted by any length, one piece shorter than the longest or not.
 *
 * For a length of row and a pitch, rows are chosen one on the other by dynamic programming on tables, keeping of all beginnings
 * with as many rows the few that leave most room. What it proposes is then settled exactly (`settle.ts`), so that nothing is
 * believed that does not fit.
 */
import { square } from '../elementary/powers.js';
import { KIND_OF_PAIR, MIRRORED } from './turns.js';
import type { Turns } from './turns.js';

/** Rows of `longest` pieces, or one less, at a pitch. */
export interface Cell {
  readonly longest: number;
  readonly pitch: number;
}

export interface Row {
  /** Which of the turns. */
  readonly turn: number;
  readonly pieces: number;
  /** Centre of its first piece, mm. */
  readonly x: number;
}

/** Widest pitch tried, as a multiple of the nearest that two pieces come: wider apart, others would stand between. */
const WIDEST = 1.75;
/** Pitches tried for each length of row, and beginnings kept. */
const PITCHES = 4;
const KEPT = 10;

/** Rises of a row on a row, by kind of pair, for shifts of -span to span units. */
interface Rises {
  readonly span: number;
  readonly byKind: readonly Float64Array[];
}

function risesAt(turns: Turns, longest: number, pitch: number, span: number): Rises {
  const { unit, reach } = turns;
  const byKind = turns.tables.map((table) => {
    const rises = new Float64Array(2 * span + 1);
    // Pieces of the two rows that are k pitches apart, between the steps of the table in a straight line.
    for (let k = 1 - longest; k < longest; k += 1) {
      const apart = (k * pitch) / unit + reach - span;
      const whole = Math.floor(apart);
      const part = apart - whole;
      const to = Math.min(2 * span, 2 * reach - whole);
      for (let i = Math.max(0, -whole); i <= to; i += 1) {
        const at = i + whole;
        const rise = table[at]! + part * (table[at + 1]! - table[at]!);
        if (rise > rises[i]!) rises[i] = rise;
      }
    }
    return rises;
  });
  return { span, byKind };
}

/** What one pitch leaves of the room, in units: where the first piece of a long row may be, by turn. */
interface Shifts {
  readonly left: readonly number[];
  readonly slack: readonly number[];
  readonly pitch: number;
}

function shiftsAt({ rooms, unit }: Turns, longest: number, pitch: number): Shifts {
  return {
    left: rooms.map(({ left }) => Math.round(left / unit)),
    slack: rooms.map(({ left, right }) =>
      Math.floor((right - left - (longest - 1) * pitch) / unit + 1e-6),
    ),
    pitch: Math.round(pitch / unit),
  };
}

const spanOf = ({ pitch, slack, left }: Shifts): number =>
  2 + pitch + Math.max(0, ...slack) + Math.max(...left) - Math.min(...left);

/** Lengths of row, each with a few pitches: from as near as they go to as far as the walls let them. */
export function cellsOf({ rooms, tight, nearest }: Turns): Cell[] {
  const wide = Math.max(...rooms.map(({ left, right }) => right - left));
  if (wide < 0 || rooms.every(({ top, bottom }) => top < bottom)) return [];
  const cells: Cell[] = [];
  for (let longest = 1 + Math.floor(wide / tight + 1e-9); longest >= 1; longest -= 1) {
    // Nearer than `low`, one more would go into the row.
    const high = Math.min(WIDEST * nearest, longest > 1 ? wide / (longest - 1) : tight);
    const low = Math.max(tight, wide / longest);
    if (high < low) continue;
    const steps = high - low < 1e-6 ? 0 : PITCHES - 1;
    for (let i = 0; i <= steps; i += 1)
      cells.push({ longest, pitch: steps === 0 ? high : low + ((high - low) * i) / steps });
  }
  return cells;
}

/** A beginning: its last row, how many rows of it were short, and what it stands on. */
interface Step {
  readonly turn: number;
  readonly short: number;
  readonly shorts: number;
  /** Units from the wall to the first piece of the row; height of its centres, mm. */
  readonly at: number;
  readonly y: number;
  readonly worth: number;
  readonly before: Step | null;
}

/** Rows of one turn, long or short (1), and between which units their first piece may be. */
interface Kind {
  readonly index: number;
  readonly turn: number;
  readonly short: number;
  readonly first: number;
  readonly last: number;
}

function kindsOf({ rooms }: Turns, shifts: Shifts, longest: number): Kind[] {
  return rooms
    .flatMap((_, turn) =>
      (longest > 1 ? [0, 1] : [0]).map((short) => {
        const first = shifts.left[turn]!;
        return { turn, short, first, last: first + shifts.slack[turn]! + short * shifts.pitch };
      }),
    )
    .filter(({ first, last }) => last >= first)
    .map((kind, index) => ({ ...kind, index }));
}

/**
 * Whether more than `beat` pieces go in if every row lies on the one below as low as any shift of the two allows: what
 * this denies, no choice of shifts can have. Lowest heights of so many rows, by the kind of the last and the short ones;
 * with more than `mostShorts` of these, no number of rows could do.
 */
function mayBeat(
  { rooms }: Turns,
  rises: Rises,
  kinds: readonly Kind[],
  { longest }: Cell,
  beat: number,
  tolerance: number,
  mostShorts: number,
): boolean {
  const n = kinds.length;
  const lows = new Float64Array(n * n);
  for (let a = 0; a < n; a += 1)
    for (let b = 0; b < n; b += 1) lows[a * n + b] = riseAtLeast(rises, kinds[a]!, kinds[b]!);
  /** By number of short rows, then by kind: lowest height of the last row. */
  let heights: Float64Array[] = [];
  for (let rows = 1; ; rows += 1) {
    const next: Float64Array[] = [];
    let open = false;
    for (let shorts = 0; shorts <= Math.min(rows, mostShorts); shorts += 1) {
      const reached = new Float64Array(n).fill(Infinity);
      for (let b = 0; b < n; b += 1) {
        const { turn, short } = kinds[b]!;
        const room = rooms[turn]!;
        const before = heights[shorts - short];
        let low = rows === 1 ? (shorts === short ? room.bottom : Infinity) : Infinity;
        if (before !== undefined)
          for (let a = 0; a < n; a += 1) low = Math.min(low, before[a]! + lows[a * n + b]!);
        low = Math.max(low, room.bottom);
        if (low > room.top + tolerance) continue;
        if (rows * longest - shorts > beat) return true;
        reached[b] = low;
        open = true;
      }
      next.push(reached);
    }
    if (!open) return false;
    heights = next;
  }
}

/** The least by which a row of one kind lies higher than one of another below it, at any of their shifts. */
function riseAtLeast({ byKind, span }: Rises, below: Kind, above: Kind): number {
  const pair = 4 * below.turn + above.turn;
  const list = byKind[KIND_OF_PAIR[pair]!]!;
  let [from, to] = [above.first - below.last, above.last - below.first];
  if (MIRRORED[pair] === 1) [from, to] = [-to, -from];
  let least = Infinity;
  for (let at = Math.max(0, from + span); at <= Math.min(2 * span, to + span); at += 1)
    if (list[at]! < least) least = list[at]!;
  return least;
}

/** Rows of a cell that by the tables are more than `beat` pieces, with `tolerance` mm too little room or less; null: none. */
export function rowsByTable(
  turns: Turns,
  cell: Cell,
  beat: number,
  tolerance: number,
): readonly Row[] | null {
  const { longest, pitch } = cell;
  const { rooms } = turns;
  const ceiling = Math.max(...rooms.map(({ top }) => top));
  const floor = Math.min(...rooms.map(({ bottom }) => bottom));
  // A row lies on another at least as high as discs do that are half a pitch aside.
  const least = Math.sqrt(Math.max(1, square(turns.nearest) - square(pitch / 2)));
  const rowsAbove = (y: number): number => Math.floor((ceiling + tolerance - y) / least);
  if (longest * (1 + rowsAbove(floor)) <= beat) return null;
  const shifts = shiftsAt(turns, longest, pitch);
  const rises = risesAt(turns, longest, pitch, spanOf(shifts));
  const kinds = kindsOf(turns, shifts, longest);
  const spare = longest * (1 + rowsAbove(floor)) - beat - 1;
  if (!mayBeat(turns, rises, kinds, cell, beat, tolerance, spare)) return null;
  const most = Math.ceil(turns.mostPieces / Math.max(1, longest - 1));
  // What a piece is worth in height: of a row that lies about as near as discs do.
  const perPiece = (0.95 * turns.nearest) / longest;
  const next: Step[] = [];
  const place = (before: Step | null, { turn, short }: Kind, at: number): void => {
    const room = rooms[turn]!;
    let y = room.bottom;
    if (before !== null) {
      y = Math.max(y, before.y + riseAt(rises, before, turn, at));
      const two = before.before;
      if (two !== null) y = Math.max(y, two.y + riseAt(rises, two, turn, at));
    }
    if (y > room.top + tolerance) return;
    const shorts = (before === null ? 0 : before.shorts) + short;
    if ((row + rowsAbove(y)) * longest - shorts <= pieces) return;
    const worth = y + ceiling - room.top + shorts * perPiece;
    // Kept in order of worth; of many beginnings only the best.
    if (next.length === KEPT && worth >= next[KEPT - 1]!.worth) return;
    let i = next.length === KEPT ? KEPT - 1 : next.length;
    for (; i > 0 && next[i - 1]!.worth > worth; i -= 1) next[i] = next[i - 1]!;
    next[i] = { turn, short, shorts, at, y, worth, before };
  };
  let row = 1;
  let pieces = beat;
  for (const kind of kinds)
    for (const at of [kind.first, (kind.first + kind.last) >> 1, kind.last]) place(null, kind, at);
  const lows = new Int16Array(
    (1 + Math.max(0, ...kinds.map(({ last }) => last))) * rooms.length * kinds.length,
  );
  let best: Step | null = null;
  while (row <= most && next.length > 0) {
    const kept = next.splice(0);
    for (const step of kept)
      if (row * longest - step.shorts > pieces)
        [best, pieces] = [step, row * longest - step.shorts];
    row += 1;
    for (const below of kept) {
      for (const kind of kinds) {
        const { turn, first, last } = kind;
        const known = (below.at * rooms.length + below.turn) * kinds.length + kind.index;
        if (lows[known] === 0) lows[known] = 1 + lowestAt(rises, below, kind);
        const lowest = lows[known]! - 1;
        place(below, kind, lowest);
        if (first !== lowest) place(below, kind, first);
        if (last !== lowest && last !== first) place(below, kind, last);
        if (below.at > first && below.at < last && below.at !== lowest && below.turn === turn)
          place(below, kind, below.at);
      }
    }
  }
  return best === null ? null : rowsTo(turns, cell, best);
}

const riseAt = (rises: Rises, below: Step, turn: number, at: number): number => {
  const pair = 4 * below.turn + turn;
  return rises.byKind[KIND_OF_PAIR[pair]!]![
    (MIRRORED[pair] === 1 ? below.at - at : at - below.at) + rises.span
  ]!;
};

/** The shift at which a row lies lowest on the one below. */
function lowestAt(rises: Rises, below: Step, { turn, first, last }: Kind): number {
  const pair = 4 * below.turn + turn;
  const list = rises.byKind[KIND_OF_PAIR[pair]!]!;
  const sign = MIRRORED[pair] === 1 ? -1 : 1;
  let [least, lowest] = [Infinity, first];
  for (let at = first; at <= last; at += 1) {
    const rise = list[sign * (at - below.at) + rises.span]!;
    if (rise < least) [least, lowest] = [rise, at];
  }
  return lowest;
}

function rowsTo({ rooms, unit }: Turns, { longest, pitch }: Cell, top: Step): Row[] {
  const rows: Row[] = [];
  for (let step: Step | null = top; step !== null; step = step.before) {
    const { left, right } = rooms[step.turn]!;
    const pieces = longest - step.short;
    const last = Math.max(left, right - (pieces - 1) * pitch);
    rows.unshift({
      turn: step.turn,
      pieces,
      x: Math.min(Math.max(left, step.at * unit), last),
    });
  }
  return rows;
}
