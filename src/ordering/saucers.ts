/** What one saucer under several cups saves. */

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

/** The gain in a sentence: "one saucer for 3 cups saves 19 saucers". The par is larger: there nothing at all runs out. */
export function poolingSentence(gain: PoolingGain): string {
  const cups = gain.separate.length;
  if (gain.saved <= 0) return `sharing it between ${cups} cups saves none`;
  return `sharing it between ${cups} cups saves ${gain.saved} ${gain.saved === 1 ? 'saucer' : 'saucers'} (${gain.pooled} instead of ${gain.separate.join(' + ')}, if nothing else could run out; so the par is higher)`;
}
