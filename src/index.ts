/**
 * The library: the functions of the line, for other programs.
 *
 * scenario file → `readScenario` → `study` → answer; `compile`, `runDays` and `mergeDays` for those who
 * run days of their own.
 */
export {
  readScenario,
  checkTree,
  type ReadResult,
  type ReadOptions,
} from './scenario/read-scenario.js';
export { scenarioJsonSchema, type Scenario } from './scenario/scenario.js';
export { compile } from './scenario/compile.js';
export { study, type Study, type StudyOptions } from './questions/size/study.js';
export { inThisThread, type Runner } from './cafe/runner.js';
export { readListedDays } from './scenario/listed-day-schema.js';
export { piecesPerRackOf } from './scenario/rack-geometry.js';
export { formatProblem, type Problem } from './scenario/problems.js';
export type { Answer } from './questions/size/answer.js';
export { runDays, mergeDays, type DaysRun, type RushTask } from './cafe/rush.js';
export type { CafeModel } from './cafe/model.js';
export type { ListedDay } from './cafe/listed-day.js';
