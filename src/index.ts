/**
 * The library: the functions of the line, for other programs.
 *
 * scenario file → `readScenario` → `size`, `compare`, `order`, `racks` or `suit` → answer, the same as the command's;
 * `compile`, `runDays` and `mergeDays` for those who run days of their own.
 */
export {
  compare,
  order,
  racks,
  readScenario,
  suit,
  type QuestionOptions,
  type ReadResult,
  type ReadScenario,
} from './library.js';
export { scenarioStudy as size } from './questions/size/scenario-study.js';
export { scenarioJsonSchema, type Scenario } from './scenario/scenario.js';
export { compile } from './scenario/compile.js';
export type { Study, StudyOptions } from './questions/size/study.js';
export { inThisThread, type Runner } from './cafe/runner.js';
export { readListedDays } from './scenario/listed-day-schema.js';
export { piecesPerRackOf } from './scenario/rack-geometry.js';
export { formatProblem, type Problem } from './scenario/problems.js';
export type { Answer } from './questions/size/answer.js';
export type { Comparison } from './questions/compare/answer.js';
export type { OrderAnswer } from './questions/order/study.js';
export type { RacksAnswer } from './questions/racks/answer.js';
export type { SuitAnswer } from './suiting/answer.js';
export type { Result } from './questions/result.js';
export { runDays } from './cafe/run-days.js';
export { mergeDays, type DaysRun, type RushTask } from './cafe/rush.js';
export type { CafeModel } from './cafe/model.js';
export type { ListedDay } from './cafe/listed-day.js';
