/** Which alternative is cheapest, and how sure that is. */
import { normalUpper } from './normal-upper.js';

export interface Contender {
  readonly id: string;
  /** Estimated total. */
  readonly total: number;
  /** Standard error of (this total − the best one's), under the same days. */
  readonly errorAgainstBest: number;
}

export interface Ranking {
  /** Ids, cheapest first. */
  readonly order: readonly string[];
  readonly best: string;
  /** Bound on the chance that some other is cheaper than the best by more than the indifference amount. */
  readonly errorProbability: number;
  readonly indifference: number;
  /** Those that cannot be told apart from the best at `allowed`. */
  readonly level: readonly string[];
  readonly separated: boolean;
}

/**
 * Ranks by total. The chance that the one named best is not within `indifference` of being so is at most the sum,
 * over the others, of the chance that each beats it by more (Bonferroni; Kim & Nelson, "Selecting the best
 * system", Handbooks in OR & MS 13, 2006, on indifference zones). Differences are taken as normal.
 *
 * @throws RangeError for no contenders
 */
export function rank(
  contenders: readonly Contender[],
  indifference: number,
  allowed = 0.05,
): Ranking {
  if (contenders.length === 0) throw new RangeError('a ranking needs at least one contender');
  const sorted = contenders.toSorted((a, b) => a.total - b.total || (a.id < b.id ? -1 : 1));
  const best = sorted[0]!;
  const others = sorted.slice(1);
  const chances = others.map(({ total, errorAgainstBest }) =>
    beats(total - best.total + indifference, errorAgainstBest),
  );
  // Told apart: the other is dearer, whatever the indifference amount.
  const apart = others.filter(
    ({ total, errorAgainstBest }) =>
      beats(total - best.total, errorAgainstBest) <= allowed / others.length,
  );
  const errorProbability = Math.min(
    1,
    chances.reduce((sum, chance) => sum + chance, 0),
  );
  return {
    order: sorted.map(({ id }) => id),
    best: best.id,
    errorProbability,
    indifference,
    level: others.filter((one) => !apart.includes(one)).map(({ id }) => id),
    separated: errorProbability <= allowed,
  };
}

/** Chance that a normal difference of this mean and error is below zero. */
const beats = (mean: number, error: number): number =>
  error === 0 ? (mean > 0 ? 0 : 0.5) : normalUpper(mean / error);
