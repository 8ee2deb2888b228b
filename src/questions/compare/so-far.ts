/** What is known of each house while a comparison still runs: pieces and money as they stand. No verdict: that needs the days of all. */
import type { Answer } from '../size/answer.js';
import { asItIsOf, likeCertified } from './as-it-is.js';
import { costOf } from './differences.js';
import type { Seen } from './looks.js';

/** Money in whole currency units; of the house as it is as certified, of others that plus their difference. */
export interface RowSoFar {
  readonly name: string;
  /** Something to plan for: no choice, so its total says nothing. */
  readonly planFor: boolean;
  readonly pieces: number;
  readonly stockCost: number;
  /** Over the horizon. */
  readonly total: number;
}

/** @param seen the base first; @param certified the answer that `size` has for it */
export function rowsSoFar(seen: readonly Seen[], certified: Answer, perUnit: number): RowSoFar[] {
  const { stock, costs } = asItIsOf(seen[0]!.one, certified);
  return seen.map(({ one, base }) => ({
    name: one.candidate.name,
    planFor: one.candidate.planFor,
    pieces: likeCertified(one, base, stock).reduce((sum, pieces) => sum + pieces, 0),
    stockCost: certified.cost + (costOf(one) - costOf(base)) / perUnit,
    total: (costs.total + (one.costs.total - base.costs.total)) / perUnit,
  }));
}
