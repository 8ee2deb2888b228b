/**
 * Marks for pieces, as SVG path texts. Many pieces make one path, so that a room of two hundred seats is a
 * handful of elements.
 */
import { cos, sin } from '../../elementary/angles.js';
import type { WalkLayout } from '../../questions/walk/layouts.js';

export type Layouts = Readonly<Record<string, WalkLayout>>;

const r1 = (value: number): string => String(Math.round(value * 10) / 10);

/** The way across is exactly twice the radius as written, else the two arcs make an oval. */
export function disc(x: number, y: number, radius: number): string {
  const r = Math.round(radius * 10) / 10;
  return `M${r1(x - r)} ${r1(y)}a${r1(r)} ${r1(r)} 0 1 0 ${r1(2 * r)} 0a${r1(r)} ${r1(r)} 0 1 0 ${r1(-2 * r)} 0z`;
}

const square = (x: number, y: number, r: number): string =>
  `M${r1(x - r)} ${r1(y - r)}h${r1(2 * r)}v${r1(2 * r)}h${r1(-2 * r)}z`;

/** A cross through a mark: its guests have gone. */
export const cross = (x: number, y: number, r: number): string =>
  `M${r1(x - r)} ${r1(y - r)}l${r1(2 * r)} ${r1(2 * r)}M${r1(x + r)} ${r1(y - r)}l${r1(-2 * r)} ${r1(2 * r)}`;

/** How a ware is marked: vessels as discs (glasses as squares), flat ware as wide rings, cutlery as strokes. */
export type Mark = 'cup' | 'glass' | 'flat' | 'cutlery';

export function markOf(layout: WalkLayout | undefined): Mark {
  switch (layout?.shape) {
    case 'glass':
    case 'jug':
      return 'glass';
    case 'saucer':
    case 'plate':
      return 'flat';
    case 'spoon':
    case 'fork':
    case 'knife':
      return 'cutlery';
    default:
      return 'cup';
  }
}

/** Half the width of a cup's mark against the room it has: wider rims have larger marks. */
const rimShare = (layout: WalkLayout | undefined): number =>
  Math.min(1, Math.max(0.6, (layout?.rimMm ?? 85) / 105));

/** A piece about a point, in a space of ±`half`. */
export function pieceMark(
  layout: WalkLayout | undefined,
  x: number,
  y: number,
  half: number,
): string {
  switch (markOf(layout)) {
    case 'flat':
      return disc(x, y, half * 0.9);
    case 'cutlery':
      return `M${r1(x + half)} ${r1(y - half * 0.7)}L${r1(x + half * 0.55)} ${r1(y + half * 0.95)}`;
    case 'glass':
      return square(x, y, half * 0.48);
    default:
      return disc(x, y, half * 0.62 * rimShare(layout));
  }
}

/** A piece by itself, in the middle of its space. */
export function loneMark(
  layout: WalkLayout | undefined,
  x: number,
  y: number,
  half: number,
): string {
  return markOf(layout) === 'cutlery'
    ? `M${r1(x + half * 0.3)} ${r1(y - half * 0.8)}L${r1(x - half * 0.3)} ${r1(y + half * 0.8)}`
    : pieceMark(layout, x, y, half);
}

const turned = new WeakMap<readonly number[], Map<number, string>>();

/** A piece's outline turned by an angle, as a path that starts at its middle; y points down. */
function outlineAt(outline: readonly number[], angleDeg: number): string {
  const known = turned.get(outline) ?? new Map<number, string>();
  turned.set(outline, known);
  const old = known.get(angleDeg);
  if (old !== undefined) return old;
  const [c, s] = [cos((angleDeg * Math.PI) / 180), sin((angleDeg * Math.PI) / 180)];
  let [atX, atY] = [0, 0];
  let path = '';
  for (let n = 0; n < outline.length; n += 2) {
    const x = Math.round((outline[n]! * c - outline[n + 1]! * s) * 10) / 10;
    const y = Math.round(-(outline[n]! * s + outline[n + 1]! * c) * 10) / 10;
    path += `${n === 0 ? 'm' : 'l'}${r1(x - atX)} ${r1(y - atY)}`;
    [atX, atY] = [x, y];
  }
  path += 'z';
  known.set(angleDeg, path);
  return path;
}

/** The pieces numbered `from` .. `to` − 1 of a full rack at their true places, mm. */
export function layoutPath(
  { pieces, outline, insideMm }: WalkLayout,
  from: number,
  to: number,
): string {
  let path = '';
  for (let n = from; n < to; n += 1) {
    const { x, y, angleDeg } = pieces[n]!;
    path += `M${r1(x)} ${r1(insideMm.y - y)}${outlineAt(outline, angleDeg)}`;
  }
  return path;
}

/** Compartments of a rack, mm. */
export function cellsPath({ cells, insideMm }: WalkLayout): string {
  let path = '';
  for (let n = 1; n < cells; n += 1)
    path += `M${r1((n * insideMm.x) / cells)} 0V${r1(insideMm.y)}M0 ${r1((n * insideMm.y) / cells)}H${r1(insideMm.x)}`;
  return path;
}

export const STACK = 10;
export const SLICE = 3;
export const STACK_PITCH = 13;
const STACK_WIDTH = 9;

/** Stacks of ten, from left to right and in rows of `aRow` stacks: pieces `from` .. `to` − 1. */
export function stacksPath(from: number, to: number, aRow: number): string {
  let path = '';
  for (let n = from; n < to; n += 1) {
    const stack = Math.floor(n / STACK);
    const [column, row] = [stack % aRow, Math.floor(stack / aRow)];
    path += `M${column * STACK_PITCH + 1} ${(row + 1) * (STACK * SLICE + 6) - 4 - (n % STACK) * SLICE}h${STACK_WIDTH}`;
  }
  return path;
}

export const stacksHeight = (pieces: number, aRow: number): number =>
  Math.max(1, Math.ceil(pieces / STACK / aRow)) * (STACK * SLICE + 6);
