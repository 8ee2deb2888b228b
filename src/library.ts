/**
 * The functions of the library. Each takes a scenario that `readScenario` has read, and gives the same answer as
 * the command of its name prints with `--json`.
 */
import { loadSolver } from './cli/solver.js';
import type { Runner } from './cafe/runner.js';
import type { Opened } from './questions/compare/alternatives.js';
import type { Comparison } from './questions/compare/answer.js';
import type { OrderAnswer } from './questions/order/study.js';
import { wholeComparison } from './questions/compare/whole.js';
import { ask as askOrder } from './questions/order/ask.js';
import { racksStudy } from './questions/racks/study.js';
import { ask as askSuit } from './questions/suit/ask.js';
import type { Asking, Reply } from './questions/question.js';
import { contextOf } from './tell/context-of.js';
import { version } from './cli/version.js';
import type { Result } from './questions/result.js';
import type { RacksAnswer } from './questions/racks/answer.js';
import type { Problem } from './scenario/problems.js';
import { piecesPerRackOf } from './scenario/rack-geometry.js';
import { readScenario as read } from './scenario/read-scenario.js';
import type { SuitAnswer } from './suiting/answer.js';

/** A scenario that was read and is free of mistakes. */
export interface ReadScenario extends Opened {
  /** Names the file in problems. */
  readonly fileName: string;
}

export type ReadResult =
  | ({ readonly ok: true } & ReadScenario)
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Each absent: as the scenario or the command has it. */
export interface QuestionOptions {
  /** Share of days on which nothing may run out, 0..1. */
  readonly level?: number;
  readonly seed?: string;
  readonly days?: number;
}

/** A scenario file as text, read and checked as the command does. @param fileName named in problems */
export function readScenario(text: string, fileName: string): ReadResult {
  const result = read(text, fileName, { piecesPerRack: piecesPerRackOf });
  return result.ok ? { ...result, fileName } : result;
}

/** What a question's command prints with `--json`. */
async function answered<A, G>(
  ask: (asking: Asking, given: G) => Promise<Result<Reply<A>>>,
  scenario: ReadScenario,
  runner: Runner,
  given: G,
): Promise<Result<A>> {
  const reply = await ask(
    {
      opened: scenario,
      fileName: scenario.fileName,
      runner,
      context: contextOf(scenario.scenario, scenario.inputs, version, piecesPerRackOf),
      today: new Date().toISOString().slice(0, 10),
      loadSolver,
    },
    given,
  );
  return reply.ok ? { ok: true, value: reply.value.json } : reply;
}

/** The alternatives side by side; where the scenario has none, the usual ones. */
export const compare = (
  scenario: ReadScenario,
  runner: Runner,
  options: QuestionOptions = {},
): Promise<Result<Comparison>> => answered(wholeComparison, scenario, runner, options);

/** The order sheet. @param options.date day of the order, `YYYY-MM-DD`; absent: the scenario's, else today */
export const order = (
  scenario: ReadScenario,
  runner: Runner,
  options: QuestionOptions & { readonly date?: string } = {},
): Promise<Result<OrderAnswer>> => answered(askOrder, scenario, runner, options);

/** What racks hold, and washing in the rush. */
export const racks = async (
  scenario: ReadScenario,
  runner: Runner,
  options: Pick<QuestionOptions, 'seed'> = {},
): Promise<Result<RacksAnswer>> => ({
  ok: true,
  value: await racksStudy(scenario.scenario, runner, options),
});

/** Which vessel for which drink and guest. */
export const suit = (
  scenario: ReadScenario,
  runner: Runner,
  options: Pick<QuestionOptions, 'seed'> = {},
): Promise<Result<SuitAnswer>> => answered(askSuit, scenario, runner, options);
