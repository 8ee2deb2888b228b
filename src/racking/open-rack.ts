/**
 * The fullest layout of an open rack: over the patterns and angles that a loading rule allows.
 */
import { forbiddenBy, fullestRows, meetingOf, placedRows } from './rows.js';
import type { Placed, RowLayout } from './rows.js';
import type { Outline } from './outline.js';
import { gapsOf } from './verify.js';

export type OpenPattern = 'grid' | 'staggered' | 'turned';

/** A pattern at an angle of the handle from the rack's x axis, in degrees; rows may run along either wall. */
export interface NamedPattern {
  readonly pattern: OpenPattern;
  readonly angleDeg: number;
}

/** best: any pattern and angle; straight: handles along a wall; at45: handles at 45° to it. */
export type LoadingRule = 'best' | 'straight' | 'at45' | NamedPattern;

export interface OpenLayout {
  readonly pieces: number;
  readonly positions: readonly Placed[];
  readonly pattern: OpenPattern;
  readonly angleDeg: number;
}

/** Shares of the pitch by which every second row is shifted. */
const SHIFTED = [
  0.5,
  -0.5,
  ...[4, 3, 2, 1, 6, 7, 8, 9].flatMap((tenths) => [tenths / 10, -tenths / 10]),
];
const SHIFTS: Readonly<Record<OpenPattern, readonly number[]>> = {
  grid: [0],
  staggered: SHIFTED,
  turned: [0, ...SHIFTED],
};
/** Angles in the order of trial: of equally full layouts the plainest to load is kept. */
const ANGLES = [
  0,
  90,
  45,
  ...Array.from({ length: 19 }, (_, i) => 5 * i).filter((angle) => angle % 45 !== 0),
];

interface Trial extends NamedPattern {
  /** Rows along y: the rack is seen with x and y exchanged. */
  readonly exchanged: boolean;
}

function trialsOf(s: OpenSearch): Trial[] {
  const { rule, outline } = s;
  if (typeof rule === 'object') {
    const angleDeg = outline.plainDisc ? 0 : rule.angleDeg;
    // Of turned rows either kind may be the first. Seen with x and y exchanged, a handle at an angle from x stands at
    // the rest of the right angle.
    return (rule.pattern === 'turned' ? [angleDeg, angleDeg + 180] : [angleDeg]).flatMap(
      (angle) => [
        { pattern: rule.pattern, angleDeg: angle, exchanged: false },
        { pattern: rule.pattern, angleDeg: 90 - angle, exchanged: true },
      ],
    );
  }
  const angles = outline.plainDisc
    ? [0]
    : rule === 'straight'
      ? [0, 90]
      : rule === 'at45'
        ? [45]
        : ANGLES;
  const trials = angles.flatMap((angleDeg): NamedPattern[] => [
    { pattern: 'grid', angleDeg },
    { pattern: 'staggered', angleDeg },
    ...(outline.handle === null
      ? []
      : [
          { pattern: 'turned' as const, angleDeg },
          { pattern: 'turned' as const, angleDeg: angleDeg + 180 },
        ]),
  ]);
  // In a square rack, exchanging x and y gives the same set of angles over again.
  return (s.widthMm === s.depthMm ? [false] : [false, true]).flatMap((exchanged) =>
    trials.map((trial) => ({ ...trial, exchanged })),
  );
}

export interface OpenSearch {
  readonly outline: Outline;
  /** Clear inside of the rack along x and along y. */
  readonly widthMm: number;
  readonly depthMm: number;
  readonly gapMm: number;
  readonly rule: LoadingRule;
  /** Let handles stand out over the walls: only to learn whether the walls are what binds. */
  readonly handlesOverWalls?: boolean | undefined;
  /** A pattern likely to do, tried before the others. */
  readonly first?: NamedPattern | undefined;
}

/** The fullest layout with more than `beat` pieces, or the first found with `enough`; null where there is none. */
function search(
  s: OpenSearch,
  beat: number,
  enough: number,
): { readonly trial: Trial; readonly rows: RowLayout } | null {
  const forbidden = forbiddenBy(s.outline, s.gapMm);
  const trials = trialsOf(s);
  const { first } = s;
  if (first !== undefined) trials.sort((a, b) => alike(b, first) - alike(a, first));
  let best: { trial: Trial; rows: RowLayout } | null = null;
  for (const trial of trials) {
    const [width, depth] = trial.exchanged ? [s.depthMm, s.widthMm] : [s.widthMm, s.depthMm];
    const walls = {
      width,
      depth,
      keepClear: s.handlesOverWalls === true ? [s.outline.body] : null,
    };
    const meeting = meetingOf(
      s.outline,
      forbidden,
      walls,
      s.gapMm,
      trial.angleDeg,
      trial.pattern === 'turned',
    );
    const rows = fullestRows(
      meeting,
      SHIFTS[trial.pattern],
      best === null ? beat : best.rows.pieces,
      enough,
    );
    if (rows !== null) best = { trial, rows };
    if (best !== null && best.rows.pieces >= enough) break;
  }
  return best;
}

const alike = (a: Trial, b: NamedPattern): number => {
  const seen = a.exchanged ? 90 - a.angleDeg : a.angleDeg;
  return a.pattern === b.pattern && (seen - b.angleDeg) % 360 === 0 ? 1 : 0;
};

/** True where some allowed pattern holds so many pieces. */
export const holds = (s: OpenSearch, pieces: number): boolean =>
  pieces <= 0 || search(s, pieces - 1, pieces) !== null;

/** Most pieces any allowed pattern holds. */
export const mostPieces = (s: OpenSearch): number => search(s, 0, Infinity)?.rows.pieces ?? 0;

/**
 * The fullest allowed layout, tested piece against piece; null where not even one piece goes in.
 * Throws if a layout fails that test, which would be a mistake in this program.
 */
export function fullestOpenLayout(s: OpenSearch): OpenLayout | null {
  const found = search(s, 0, Infinity);
  if (found === null) return null;
  const { trial, rows } = found;
  const placed = placedRows(rows);
  const positions = trial.exchanged
    ? placed.map((p) => ({ x: p.y, y: p.x, angleDeg: upright(90 - p.angleDeg) }))
    : placed;
  const gaps = gapsOf(s.outline, positions, s.widthMm, s.depthMm);
  if (gaps.betweenMm < s.gapMm - 1e-5 || gaps.wallMm < s.gapMm - 1e-5) {
    throw new Error(
      `A rack layout failed its check: ${JSON.stringify({ gaps, trial, pieces: rows.pieces })}`,
    );
  }
  return {
    pieces: rows.pieces,
    positions,
    pattern: trial.pattern,
    angleDeg: upright(trial.exchanged ? 90 - trial.angleDeg : trial.angleDeg),
  };
}

const upright = (degrees: number): number => ((degrees % 360) + 360) % 360;
