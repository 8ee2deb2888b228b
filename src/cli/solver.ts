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
