/**
 * Pieces in rows: how many fit for one pattern and one angle, exactly.
 *
 * Rows run along x. Within a row pieces stand `pitch` apart; every second row is shifted by a share of the
 * pitch and may be turned by 180°. What two pieces forbid each other is a union of rounded convex shapes
 * that contain the origin (see `difference`), so the rise from row to row is, for every pair, a concave function of
 * the pitch. A pitch between two bounds can therefore be ruled out by its two ends, and halving finds
 * a pitch that lets the wanted rows in, or proves that there is none, to a ten-millionth of a millimetre.
 */
import type { Meeting, Placed } from './meeting.js';
import { heightAt } from './profile.js';
import type { UpperEdge } from './profile.js';

/** Rows of `counts[0]` and `counts[1]` pieces in turn, the second kind shifted by `shift` pitches. */
interface Course {
  readonly counts: readonly [number, number];
  readonly shift: number;
}

export interface RowLayout {
  readonly pieces: number;
  readonly meeting: Meeting;
  readonly course: Course;
  readonly rows: number;
  readonly pitch: number;
}

const TOUCH = 1e-7;
const FINEST = 1e-7;

/** Rise needed above a row for the next: the most that any pair asks for at every pitch from `low` to `high`. */
function rise(
  edges: readonly UpperEdge[],
  shift: number,
  first: number,
  last: number,
  low: number,
  high: number,
): number {
  let most = 0;
  for (const edge of edges) {
    // Pairs farther apart than the edge is wide ask for nothing.
    const from = low > 0 ? Math.max(first, Math.ceil(edge.left / low - shift)) : first;
    const to = low > 0 ? Math.min(last, Math.floor(edge.right / low - shift)) : last;
    for (let k = from; k <= to; k += 1) {
      const one = heightAt(edge, (k + shift) * low);
      if (one <= most) continue;
      const least = low === high ? one : Math.min(one, heightAt(edge, (k + shift) * high));
      if (least > most) most = least;
    }
  }
  return most;
}

/** What rows of a course ask for at one pitch, or at least ask for over a range: rise to the next row and to the next but one. */
function risesOf(
  meeting: Meeting,
  course: Course,
  low: number,
  high: number,
): readonly [number, number, number, number] {
  const [a, b] = course.counts;
  return [
    rise(meeting.onto[0], course.shift, 1 - a, b - 1, low, high),
    rise(meeting.onto[1], -course.shift, 1 - b, a - 1, low, high),
    rise(meeting.same, 0, 1 - a, a - 1, low, high),
    a === b ? -1 : rise(meeting.same, 0, 1 - b, b - 1, low, high),
  ];
}

/** How many of the `wanted` rows go in, each as low as it may; their heights are written to `ys` if it is given. */
function rowsIn(
  meeting: Meeting,
  course: Course,
  wanted: number,
  low: number,
  high: number,
  ys?: number[],
): number {
  const [up, down, twoA, twoB] = risesOf(meeting, course, low, high);
  const [roomA, roomB] = meeting.rooms;
  let [before, last] = [-Infinity, -Infinity];
  for (let j = 0; j < wanted; j += 1) {
    const first = j % 2 === 0;
    const room = first ? roomA : roomB;
    const two = first || twoB < 0 ? twoA : twoB;
    const y = Math.max(room.bottom, last + (first ? down : up), before + two);
    if (y > room.top + TOUCH) return j;
    ys?.push(y);
    before = last;
    last = y;
  }
  return wanted;
}

/** A pitch between the bounds at which the wanted rows fit; null where there is none. */
function pitchFor(
  meeting: Meeting,
  course: Course,
  wanted: number,
  low: number,
  high: number,
): number | null {
  if (rowsIn(meeting, course, wanted, low, high) < wanted) return null;
  if (rowsIn(meeting, course, wanted, high, high) >= wanted) return high;
  if (high - low < FINEST) return null;
  const middle = (low + high) / 2;
  return (
    pitchFor(meeting, course, wanted, middle, high) ??
    pitchFor(meeting, course, wanted, low, middle)
  );
}

/** Bounds of the pitch at which both kinds of row lie within the walls; null: none. */
function pitchBounds(meeting: Meeting, course: Course): readonly [number, number] | null {
  const [a, b] = meeting.rooms;
  const [nA, nB] = course.counts;
  let low = nA > 1 || nB > 1 ? meeting.tight : 0;
  let high = 4 * Math.max(1, a.right - a.left, b.right - b.left);
  // Four limits of the form share × pitch ≤ room.
  for (let i = 0; i < 4; i += 1) {
    // The last piece of one kind (`ends`) against the first of the same or the other (`starts`).
    const ends = i === 0 || i === 3 ? 0 : 1;
    const starts = i === 0 || i === 2 ? 0 : 1;
    const share = course.counts[ends]! - 1 + (ends - starts) * course.shift;
    const room = meeting.rooms[ends]!.right;
    const from = meeting.rooms[starts]!.left;
    if (share > 0) high = Math.min(high, (room - from) / share);
    else if (share < 0) low = Math.max(low, (room - from) / share);
    else if (room - from < -TOUCH) return null;
  }
  return high < low - TOUCH ? null : [Math.min(low, high), high];
}

const piecesIn = (course: Course, rows: number): number =>
  Math.ceil(rows / 2) * course.counts[0] + Math.floor(rows / 2) * course.counts[1];

/** No more rows than this of n and of m pieces, whatever the shift: neighbours are at most half a pitch aside. */
function rowsAtMost(meeting: Meeting, n: number, m: number): number {
  const [a, b] = meeting.rooms;
  const widest = Math.min((a.right - a.left) / (n - 1), (b.right - b.left) / (m - 1));
  const body = meeting.onto[0][0]!;
  const beside =
    n > 1 && m > 1
      ? Math.max(0, Math.min(heightAt(body, -widest / 2), heightAt(body, widest / 2)))
      : 0;
  const two = Math.max(2 * beside, ...meeting.same.map((edge) => heightAt(edge, 0)));
  return (
    2 * (Math.floor((Math.max(a.top, b.top) - Math.min(a.bottom, b.bottom) + TOUCH) / two) + 1)
  );
}

/** Fewest rows that hold more than `beat` pieces. */
function rowsToBeat(counts: Course['counts'], beat: number): number {
  const pair = counts[0] + counts[1];
  const pairs = Math.floor(beat / pair);
  const rest = beat - pairs * pair;
  return 2 * pairs + (rest < counts[0] ? 1 : 2);
}

/**
 * The fullest rows at one meeting that hold more than `beat` pieces, stopping at `enough`; null where none does.
 * `shifts` are tried in turn: shares of the pitch by which every second row is moved.
 */
export function fullestRows(
  meeting: Meeting,
  shifts: readonly number[],
  beat: number,
  enough: number,
): RowLayout | null {
  const [a, b] = meeting.rooms;
  if (a.right < a.left - TOUCH || a.top < a.bottom - TOUCH) return null;
  let best: RowLayout | null = null;
  let most = beat;
  const longest =
    1 + Math.floor((Math.max(a.right - a.left, b.right - b.left) + TOUCH) / meeting.tight);
  for (let n = longest; n >= 1; n -= 1) {
    for (const m of meeting.turned ? [n, n - 1, n + 1] : [n, n - 1]) {
      if (m < 1 || m > longest || rowsAtMost(meeting, n, m) < rowsToBeat([n, m], most)) continue;
      for (const shift of shifts) {
        // Pointing all one way, a row no shorter is nearest within half a pitch, a shorter one within the longer.
        if (!meeting.turned && (m === n ? Math.abs(shift) > 0.5 : shift <= 0)) continue;
        const course: Course = { counts: [n, m], shift };
        const bounds = pitchBounds(meeting, course);
        if (bounds === null) continue;
        for (;;) {
          const wanted = rowsToBeat(course.counts, most);
          const pitch = pitchFor(meeting, course, wanted, bounds[0], bounds[1]);
          if (pitch === null) break;
          const rows = rowsIn(meeting, course, 1000, pitch, pitch);
          most = piecesIn(course, rows);
          best = { pieces: most, meeting, course, rows, pitch };
          if (most >= enough) return best;
        }
      }
    }
  }
  return best;
}

/** Centres of all pieces, pushed apart to use the room that is left over lengthways and crossways. */
export function placedRows(layout: RowLayout): Placed[] {
  const { meeting, course, pitch } = layout;
  const [a, b] = meeting.rooms;
  const ys: number[] = [];
  rowsIn(meeting, course, layout.rows, pitch, pitch, ys);
  const low = Math.max(a.left, b.left - course.shift * pitch);
  const high = Math.min(
    a.right - (course.counts[0] - 1) * pitch,
    b.right - (course.shift + course.counts[1] - 1) * pitch,
  );
  const start =
    layout.rows > 1
      ? (low + Math.max(low, high)) / 2
      : (a.left + a.right - (course.counts[0] - 1) * pitch) / 2;
  const spare = Math.min(...ys.map((y, j) => meeting.rooms[j % 2]!.top - y));
  return ys.flatMap((y, j) => {
    const kind = j % 2;
    const x0 = start + (kind === 1 ? course.shift * pitch : 0);
    const angleDeg = (meeting.angleDeg + (meeting.turned && kind === 1 ? 180 : 0)) % 360;
    return Array.from({ length: course.counts[kind]! }, (_, i) => ({
      x: x0 + i * pitch,
      y: y + Math.max(0, spare) / 2,
      angleDeg,
    }));
  });
}
