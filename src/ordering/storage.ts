/**
 * Where the pieces stand: as many as fit on the machine top, the rest in reserve, and when to fetch more.
 * Geometry and one quantile; what the fetching does to a rush is for the rush to say.
 */
import { poissonCounts, quantileOf } from './counts-of-pieces.js';
import { problem } from './problems.js';
import type { Fault, Warning } from '../quantities/flaw.js';
import type { StorageSlice } from './storage-schema.js';
import { packedOn, piecesOnTop, type Pieces, type StoredWare } from './machine-top.js';
import type { Board, PlacedStack } from './shelf-packing.js';

/** Usable top of a two-group machine (trade figure, from memory) and what is assumed of it. */
export const STORAGE_DEFAULTS = {
  widthMm: 700,
  depthMm: 380,
  high: 2,
  gapMm: 4,
  tripMs: 120_000,
  reserveHigh: 2,
  confidence: 0.95,
} as const;

export interface StoredLine {
  readonly ware: string;
  readonly name: string;
  readonly onTop: number;
  readonly inReserve: number;
  /** Fetch when so many are left on top; null where all stand on top, or none do. */
  readonly trigger: number | null;
  /** True where it stands on the machine to be warm; a cup fetched from the reserve is cold. */
  readonly warmed: boolean;
}

/** A stack as it is drawn: where, how wide, how many pieces. */
export interface TopStack extends PlacedStack {
  readonly pieces: number;
  readonly diameterMm: number;
  readonly handleMm: number;
}

export interface StorageLayout {
  readonly top: Board & { readonly high: number };
  readonly lines: readonly StoredLine[];
  readonly stacks: readonly TopStack[];
  /** Mass on the machine, g; null where a mass is not known. */
  readonly massG: number | null;
  readonly massLimitG: number | null;
  /** Pieces that fit neither on top nor in reserve. */
  readonly homeless: readonly { readonly ware: string; readonly pieces: number }[];
  /** What would make room, in words; empty where all fits. */
  readonly remedies: readonly string[];
  readonly warnings: readonly Warning[];
}

/** Problems with the slice: ware that does not exist, more on top than the par or than fits. */
export function storageProblems(
  slice: StorageSlice,
  wares: readonly StoredWare[],
): readonly Fault[] {
  const problems: Fault[] = [];
  for (const field of ['onTop', 'trigger'] as const) {
    for (const [id, pieces] of Object.entries(slice[field] ?? {})) {
      const ware = wares.find((one) => one.id === id);
      if (ware === undefined)
        problems.push(
          problem(
            ['storage', field, id],
            id,
            'is not a ware of this scenario',
            `choose one of ${wares.map((one) => one.id).join(', ')}`,
          ),
        );
      else if (pieces > ware.par)
        problems.push(
          problem(
            ['storage', field, id],
            pieces,
            `pieces are more than the stock of this item (${ware.par})`,
            'write a smaller number',
          ),
        );
      else if (field === 'onTop' && pieces > 0 && ware.diameterMm === null)
        problems.push(
          problem(
            ['storage', field, id],
            id,
            'has no size',
            'give its rim and foot, so that the space it needs can be worked out',
          ),
        );
    }
  }
  for (const key of ['width', 'depth'] as const)
    if (slice.top[key] === 0)
      problems.push(
        problem(
          ['storage', 'top', key],
          '0 mm',
          'is too little room',
          'give the usable length, or leave it out',
        ),
      );
  return problems;
}

/** Works out the layout; the slice has no problems. */
export function storageLayout(slice: StorageSlice, wares: readonly StoredWare[]): StorageLayout {
  const top = {
    widthMm: slice.top.width ?? STORAGE_DEFAULTS.widthMm,
    depthMm: slice.top.depth ?? STORAGE_DEFAULTS.depthMm,
    high: slice.top.high ?? STORAGE_DEFAULTS.high,
  };
  const gapMm = slice.top.gap ?? STORAGE_DEFAULTS.gapMm;
  const massLimitG = slice.top.massLimit ?? null;
  const onTop = piecesOnTop(wares, { ...top, gapMm, massLimitG }, slice.onTop ?? {});
  const packing = packedOn(top, 1, wares, onTop, top.high, gapMm);
  const stacks = stacksWithPieces(packing.placed, wares, onTop, top.high);
  const masses = wares
    .filter((ware) => onTop[ware.id]! > 0)
    .map((ware) => (ware.massG === null ? null : ware.massG * onTop[ware.id]!));

  const lines = wares.map((ware): StoredLine => {
    const above = onTop[ware.id]!;
    const inReserve = ware.par - above;
    return {
      ware: ware.id,
      name: ware.name,
      onTop: above,
      inReserve,
      warmed: above > 0 && ware.warmth > 0,
      trigger:
        above === 0 || inReserve === 0
          ? null
          : (slice.trigger?.[ware.id] ??
            refillTrigger(ware, above, slice.trip ?? STORAGE_DEFAULTS.tripMs)),
    };
  });
  const { homeless, remedies } = reserveRoom(slice, wares, onTop, gapMm);
  return {
    top,
    lines,
    stacks,
    massG: masses.some((grams) => grams === null)
      ? null
      : masses.reduce<number>((sum, grams) => sum + grams!, 0),
    massLimitG,
    homeless,
    remedies,
    warnings: warningsOf(wares, packing.left, massLimitG, masses.includes(null)),
  };
}

/** Pieces left on top at which more are fetched: the uses during a trip are no more, with 95 %. */
export function refillTrigger(
  ware: Pick<StoredWare, 'peakUsesPerHour'>,
  onTop: number,
  tripMs: number,
): number {
  const uses = quantileOf(
    poissonCounts((ware.peakUsesPerHour * tripMs) / 3_600_000),
    STORAGE_DEFAULTS.confidence,
  );
  return Math.min(onTop, uses);
}

function stacksWithPieces(
  placed: readonly PlacedStack[],
  wares: readonly StoredWare[],
  onTop: Pieces,
  high: number,
): readonly TopStack[] {
  const left: Record<string, number> = { ...onTop };
  return placed.map((stack) => {
    const ware = wares.find(({ id }) => id === stack.ware)!;
    const pieces = Math.min(high, left[stack.ware]!);
    left[stack.ware]! -= pieces;
    return { ...stack, pieces, diameterMm: ware.diameterMm!, handleMm: ware.handleMm };
  });
}

/** What does not fit in reserve, and what would take it. Ware without measures is not counted. */
function reserveRoom(
  slice: StorageSlice,
  wares: readonly StoredWare[],
  onTop: Pieces,
  gapMm: number,
): Pick<StorageLayout, 'homeless' | 'remedies'> {
  const { reserve } = slice;
  if (reserve === undefined) return { homeless: [], remedies: [] };
  const pieces: Pieces = Object.fromEntries(
    wares.map((ware) => [ware.id, ware.par - onTop[ware.id]!]),
  );
  const board = { widthMm: reserve.width, depthMm: reserve.depth };
  const high = reserve.high ?? STORAGE_DEFAULTS.reserveHigh;
  const leftWith = (shelves: number, stackHigh: number): Readonly<Record<string, number>> =>
    packedOn(board, shelves, wares, pieces, stackHigh, gapMm).left;
  const left = leftWith(reserve.shelves, high);
  const homeless = Object.entries(left).map(([ware, stacks]) => ({
    ware,
    pieces: Math.min(pieces[ware]!, stacks * high),
  }));
  if (homeless.length === 0) return { homeless, remedies: [] };
  const firstThatFits = (from: number, to: number, fits: (n: number) => boolean): number | null => {
    for (let n = from; n <= to; n++) if (fits(n)) return n;
    return null;
  };
  const shelves = firstThatFits(
    reserve.shelves + 1,
    reserve.shelves + 50,
    (n) => Object.keys(leftWith(n, high)).length === 0,
  );
  const higher = firstThatFits(
    high + 1,
    6,
    (n) => Object.keys(leftWith(reserve.shelves, n)).length === 0,
  );
  return {
    homeless,
    remedies: [
      remedyOf(
        `shelves of ${board.widthMm} × ${board.depthMm} mm`,
        reserve.shelves,
        shelves,
        higher,
      ),
    ],
  };
}

/**
 * What would hold everything, as a sentence.
 * @param shelves as many as it takes; null: no number of them does
 * @param higher pieces in a stack that would do it too; null: none would
 */
function remedyOf(
  these: string,
  there: number,
  shelves: number | null,
  higher: number | null,
): string {
  if (shelves === null)
    return `Pieces are wider than ${these} take, however many shelves there are.`;
  const stacks =
    higher === null ? '' : `, or stacks of ${higher} in the reserve, if the pieces stack safely`;
  return `To hold everything: ${shelves} ${these} (there ${there === 1 ? 'is' : 'are'} ${there})${stacks}.`;
}

function warningsOf(
  wares: readonly StoredWare[],
  left: Readonly<Record<string, number>>,
  massLimitG: number | null,
  massMissing: boolean,
): readonly Warning[] {
  const warnings: Warning[] = Object.keys(left).map((id) => ({
    code: 'top-too-small',
    path: `storage.onTop.${id}`,
    message: `${wares.find((ware) => ware.id === id)?.name ?? id}: the number given for the machine top does not fit there`,
  }));
  for (const ware of wares)
    if (ware.onMachine && ware.diameterMm === null)
      warnings.push({
        code: 'no-measures',
        path: `ware.${ware.id}`,
        message: `${ware.name} has no rim and foot, so its space on the machine top cannot be worked out; all of it is kept in the reserve`,
      });
  if (massLimitG !== null && massMissing)
    warnings.push({
      code: 'no-mass',
      path: 'storage.top.massLimit',
      message:
        'an item on the machine top has no weight in the file, so the weight limit may be exceeded',
    });
  if (massLimitG === null)
    warnings.push({
      code: 'no-mass-limit',
      path: 'storage.top.massLimit',
      message: "no weight limit is given for the machine top; look it up in the machine's manual",
    });
  return warnings;
}
