/**
 * The fullest layout of an open rack: over the patterns and angles that a loading rule allows.
 */
import { freeRows, piecesOf, placedFree } from './free-search.js';
import type { Settled } from './settle.js';
import { forbiddenBy, meetingOf } from './meeting.js';
import { fullestRows, placedRows } from './rows.js';
import type { Placed, Walls } from './meeting.js';
import type { RowLayout } from './rows.js';
import type { Outline } from './outline.js';
import { gapsOf } from './verify.js';

/** mixed: every row turned and shifted as suits it. */
export type OpenPattern = 'grid' | 'staggered' | 'turned' | 'mixed';

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
type Alternating = Exclude<OpenPattern, 'mixed'>;
const SHIFTS: Readonly<Record<Alternating, readonly number[]>> = {
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
  readonly pattern: Alternating;
  /** Rows along y: the rack is seen with x and y exchanged. */
  readonly exchanged: boolean;
}

function trialsOf(s: OpenSearch): Trial[] {
  const { rule, outline } = s;
  if (typeof rule === 'object') {
    const { pattern } = rule;
    if (pattern === 'mixed') return [];
    const angleDeg = outline.plainDisc ? 0 : rule.angleDeg;
    // Of turned rows either kind may be the first. Seen with x and y exchanged, a handle at an angle from x stands at
    // the rest of the right angle.
    return (pattern === 'turned' ? [angleDeg, angleDeg + 180] : [angleDeg]).flatMap((angle) => [
      { pattern, angleDeg: angle, exchanged: false },
      { pattern, angleDeg: 90 - angle, exchanged: true },
    ]);
  }
  const angles = outline.plainDisc
    ? [0]
    : rule === 'straight'
      ? [0, 90]
      : rule === 'at45'
        ? [45]
        : ANGLES;
  const trials = angles.flatMap((angleDeg): Omit<Trial, 'exchanged'>[] => [
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
  /** A pattern likely to do, tried before the others; of rows that are each free, its angle alone is tried. */
  readonly first?: NamedPattern | undefined;
}

/** Rows in one pattern with more than `beat` pieces: the fullest, or the first found with `enough`; null where there are none. */
function alternating(
  s: OpenSearch,
  beat: number,
  enough: number,
): { readonly trial: Trial; readonly rows: RowLayout } | null {
  const forbidden = forbiddenBy(s.outline, s.gapMm);
  const trials = trialsOf(s);
  const { first } = s;
  if (first !== undefined && first.pattern !== 'mixed')
    trials.sort((a, b) => alike(b, first) - alike(a, first));
  let best: { trial: Trial; rows: RowLayout } | null = null;
  for (const trial of trials) {
    const meeting = meetingOf(
      s.outline,
      forbidden,
      wallsOf(s, trial.exchanged),
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

const wallsOf = (s: OpenSearch, exchanged: boolean): Walls => ({
  width: exchanged ? s.depthMm : s.widthMm,
  depth: exchanged ? s.widthMm : s.depthMm,
  keepClear: s.handlesOverWalls === true ? [s.outline.body] : null,
});

/** Rows that are each free with more than `beat` pieces, where the rule allows them; null where there are none. */
function free(
  s: OpenSearch,
  beat: number,
  enough: number,
): { readonly rows: Settled; readonly exchanged: boolean } | null {
  const { first, rule } = s;
  if (first !== undefined && first.pattern !== 'mixed') return null;
  if (rule !== 'best' && (typeof rule === 'string' || rule.pattern !== 'mixed')) return null;
  const alone = typeof rule === 'object' ? rule : first;
  const named = alone === undefined ? undefined : folded(alone.angleDeg);
  const both = named !== undefined || s.widthMm !== s.depthMm;
  let best: { rows: Settled; exchanged: boolean } | null = null;
  for (const exchanged of both ? [false, true] : [false]) {
    const known = best === null ? beat : piecesOf(best.rows);
    if (known >= enough) break;
    const only = named !== undefined && exchanged ? 90 - named : named;
    const rows = freeRows(s.outline, wallsOf(s, exchanged), s.gapMm, known, enough, only);
    if (rows !== null) best = { rows, exchanged };
  }
  return best;
}

/** Mirrored along the walls, an angle of the first quarter turn. */
const folded = (degrees: number): number => {
  const half = upright(degrees) % 180;
  return half > 90 ? 180 - half : half;
};

/** The fullest layout with more than `beat` pieces, or the first found with `enough`; of equally full ones in one pattern. */
function search(s: OpenSearch, beat: number, enough: number): Found | null {
  const even = alternating(s, beat, enough);
  const known = even === null ? beat : even.rows.pieces;
  if (known >= enough) return even;
  return free(s, known, enough) ?? even;
}

type Found = NonNullable<ReturnType<typeof alternating> | ReturnType<typeof free>>;

const countOf = (found: Found): number =>
  'trial' in found ? found.rows.pieces : piecesOf(found.rows);

const alike = (a: Trial, b: NamedPattern): number => {
  const seen = a.exchanged ? 90 - a.angleDeg : a.angleDeg;
  return a.pattern === b.pattern && (seen - b.angleDeg) % 360 === 0 ? 1 : 0;
};

/** A pattern that holds so many pieces (≥ 1); null where no allowed one does. */
export function patternFor(s: OpenSearch, pieces: number): NamedPattern | null {
  const found = search(s, pieces - 1, pieces);
  return found === null ? null : patternOf(found);
}

/** True where some allowed pattern holds so many pieces. */
export const holds = (s: OpenSearch, pieces: number): boolean =>
  pieces <= 0 || patternFor(s, pieces) !== null;

/** Most pieces any allowed pattern holds. */
export const mostPieces = (s: OpenSearch): number => {
  const found = search(s, 0, Infinity);
  return found === null ? 0 : countOf(found);
};

/**
 * The fullest allowed layout, tested piece against piece; null where not even one piece goes in.
 * Throws if a layout fails that test, which would be a mistake in this program.
 */
export function fullestOpenLayout(s: OpenSearch): OpenLayout | null {
  const found = search(s, 0, Infinity);
  if (found === null) return null;
  const named = patternOf(found);
  const { placed, exchanged } =
    'trial' in found
      ? { placed: placedRows(found.rows), exchanged: found.trial.exchanged }
      : { placed: placedFree(found.rows), exchanged: found.exchanged };
  const positions = exchanged
    ? placed.map((p) => ({ x: p.y, y: p.x, angleDeg: upright(90 - p.angleDeg) }))
    : placed;
  const pieces = countOf(found);
  const gaps = gapsOf(s.outline, positions, s.widthMm, s.depthMm);
  if (gaps.betweenMm < s.gapMm - 1e-5 || gaps.wallMm < s.gapMm - 1e-5)
    throw new Error(
      `A rack layout failed its check: ${JSON.stringify({ gaps, ...named, pieces })}`,
    );
  return { pieces, positions, ...named };
}

/** The pattern, with its angle as the rack stands. */
function patternOf(found: Found): NamedPattern {
  const [{ exchanged, pattern }, angle] =
    'trial' in found
      ? [found.trial, found.trial.angleDeg]
      : [{ exchanged: found.exchanged, pattern: 'mixed' as const }, found.rows.turns.angleDeg];
  return { pattern, angleDeg: upright(exchanged ? 90 - angle : angle) };
}

const upright = (degrees: number): number => ((degrees % 360) + 360) % 360;
