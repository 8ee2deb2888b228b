/**
 * A second, plainer geometry to hold layouts against: discs, boxes and bars by their textbook distances,
 * in coordinates of the piece itself. Nothing here is shared with the code under test.
 */
import type { Vessel } from '../../src/racking/vessel.js';

export interface At {
  readonly x: number;
  readonly y: number;
  readonly angleDeg: number;
}

type XY = readonly [number, number];

const turnedBy = ([x, y]: XY, degrees: number): XY => {
  const r = (degrees * Math.PI) / 180;
  return [x * Math.cos(r) - y * Math.sin(r), x * Math.sin(r) + y * Math.cos(r)];
};

const toPage = (p: XY, at: At): XY => {
  const [x, y] = turnedBy(p, at.angleDeg);
  return [x + at.x, y + at.y];
};

const toPiece = (p: XY, at: At): XY => turnedBy([p[0] - at.x, p[1] - at.y], -at.angleDeg);

/** A box from x0 to x1 and -half to half, with everything within `round` of it. */
interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly half: number;
  readonly round: number;
}

/** Round and square pieces only. */
function boxesOf(vessel: Vessel): Box[] {
  const a = vessel.rimMm / 2;
  const square = vessel.footprint === 'square';
  const body: Box = square
    ? { x0: -a, x1: a, half: (vessel.rimAcrossMm ?? vessel.rimMm) / 2, round: 0 }
    : { x0: 0, x1: 0, half: 0, round: a };
  const h = vessel.handleMm ?? 0;
  if (h <= 0) return [body];
  const half = vessel.handleWidthMm! / 2;
  return [
    body,
    vessel.handleTip === 'round'
      ? { x0: 0, x1: a + h - half, half: 0, round: half }
      : { x0: 0, x1: a + h, half, round: 0 },
  ];
}

const corners = (box: Box): XY[] => [
  [box.x0, -box.half],
  [box.x1, -box.half],
  [box.x1, box.half],
  [box.x0, box.half],
];

const pointToBox = ([x, y]: XY, box: Box): number =>
  Math.hypot(Math.max(box.x0 - x, 0, x - box.x1), Math.max(Math.abs(y) - box.half, 0));

/** Whether two boxes as placed overlap: no axis of either parts them. */
function overlap(a: Box, atA: At, b: Box, atB: At): boolean {
  return [atA.angleDeg, atA.angleDeg + 90, atB.angleDeg, atB.angleDeg + 90].every((degrees) => {
    const along = (box: Box, at: At): number[] =>
      corners(box).map((corner) => turnedBy(toPage(corner, at), -degrees)[0]);
    const [p, q] = [along(a, atA), along(b, atB)];
    return Math.min(...p) < Math.max(...q) - 1e-9 && Math.min(...q) < Math.max(...p) - 1e-9;
  });
}

function boxDistance(a: Box, atA: At, b: Box, atB: At): number {
  const across = overlap(a, atA, b, atB) ? 0 : Infinity;
  const aToB = corners(a).map((corner) => pointToBox(toPiece(toPage(corner, atA), atB), b));
  const bToA = corners(b).map((corner) => pointToBox(toPiece(toPage(corner, atB), atA), a));
  return Math.min(across, ...aToB, ...bToA) - a.round - b.round;
}

/** Least gap between any two pieces, mm. */
export function leastGap(vessel: Vessel, positions: readonly At[]): number {
  const boxes = boxesOf(vessel);
  const far = Math.max(
    ...boxes.map((box) => Math.hypot(Math.max(-box.x0, box.x1), box.half) + box.round),
  );
  let least = Infinity;
  positions.forEach((p, i) => {
    for (const q of positions.slice(i + 1)) {
      if (Math.hypot(p.x - q.x, p.y - q.y) - 2 * far > least) continue;
      for (const a of boxes)
        for (const b of boxes) least = Math.min(least, boxDistance(a, p, b, q));
    }
  });
  return least;
}

/** Least gap between any piece and the walls, mm. */
export function leastWallGap(
  vessel: Vessel,
  positions: readonly At[],
  width: number,
  depth: number,
): number {
  const gaps = positions.flatMap((at) =>
    boxesOf(vessel).flatMap((box) =>
      corners(box).flatMap((corner) => {
        const [x, y] = toPage(corner, at);
        return [x, width - x, y, depth - y].map((gap) => gap - box.round);
      }),
    ),
  );
  return Math.min(...gaps);
}

/** Points round an ellipse as placed, every 3°. */
export const ellipsePoints = (vessel: Vessel, at: At): XY[] =>
  Array.from({ length: 120 }, (_, i) => {
    const t = (i * Math.PI) / 60;
    return toPage(
      [(vessel.rimMm / 2) * Math.cos(t), ((vessel.rimAcrossMm ?? vessel.rimMm) / 2) * Math.sin(t)],
      at,
    );
  });
