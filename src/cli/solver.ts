/** HiGHS, loaded when first needed; its program lies beside the command. */
import { fileURLToPath } from 'node:url';
import type { ProgrammeSolver } from '../ordering/choose-buy.js';

export async function loadSolver(): Promise<ProgrammeSolver> {
  const { default: loader } = await import('highs');
  const load = loader as unknown as (options: {
    locateFile: (name: string) => string;
  }) => Promise<ProgrammeSolver>;
  return load({ locateFile: (name) => fileURLToPath(new URL(name, import.meta.url)) });
}

/** Its memory is not all given back after a solution, so now and then a fresh one is taken. */
const SOLUTIONS_EACH = 25;

/** For many programmes after each other: loading takes longer than solving a small one. */
export function solverForMany(): () => Promise<ProgrammeSolver> {
  let [loaded, left]: [Promise<ProgrammeSolver> | null, number] = [null, 0];
  return () => {
    if (loaded === null || left === 0) [loaded, left] = [loadSolver(), SOLUTIONS_EACH];
    left -= 1;
    return loaded;
  };
}
