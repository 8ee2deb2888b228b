/**
 * Which pieces stand on the machine top. Small cups first, as a cold one takes most heat off its drink; then row by
 * row for the cup with most uses a row, two rows at most; then what needs no warmth; then whatever still fits.
 */
import { cellOf, overhangOf, packStacks, type Board, type Packing } from './shelf-packing.js';

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
  /**
   * How much a cold one cools its drink: grams of vessel for each millilitre of drink; 0 where nothing hot
   * is served in it.
   */
  readonly warmth: number;
  /** Mean uses in the busiest hour. */
  readonly peakUsesPerHour: number;
}

export type Pieces = Readonly<Record<string, number>>;

/** Rows that one cup gets before others have had theirs. */
const MOST_ROWS = 2;

/** Sets the pieces out in stacks on boards; ware without measures stands elsewhere. */
export function packedOn(
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

export interface Top extends Board {
  readonly high: number;
  readonly gapMm: number;
  /** What the top may carry, g; null: not known. */
  readonly massLimitG: number | null;
}

/**
 * How many of each go on top.
 * @param given numbers that the scenario gives; they are taken as they are
 */
export function piecesOnTop(wares: readonly StoredWare[], top: Top, given: Pieces): Pieces {
  const onTop: Record<string, number> = Object.fromEntries(
    wares.map((ware) => [ware.id, given[ware.id] ?? 0]),
  );
  const free = wares.filter(
    (ware) => ware.onMachine && ware.diameterMm !== null && given[ware.id] === undefined,
  );
  const fits = (): boolean =>
    Object.keys(packedOn(top, 1, wares, onTop, top.high, top.gapMm).left).length === 0 &&
    (top.massLimitG === null ||
      wares.reduce((sum, ware) => sum + (ware.massG ?? 0) * onTop[ware.id]!, 0) <= top.massLimitG);
  /** Adds up to so many stacks; whether one found room. */
  const grow = (ware: StoredWare, stacks: number): boolean => {
    const before = onTop[ware.id]!;
    for (let added = 0; added < stacks && onTop[ware.id]! < ware.par; added++) {
      const last = onTop[ware.id]!;
      onTop[ware.id] = Math.min(ware.par, last + top.high);
      if (fits()) continue;
      onTop[ware.id] = last;
      break;
    }
    return onTop[ware.id]! > before;
  };
  const byUses = (some: readonly StoredWare[]): StoredWare[] =>
    some.toSorted((a, b) => b.peakUsesPerHour - a.peakUsesPerHour);
  const warm = byUses(free.filter((ware) => ware.warmth > 0));
  const smallest = warm
    .filter(({ peakUsesPerHour }) => peakUsesPerHour > 0)
    .toSorted((a, b) => b.warmth - a.warmth)[0];
  const rows = new Map<StoredWare, number>(warm.map((ware) => [ware, 0]));
  const addRow = (ware: StoredWare): void => {
    if (grow(ware, rowOf(ware, top))) rows.set(ware, rows.get(ware)! + 1);
    else rows.delete(ware);
    if (rows.get(ware) === MOST_ROWS) rows.delete(ware);
  };
  if (smallest !== undefined) addRow(smallest);
  while (rows.size > 0)
    addRow(
      [...rows.keys()].reduce((best, one) =>
        one.peakUsesPerHour / (rows.get(one)! + 1) > best.peakUsesPerHour / (rows.get(best)! + 1)
          ? one
          : best,
      ),
    );
  for (const ware of [...byUses(free.filter((one) => one.warmth === 0)), ...warm])
    grow(ware, ware.par);
  return onTop;
}

/** Stacks in a full row. */
function rowOf({ diameterMm, handleMm }: StoredWare, { widthMm, gapMm }: Top): number {
  const vessel = { diameterMm: diameterMm!, handleMm };
  return Math.max(1, Math.floor((widthMm - overhangOf(vessel, gapMm)) / cellOf(vessel, gapMm)));
}
