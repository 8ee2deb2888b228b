/**
 * Which cup sits on which saucer, and what one saucer under several cups saves.
 *
 * A fit is given (somebody tried it) or computed: the foot must go into the well with some clearance, and
 * not so much that the cup slides. Colours, where both are given, must agree.
 */

export interface CupFoot {
  readonly id: string;
  /** Diameter of the foot, mm; null: not known. */
  readonly footMm: number | null;
  readonly colour?: string | undefined;
}

export interface SaucerWell {
  readonly id: string;
  /** Diameter of the well, mm; null: not known. */
  readonly wellMm: number | null;
  readonly colour?: string | undefined;
  /** Cups known to fit. */
  readonly takes?: readonly string[] | undefined;
}

/** Well less foot, mm, in diameter. Assumed, no source: 1 mm to set the cup down, no more than 8 mm before it slides. */
export const USUAL_CLEARANCE = { leastMm: 1, mostMm: 8 } as const;

export interface SaucerFit {
  readonly cup: string;
  readonly saucer: string;
  readonly fits: boolean;
  readonly reason:
    | 'given'
    | 'computed'
    | 'foot too wide'
    | 'cup would slide'
    | 'colours differ'
    | 'measures missing';
  /** Well less foot, mm; null where one is not known. */
  readonly clearanceMm: number | null;
}

export interface SaucerFits {
  /** Every cup with every saucer. */
  readonly pairs: readonly SaucerFit[];
  /** Cups that no saucer takes. */
  readonly orphanCups: readonly string[];
  /** Saucers that take no cup. */
  readonly orphanSaucers: readonly string[];
  /** Saucers that take several cups, and could be bought as one pool. */
  readonly pools: readonly { readonly saucer: string; readonly cups: readonly string[] }[];
}

/** Tries every cup on every saucer. A fit that was given beats the measures, but not a difference of colour. */
export function saucerFits(
  cups: readonly CupFoot[],
  saucers: readonly SaucerWell[],
  clearance: { readonly leastMm: number; readonly mostMm: number } = USUAL_CLEARANCE,
): SaucerFits {
  const pairs = cups.flatMap((cup) => saucers.map((saucer) => fitOf(cup, saucer, clearance)));
  const fitting = pairs.filter(({ fits }) => fits);
  const cupsOf = (saucer: string): readonly string[] =>
    fitting.filter((pair) => pair.saucer === saucer).map(({ cup }) => cup);
  return {
    pairs,
    orphanCups: cups.map(({ id }) => id).filter((id) => !fitting.some(({ cup }) => cup === id)),
    orphanSaucers: saucers.map(({ id }) => id).filter((id) => cupsOf(id).length === 0),
    pools: saucers
      .map(({ id }) => ({ saucer: id, cups: cupsOf(id) }))
      .filter((pool) => pool.cups.length > 1),
  };
}

function fitOf(
  cup: CupFoot,
  saucer: SaucerWell,
  clearance: { readonly leastMm: number; readonly mostMm: number },
): SaucerFit {
  const clearanceMm =
    cup.footMm === null || saucer.wellMm === null ? null : saucer.wellMm - cup.footMm;
  const verdict = (fits: boolean, reason: SaucerFit['reason']): SaucerFit => ({
    cup: cup.id,
    saucer: saucer.id,
    fits,
    reason,
    clearanceMm,
  });
  if (
    cup.colour !== undefined &&
    saucer.colour !== undefined &&
    cup.colour.trim().toLowerCase() !== saucer.colour.trim().toLowerCase()
  )
    return verdict(false, 'colours differ');
  if (saucer.takes?.includes(cup.id)) return verdict(true, 'given');
  if (clearanceMm === null) return verdict(false, 'measures missing');
  if (clearanceMm < clearance.leastMm) return verdict(false, 'foot too wide');
  if (clearanceMm > clearance.mostMm) return verdict(false, 'cup would slide');
  return verdict(true, 'computed');
}

export interface PoolingGain {
  /** Saucers of each kind, one kind a cup. */
  readonly separate: readonly number[];
  /** Saucers of the one kind that serves all. */
  readonly pooled: number;
  /** Saucers saved. */
  readonly saved: number;
}

/**
 * Saucers that a pool saves, from the peaks of the same days: the pieces that had to be off the shelf at
 * once. Each number is the smallest that carries at least `level` of the days, each kind by itself; kept
 * jointly, separate kinds would need at least as many, so the saving is not overstated.
 *
 * @param separatePeaks one row a day, one number a cup
 * @param pooledPeaks one number a day, all cups together
 */
export function poolingGain(
  separatePeaks: readonly (readonly number[])[],
  pooledPeaks: readonly number[],
  level: number,
): PoolingGain {
  const cups = separatePeaks[0]?.length ?? 0;
  const separate = Array.from({ length: cups }, (_, cup) =>
    carries(
      separatePeaks.map((day) => day[cup]!),
      level,
    ),
  );
  const pooled = carries(pooledPeaks, level);
  return { separate, pooled, saved: separate.reduce((sum, pieces) => sum + pieces, 0) - pooled };
}

/** The smallest number that at most ⌊n(1 − level)⌋ of the n peaks exceed. */
function carries(peaks: readonly number[], level: number): number {
  const sorted = [...peaks].sort((a, b) => b - a);
  return sorted[Math.min(sorted.length - 1, Math.floor(peaks.length * (1 - level) + 1e-9))] ?? 0;
}

/** The gain in a sentence: "one saucer for 3 cups saves 19 saucers". */
export function poolingSentence(gain: PoolingGain): string {
  const cups = gain.separate.length;
  if (gain.saved <= 0) return `one saucer for ${cups} cups saves none`;
  return `one saucer for ${cups} cups saves ${gain.saved} ${gain.saved === 1 ? 'saucer' : 'saucers'} (${gain.pooled} instead of ${gain.separate.join(' + ')})`;
}
