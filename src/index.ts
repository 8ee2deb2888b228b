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
} from './study/read-scenario.js';
export { scenarioJsonSchema, type Scenario } from './study/scenario.js';
export { compile } from './study/compile.js';
export { study, type Study, type StudyOptions } from './study/size-study.js';
export { inThisThread, type Runner } from './study/runner.js';
export { readListedDays } from './study/listed-day-schema.js';
export { piecesPerRackOf } from './study/rack-geometry.js';
export { formatProblem, type Problem } from './study/problems.js';
export type { Answer } from './study/answer.js';
export { runDays, mergeDays, type DaysRun, type RushTask } from './cafe/rush.js';
export type { CafeModel } from './cafe/model.js';
export type { ListedDay } from './cafe/listed-day.js';
