/** Choosing the cheapest buy: by an integer-programme solver where there is one, else by a plain search that proves nothing. */
import { buyOf, buyProblems, openOptions, type Buy, type BuyTask } from './buy.js';
import { buyProgramme } from './buy-programme.js';
import { plainBuy } from './plain-buy.js';
import { problem } from './problems.js';
import type { Outcome } from '../quantities/flaw.js';

export interface SolverOptions {
  readonly mip_rel_gap: number;
  readonly mip_abs_gap: number;
  readonly mip_max_nodes: number;
  readonly output_flag: boolean;
}

/** The part of a solver that is used; `highs` from npm has this form. */
export interface ProgrammeSolver {
  solve(
    text: string,
    options: SolverOptions,
  ): { readonly Status: string; readonly Columns: Readonly<Record<string, object>> };
}

/** Loads the solver when it is first needed (it is large); null where there is none. */
export type SolverLoader = (() => Promise<ProgrammeSolver>) | null;

/** Branches looked at before the search is broken off: a limit by work, not by the clock, so that answers repeat. */
const MOST_NODES = 5000;

/**
 * The buy with the least cost that meets every need.
 *
 * @param gap part of the cost by which the answer may miss the least and still count as proved
 * @returns problems when a ware has no supplier
 */
export async function chooseBuy(
  task: BuyTask,
  loadSolver: SolverLoader,
  gap = 0,
): Promise<Outcome<Buy>> {
  const unsold = task.needs.filter((need) => openOptions(task, need).length === 0);
  if (unsold.length > 0) {
    return {
      ok: false,
      problems: unsold.map(({ ware }) =>
        problem(
          ['supply', 'suppliers'],
          ware,
          'is not sold by any supplier',
          'add a quote for it, or leave it out of the order',
        ),
      ),
    };
  }
  if (task.needs.length === 0) return { ok: true, value: buyOf(task, [], true) };
  const solved = loadSolver === null ? null : solvedBuy(task, await loadSolver(), gap);
  if (solved?.proved) return { ok: true, value: solved };
  const plain = plainBuy(task);
  return {
    ok: true,
    value: solved !== null && solved.totalMinor < plain.totalMinor ? solved : plain,
  };
}

/** The solver's buy; not proved where it broke off, null where it had found none by then. */
function solvedBuy(task: BuyTask, solver: ProgrammeSolver, gap: number): Buy | null {
  const programme = buyProgramme(task);
  // A gap of less than one minor unit is none.
  const solution = solver.solve(programme.text, {
    mip_rel_gap: gap,
    mip_abs_gap: 0.4,
    mip_max_nodes: MOST_NODES,
    output_flag: false,
  });
  const lines = programme.linesOf(
    (column) => (solution.Columns[column] as { readonly Primal?: number } | undefined)?.Primal ?? 0,
  );
  const broken = buyProblems(task, lines).length > 0;
  const proved = solution.Status === 'Optimal';
  if (proved && broken) throw new Error("the solver's buy breaks a rule of its task");
  return broken ? null : buyOf(task, lines, proved);
}
