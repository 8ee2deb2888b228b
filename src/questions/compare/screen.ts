/** Which of the usual questions matter in this house: all are read on a few days, those that save most, or ask for most ware, stay. */
import { edited } from '../../scenario/edited.js';
import type { ReadOptions } from '../../scenario/read-scenario.js';
import type { Runner } from '../../cafe/runner.js';
import { bare, type Candidate } from './alternatives.js';
import { extraOf } from './evaluate.js';
import { QuickReader, type QuickOptions } from './quick.js';
import { usualQuestions } from './usual.js';

/** Choices and things to plan for that are looked at closely. */
const [CHOICES, PLANS] = [6, 3];
/** Always among them where they apply: what an owner comes for. */
const ALWAYS = 'another-machine';

/** Every usual question that applies to the house, as a changed copy of it. */
export function usualCandidates(base: Candidate, reading: ReadOptions): Candidate[] {
  return usualQuestions.flatMap((usual) => {
    const read = edited(base, usual.edit, usual.name, reading);
    if (read === null || !read.ok || bare(read.scenario) === bare(base.scenario)) return [];
    return [
      {
        ...base,
        id: usual.id,
        name: usual.name,
        raw: read.raw,
        scenario: read.scenario,
        inputs: read.inputs,
        planFor: usual.planFor,
      },
    ];
  });
}

export interface Screened {
  /** The base first, then those that matter, in the order of the questions. */
  readonly kept: readonly Candidate[];
  /** Names of those that hardly matter here. */
  readonly left: readonly string[];
}

/**
 * The days have a seed of their own, so that what is kept for its luck does not look better later.
 * @param after the most days that a comparison of so many then runs, for a progress bar
 */
export async function screened(
  base: Candidate,
  runner: Runner,
  options: QuickOptions,
  reading: ReadOptions,
  after: (kept: readonly Candidate[]) => number = () => 0,
): Promise<Screened> {
  const reader = new QuickReader(runner, { ...options, seed: `${options.seed}/screen` });
  const all = usualCandidates(base, reading);
  const stayAtMost = Math.min(all.length, CHOICES + PLANS + 1);
  runner.expect?.((all.length + 1) * options.days + after(all.slice(0, stayAtMost)));
  const own = await reader.read(base.scenario, extraOf(base));
  const weights = new Map<string, number>();
  for (const one of all) {
    const { costs, stockCost } = await reader.read(one.scenario, extraOf(one));
    // A choice by what it saves, something to plan for by the ware it asks for: what needs less of it needs no plan.
    weights.set(one.id, one.planFor ? stockCost - own.stockCost : own.costs.total - costs.total);
  }
  const most = (plans: boolean, count: number): string[] =>
    all
      .filter(({ planFor }) => planFor === plans)
      .toSorted((a, b) => weights.get(b.id)! - weights.get(a.id)!)
      .slice(0, count)
      .map(({ id }) => id);
  const stay = new Set([ALWAYS, ...most(false, CHOICES), ...most(true, PLANS)]);
  return {
    kept: [base, ...all.filter(({ id }) => stay.has(id))],
    left: all.filter(({ id }) => !stay.has(id)).map(({ name }) => name),
  };
}
