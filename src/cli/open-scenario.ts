/** Opening a scenario for a command: read, check, and stop with every problem if there is one. */
import { formatProblem, type Problem } from '../scenario/problems.js';
import { largestScenarioBytes } from '../scenario/parse-yaml.js';
import { readScenario, type ReadResult } from '../scenario/read-scenario.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { readWhole } from './files.js';
import { MistakeError } from './mistakes.js';

export type OpenScenario = Extract<ReadResult, { ok: true }>;

/** @throws MistakeError with all problems, each with its place, rule and remedy */
export async function openScenario(
  path: string,
): Promise<OpenScenario & { readonly text: string }> {
  const bytes = await readWhole(path, largestScenarioBytes);
  const result = readScenario(bytes, path, { piecesPerRack: piecesPerRackOf });
  if (!result.ok) throw problemsAsMistake(result.problems);
  return { ...result, text: new TextDecoder().decode(bytes) };
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
