/**
 * The functions of the library. Each takes a scenario that `readScenario` has read, and gives the same answer as
 * the command of its name prints with `--json`.
 */
import { loadSolver } from './cli/solver.js';
import type { Runner } from './cafe/runner.js';
import type { Opened } from './questions/compare/alternatives.js';
import type { Comparison } from './questions/compare/answer.js';
import { orderAnswer, type OrderAnswer } from './questions/order/study.js';
import type { Result } from './questions/result.js';
import { askAlternatives, askOrder, askRacks, askSuit } from './questions/questions.js';
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

const asked = (opened: ReadScenario, runner: Runner, options: QuestionOptions) => ({
  ...options,
  opened,
  fileName: opened.fileName,
  runner,
});

/** The alternatives side by side; where the scenario has none, the usual ones. */
export const compare = (
  scenario: ReadScenario,
  runner: Runner,
  options: QuestionOptions = {},
): Promise<Result<Comparison>> => askAlternatives(asked(scenario, runner, options));

/** The order sheet. @param options.date day of the order, `YYYY-MM-DD`; absent: the scenario's, else today */
export async function order(
  scenario: ReadScenario,
  runner: Runner,
  options: QuestionOptions & { readonly date?: string } = {},
): Promise<Result<OrderAnswer>> {
  const today = new Date().toISOString().slice(0, 10);
  const date = options.date ?? scenario.scenario.supply?.date ?? today;
  const study = await askOrder(asked(scenario, runner, options), date, loadSolver);
  return study.ok ? { ok: true, value: orderAnswer(study.value) } : study;
}

/** What racks hold, and washing in the rush. */
export const racks = (
  scenario: ReadScenario,
  runner: Runner,
  options: Pick<QuestionOptions, 'seed'> = {},
): Promise<Result<RacksAnswer>> => askRacks(asked(scenario, runner, options));

/** Which vessel for which drink and guest. */
export const suit = (
  scenario: ReadScenario,
  runner: Runner,
  options: Pick<QuestionOptions, 'seed'> = {},
): Promise<Result<SuitAnswer>> => askSuit(asked(scenario, runner, options));
