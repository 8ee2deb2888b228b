/**
 * The smallest number of pieces from which the par still stands after a spell of losses, with a chosen
 * probability — exact, with walk-off and retirement acting on the number itself, and lead time random.
 */
import { lossesAtMost, type LossRates } from './losses.js';
import type { WeightedDays } from './lead-time.js';

/** P(pieces still ≥ par at the end), starting with `held`, where the spell is one of `spells`. */
export function chanceParHolds(
  par: number,
  held: number,
  rates: LossRates,
  spells: readonly WeightedDays[],
): number {
  return spells.reduce(
    (sum, { days, weight }) => sum + weight * lossesAtMost(rates, held, days, held - par),
    0,
  );
}

/** Spells of a fixed length followed by a lead time. */
export const after = (days: number, leadTimes: readonly WeightedDays[]): readonly WeightedDays[] =>
  leadTimes.map((lead) => ({ days: days + lead.days, weight: lead.weight }));

/** Smallest whole number of pieces with `chanceParHolds` ≥ confidence. */
export function smallestHolding(
  par: number,
  rates: LossRates,
  spells: readonly WeightedDays[],
  confidence: number,
): number {
  const holds = (held: number): boolean => chanceParHolds(par, held, rates, spells) >= confidence;
  if (holds(par)) return par;
  // The chance rises with every piece more: double the spares until enough, then halve the gap.
  let short = par;
  let step = 1;
  while (!holds(short + step)) {
    short += step;
    step *= 2;
  }
  let enough = short + step;
  while (enough - short > 1) {
    const middle = Math.floor((short + enough) / 2);
    if (holds(middle)) enough = middle;
    else short = middle;
  }
  return enough;
}
