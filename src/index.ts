/**
 * The library: the functions of the line, for other programs.
 *
 * scenario file → `readScenario` → `size` → answer, the same as the command's; `compile`, `runDays` and
 * `mergeDays` for those who run days of their own.
 */
import { readScenario as read, type ReadResult } from './scenario/read-scenario.js';
import { piecesPerRackOf } from './scenario/rack-geometry.js';

/** A scenario file as text, read and checked as the command does. @param fileName named in problems */
export const readScenario = (text: string, fileName: string): ReadResult =>
  read(text, fileName, { piecesPerRack: piecesPerRackOf });
export type { ReadResult } from './scenario/read-scenario.js';
export { scenarioStudy as size } from './questions/size/scenario-study.js';
export { scenarioJsonSchema, type Scenario } from './scenario/scenario.js';
export { compile } from './scenario/compile.js';
export type { Study, StudyOptions } from './questions/size/study.js';
export { inThisThread, type Runner } from './cafe/runner.js';
export { readListedDays } from './scenario/listed-day-schema.js';
export { piecesPerRackOf } from './scenario/rack-geometry.js';
export { formatProblem, type Problem } from './scenario/problems.js';
export type { Answer } from './questions/size/answer.js';
export { runDays, mergeDays, type DaysRun, type RushTask } from './cafe/rush.js';
export type { CafeModel } from './cafe/model.js';
export type { ListedDay } from './cafe/listed-day.js';
