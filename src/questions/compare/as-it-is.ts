/** The house as it is as a comparison reports it: its certified stock, and the money of that. Alternatives are put beside it by their difference. */
import { mergeDays } from '../../cafe/rush.js';
import type { Costs } from '../../comparing/costs.js';
import type { Answer } from '../size/answer.js';
import { costOfScenario } from './costs.js';
import { extraOf, runningOf, type Evaluated } from './evaluate.js';

export interface AsItIs {
  readonly certified: Answer;
  readonly stock: readonly number[];
  /** Minor units. */
  readonly costs: Costs;
}

/** @param certified the answer that `size` has for the house as it is */
export function asItIsOf(own: Evaluated, certified: Answer): AsItIs {
  const stock = certified.stock.map(({ pieces }) => pieces);
  const costs = costOfScenario(
    own.candidate.scenario,
    {
      ...runningOf(
        own.kinds.map(({ model, share, parts }) => ({ model, share, run: mergeDays(parts) })),
      ),
      stock,
      unitCost: own.unitCost,
      racksNeeded: certified.loads.racksNeeded,
    },
    extraOf(own.candidate),
  );
  return { certified, stock, costs };
}

/** Pieces of an alternative beside the certified ones of the house as it is: what both have, by the difference. */
export function likeCertified(
  one: Evaluated,
  base: Evaluated,
  certified: readonly number[],
): number[] {
  const known = Object.keys(base.candidate.scenario.ware);
  return Object.keys(one.candidate.scenario.ware).map((ware, at) => {
    const there = known.indexOf(ware);
    return there < 0
      ? one.stock[at]!
      : Math.max(0, certified[there]! + one.stock[at]! - base.stock[there]!);
  });
}
