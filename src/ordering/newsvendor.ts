/**
 * The newsvendor: one decision before the demand is known. The right number is the quantile of demand at
 * (cost of one too few) / (cost of one too few + cost of one too many); the same ratio says which service
 * level is worth buying.
 */
import { normalQuantile } from '../engine/normal.js';
import { quantileOf, type PieceCounts } from './counts-of-pieces.js';

/** Cost of a piece too few and of a piece too many, in one unit. */
export interface MismatchCosts {
  readonly under: number;
  readonly over: number;
}

/** The level worth buying: the share of occasions on which there should be enough. */
export const criticalRatio = ({ under, over }: MismatchCosts): number => under / (under + over);

/** The right number of pieces for a demand given as exact probabilities: smallest q with P(demand ≤ q) ≥ ratio. */
export function newsvendor(
  demand: PieceCounts,
  costs: MismatchCosts,
): { readonly quantity: number; readonly expectedCost: number } {
  const quantity = quantileOf(demand, criticalRatio(costs));
  return { quantity, expectedCost: mismatchCost(demand, quantity, costs) };
}

/** Mean cost of holding `quantity` against a demand. */
export const mismatchCost = (
  demand: PieceCounts,
  quantity: number,
  { under, over }: MismatchCosts,
): number =>
  demand.reduce(
    (sum, probability, pieces) =>
      sum +
      probability * (pieces > quantity ? under * (pieces - quantity) : over * (quantity - pieces)),
    0,
  );

/** The right quantity for a demand that is normal; not rounded. */
export function normalNewsvendor(
  { mean, sd }: { readonly mean: number; readonly sd: number },
  costs: MismatchCosts,
): { readonly ratio: number; readonly z: number; readonly quantity: number } {
  const ratio = criticalRatio(costs);
  const z = normalQuantile(ratio);
  return { ratio, z, quantity: mean + z * sd };
}

/**
 * The service level worth buying for the last piece of a ware.
 *
 * @param pieceMinorPerYear what one piece more costs a year: its price over the years it lasts, holding, breakage
 * @param shortMinor what it costs to be a piece short in one rush: the margin of the drinks lost or spoilt
 * @param rushesPerYear rushes a year
 */
export function levelWorthBuying({
  pieceMinorPerYear,
  shortMinor,
  rushesPerYear,
}: {
  readonly pieceMinorPerYear: number;
  readonly shortMinor: number;
  readonly rushesPerYear: number;
}): number {
  // A piece too many costs its share of a year in every rush; a piece too few costs the shortage, less the piece saved.
  const over = pieceMinorPerYear / rushesPerYear;
  return shortMinor <= over ? 0 : criticalRatio({ under: shortMinor - over, over });
}
