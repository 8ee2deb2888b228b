/**
 * Paper cups: the size on the carton is a name, not a measure.
 *
 * Cups sold as 8 oz hold 265 to 295 ml to the brim, cups sold as 12 oz 385 to 420 ml (stated by sellers;
 * common practice). A measured brim always goes before such a guess.
 */
import { ML_PER_FLUID_OUNCE } from '../quantities/unit-sizes.js';
import type { Basis } from './facts.js';
import type { Paper } from './model.js';

/** Brim over nominal size, lowest and highest, at the two sizes for which it has been stated. */
const TOLD = [
  { nominalMl: 8 * ML_PER_FLUID_OUNCE, lowMl: 265, highMl: 295 },
  { nominalMl: 12 * ML_PER_FLUID_OUNCE, lowMl: 385, highMl: 420 },
] as const;

export interface PaperBrim {
  readonly lowMl: number;
  readonly brimMl: number;
  readonly highMl: number;
  readonly basis: Basis;
}

/**
 * The brim of a paper cup in ml: as measured, or the range that its nominal size suggests, read
 * between the sizes stated and held at their proportions outside them. null: neither is known.
 */
export function paperBrim(paper: Pick<Paper, 'nominalMl' | 'brimMl'>): PaperBrim | null {
  if (paper.brimMl !== null)
    return { lowMl: paper.brimMl, brimMl: paper.brimMl, highMl: paper.brimMl, basis: 'measured' };
  if (paper.nominalMl === null) return null;
  const [small, large] = TOLD;
  const along = Math.min(
    1,
    Math.max(0, (paper.nominalMl - small.nominalMl) / (large.nominalMl - small.nominalMl)),
  );
  const between = (a: number, b: number): number => paper.nominalMl! * (a + along * (b - a));
  const lowMl = between(small.lowMl / small.nominalMl, large.lowMl / large.nominalMl);
  const highMl = between(small.highMl / small.nominalMl, large.highMl / large.nominalMl);
  return { lowMl, brimMl: (lowMl + highMl) / 2, highMl, basis: 'assumed' };
}
