/** Opening a scenario for a command: read, check, and stop with every problem if there is one. */
import { formatProblem, type Problem } from '../study/problems.js';
import { largestScenarioBytes } from '../study/parse-yaml.js';
import { readScenario, type ReadResult } from '../study/read-scenario.js';
import { piecesPerRackOf } from '../study/rack-geometry.js';
import { readWhole } from './files.js';
import { MistakeError } from './mistakes.js';

export type OpenScenario = Extract<ReadResult, { ok: true }>;

/** @throws MistakeError with all problems, each with its place, rule and remedy */
export async function openScenario(path: string): Promise<OpenScenario> {
  const result = readScenario(await readWhole(path, largestScenarioBytes), path, {
    piecesPerRack: piecesPerRackOf,
  });
  if (!result.ok) throw problemsAsMistake(result.problems);
  return result;
}

export function problemsAsMistake(problems: readonly Problem[]): MistakeError {
  const count = problems.length;
  return new MistakeError(
    [
      ...problems.map(formatProblem),
      `${count} problem${count === 1 ? '' : 's'}; nothing was done.`,
    ].join('\n'),
  );
}
