/** How many days a comparison may still run, stage by stage: what its progress bar shows before it begins. */
import type { Runner } from '../../cafe/runner.js';
import type { Candidate } from './alternatives.js';
import { habitGrid, shiftCount } from './habits.js';
import { DAYS_OUT, FRESH_DAYS } from './houses.js';
import { levelDays } from './level.js';
import { tuningDays } from './looks.js';
import { machineCount } from './usual.js';

export interface Planned {
  readonly candidates: readonly Candidate[];
  readonly looks: readonly number[];
  readonly habitDays: number;
  /** Days of one reading with a habit off. */
  readonly signDays: number;
  /** The size: chosen on and certified on. */
  readonly sized: number;
  /** All draws of the inputs, a house. */
  readonly drawn: number;
  readonly withLevel: boolean;
  /** The map and what moves the order. */
  readonly further: number;
}

const stages = ['size', 'looks', 'advice', 'draws', 'houses', 'level', 'further'] as const;
type Stage = (typeof stages)[number];

/** The most days that each stage runs. */
function mostDays(planned: Planned): Readonly<Record<Stage, number>> {
  const { candidates, looks, habitDays } = planned;
  const [first, last] = [looks[0]!, looks.at(-1)!];
  const plans = candidates.filter(({ planFor }) => planFor).length;
  const choices = candidates.length - plans;
  const machines = ({ scenario }: Candidate): number => machineCount(scenario);
  const failing = candidates.filter((one) => machines(one) > machines(candidates[0]!)).length;
  const grid = habitDays === 0 ? 0 : habitGrid(candidates[0]!).length;
  const tuning = grid === 0 ? 0 : first + tuningDays(grid, habitDays);
  return {
    size: planned.sized,
    looks: choices * (last + tuning) + plans * first,
    advice: (choices + 1) * (shiftCount + 1) * planned.signDays,
    draws: choices * planned.drawn,
    houses: (candidates.length + plans) * Math.min(last, FRESH_DAYS) + failing * 2 * DAYS_OUT,
    level: planned.withLevel ? levelDays(last) : 0,
    further: planned.further,
  };
}

/** The most days from a stage on; without one, of all. */
export function daysFrom(planned: Planned, stage: Stage = stages[0]): number {
  const most = mostDays(planned);
  return stages.slice(stages.indexOf(stage)).reduce((sum, one) => sum + most[one], 0);
}

/** Says, as each stage begins, how many days may follow. */
export const daysAhead =
  (runner: Runner, planned: Planned): ((stage: Stage) => void) =>
  (stage) =>
    runner.expect?.(daysFrom(planned, stage));
