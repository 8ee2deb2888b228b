/**
 * Where the pieces stand: as many as fit on the machine top, the rest in reserve, and when to fetch more.
 * Geometry and one quantile; what the fetching does to a rush is for the rush to say.
 */
import { poissonCounts, quantileOf } from './counts-of-pieces.js';
import { problem, type Problem, type Warning } from './problems.js';
import type { StorageSlice } from './schema.js';
import {
  cellOf,
  overhangOf,
  packStacks,
  type Board,
  type Packing,
  type PlacedStack,
} from './shelf-packing.js';

export interface StoredWare {
  readonly id: string;
  readonly name: string;
  readonly par: number;
  /** Largest of rim and foot, mm; null: not known, so it can only stand in reserve. */
  readonly diameterMm: number | null;
  /** Handle beyond the rim, mm. */
  readonly handleMm: number;
  readonly massG: number | null;
  /** Whether it belongs on the machine: cups and glasses do, saucers and spoons do not. */
  readonly onMachine: boolean;
  /** Mean uses in the busiest hour. */
  readonly peakUsesPerHour: number;
}

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
): readonly Problem[] {
  const problems: Problem[] = [];
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
  const onTop = piecesOnTop(slice, wares, top, gapMm, massLimitG);
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

type Pieces = Readonly<Record<string, number>>;

/** Sets the pieces out in stacks on boards; ware without measures stands elsewhere. */
function packedOn(
  board: Board,
  boards: number,
  wares: readonly StoredWare[],
  pieces: Pieces,
  high: number,
  gapMm: number,
): Packing {
  const standing = wares.flatMap(({ id, diameterMm, handleMm }) => {
    if (pieces[id]! === 0 || diameterMm === null) return [];
    const vessel = { diameterMm, handleMm };
    return [
      {
        ware: id,
        cellMm: cellOf(vessel, gapMm),
        overhangMm: overhangOf(vessel, gapMm),
        count: Math.ceil(pieces[id]! / high),
      },
    ];
  });
  return packStacks(standing, board, boards);
}

/**
 * How many of each go on top: stack by stack for the ware that has the smallest part of its par there, until
 * nothing more fits. Numbers that the scenario gives are taken as they are.
 */
function piecesOnTop(
  slice: StorageSlice,
  wares: readonly StoredWare[],
  top: Board & { readonly high: number },
  gapMm: number,
  massLimitG: number | null,
): Pieces {
  const onTop: Record<string, number> = Object.fromEntries(
    wares.map((ware) => [ware.id, slice.onTop?.[ware.id] ?? 0]),
  );
  const growing = new Set(
    wares.filter(
      (ware) =>
        ware.onMachine &&
        ware.diameterMm !== null &&
        slice.onTop?.[ware.id] === undefined &&
        ware.par > 0,
    ),
  );
  const mass = (): number =>
    wares.reduce((sum, ware) => sum + (ware.massG ?? 0) * onTop[ware.id]!, 0);
  while (growing.size > 0) {
    const ware = [...growing].reduce((least, one) =>
      onTop[one.id]! / one.par < onTop[least.id]! / least.par ? one : least,
    );
    const before = onTop[ware.id]!;
    onTop[ware.id] = Math.min(ware.par, before + top.high);
    const fits =
      Object.keys(packedOn(top, 1, wares, onTop, top.high, gapMm).left).length === 0 &&
      (massLimitG === null || mass() <= massLimitG);
    if (!fits) onTop[ware.id] = before;
    if (!fits || onTop[ware.id] === ware.par) growing.delete(ware);
  }
  return onTop;
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
      ...(shelves === null
        ? [
            `shelves of ${board.widthMm} × ${board.depthMm} mm are too small for the widest pieces, however many there are`,
          ]
        : [
            `${shelves} shelves of ${board.widthMm} × ${board.depthMm} mm would hold everything (there are ${reserve.shelves})`,
          ]),
      ...(higher === null
        ? []
        : [`stacks of ${higher} in the reserve would, if the pieces stack safely`]),
    ],
  };
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
