/** A scenario that was read → its study, reported with what was noticed on reading: what every command and the page begin with. */
import type { Warning } from '../../quantities/flaw.js';
import type { ReadResult } from '../../scenario/read-scenario.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Runner } from '../../cafe/runner.js';
import { study, type Study, type StudyOptions } from './study.js';

type Opened = Extract<ReadResult, { ok: true }>;

/** Warnings of reading come before those of the rush. @throws RangeError as `study` does */
export async function scenarioStudy(
  opened: Opened,
  runner: Runner,
  options: StudyOptions = {},
): Promise<Study> {
  const done = await study(opened.scenario, runner, { ...options, piecesPerRack: piecesPerRackOf });
  const warnings: readonly Warning[] = [...opened.warnings, ...done.answer.warnings];
  return { ...done, answer: { ...done.answer, warnings } };
}
