/** Choosing the cheapest buy: by an integer-programme solver where there is one, else by a plain search that proves nothing. */
import { buyOf, buyProblems, openOptions, type Buy, type BuyTask } from './buy.js';
import { buyProgramme, type BuyProgramme } from './buy-programme.js';
import { plainBuy } from './plain-buy.js';
import { unsold } from './problems.js';
import type { Outcome } from '../quantities/flaw.js';

export interface SolverOptions {
  readonly mip_rel_gap?: number;
  readonly mip_abs_gap?: number;
  readonly mip_max_nodes?: number;
  /** Buys that cost this much or more need not be told apart. */
  readonly objective_bound?: number;
  readonly output_flag: boolean;
}

/** The part of a solver that is used; `highs` from npm has this form. */
export interface ProgrammeSolver {
  solve(
    text: string,
    options: SolverOptions,
  ): {
    readonly Status: string;
    readonly ObjectiveValue: number;
    readonly Columns: Readonly<Record<string, object>>;
  };
}

/** Loads the solver when it is first needed (it is large); null where there is none. */
export type SolverLoader = (() => Promise<ProgrammeSolver>) | null;

/** Branches looked at before the search is broken off: a limit by work, not by the clock, so that answers repeat. */
const MOST_NODES = 5000;

/**
 * What a solver may still spend, in squares of choices: a million took about ten seconds of processor time where it was
 * measured (20 ware, 5 suppliers with two price breaks and three freight steps). Counted, not timed, so answers repeat.
 */
export interface Effort {
  left: number;
  /** For showing that nothing beats what is known already, once the rest is spent: that takes about a third of the time. */
  proof?: number;
}
export const USUAL_EFFORT = 1_000_000;
export const USUAL_PROOF = 6_500_000;
/** Part of the gap to which such a search goes, so that a buy a little below the best known leaves the proof whole. */
const NEARER = 0.8;

/**
 * The buy with the least cost that meets every need. One that is not proved carries a bound below the least cost, where
 * there is a solver.
 *
 * @param gap part of the cost by which the answer may miss the least and still count as proved
 * @param beat a cost, minor units: where a full proof is beyond the effort, buys below it are looked for, and it is a bound where there are none
 * @returns problems when a ware has no supplier
 */
export async function chooseBuy(
  task: BuyTask,
  loadSolver: SolverLoader,
  gap = 0,
  effort: Effort = { left: Infinity },
  beat = Infinity,
): Promise<Outcome<Buy>> {
  const without = task.needs.filter((need) => openOptions(task, need).length === 0);
  if (without.length > 0) return { ok: false, problems: without.map(unsold) };
  if (task.needs.length === 0) return { ok: true, value: buyOf(task, [], true) };
  if (loadSolver === null) return { ok: true, value: plainBuy(task) };
  const solver = await loadSolver();
  const programme = buyProgramme(task);
  const cost = programme.choices * programme.choices;
  const within = cost <= effort.left;
  if (within) effort.left -= cost;
  const found = within ? solvedBuy(task, programme, solver, gap) : NOTHING;
  if (found.buy?.proved) return { ok: true, value: found.buy };
  const against = !within && beat < Infinity && cost <= (effort.proof ?? 0);
  if (against) effort.proof! -= cost;
  const near = gap * NEARER;
  const { buy, complete } = against ? solvedBuy(task, programme, solver, near, beat) : found;
  const plain = plainBuy(task);
  const best = buy !== null && buy.totalMinor < plain.totalMinor ? buy : plain;
  const leastMinor =
    against && complete
      ? Math.floor(Math.min(beat, (buy?.totalMinor ?? Infinity) * (1 - near)))
      : boundOf(programme, solver);
  return { ok: true, value: { ...best, proved: false, leastMinor } };
}

/** A cost that no buy is below; null where the solver gives none. */
function boundOf(programme: BuyProgramme, solver: ProgrammeSolver): number | null {
  const { Status, ObjectiveValue } = solver.solve(programme.relaxed, { output_flag: false });
  return Status === 'Optimal' ? Math.floor(ObjectiveValue) : null;
}

interface Found {
  /** Not proved where the solver broke off; null where it had found none by then. */
  readonly buy: Buy | null;
  /** Whether it looked everywhere that a buy below the bound could be. */
  readonly complete: boolean;
}
const NOTHING: Found = { buy: null, complete: false };

/** The solver's buy. @param beat those that cost as much need not be found */
function solvedBuy(
  task: BuyTask,
  programme: BuyProgramme,
  solver: ProgrammeSolver,
  gap: number,
  beat = Infinity,
): Found {
  // A gap of less than one minor unit is none.
  const solution = solver.solve(programme.text, {
    mip_rel_gap: gap,
    mip_abs_gap: 0.4,
    mip_max_nodes: MOST_NODES,
    output_flag: false,
    ...(beat < Infinity ? { objective_bound: beat } : {}),
  });
  // Nothing below the bound may be left at all.
  if (beat < Infinity && solution.Status === 'Infeasible') return { buy: null, complete: true };
  const lines = programme.linesOf(
    (column) => (solution.Columns[column] as { readonly Primal?: number } | undefined)?.Primal ?? 0,
  );
  const broken = buyProblems(task, lines).length > 0;
  const proved = solution.Status === 'Optimal';
  if (proved && broken) throw new Error("the solver's buy breaks a rule of its task");
  return { buy: broken ? null : buyOf(task, lines, proved), complete: proved };
}
