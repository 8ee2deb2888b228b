/** Real houses, read from scenario files with some groups or values changed, and sized in this thread on few days. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { inThisThread } from '../../../src/cafe/runner.js';
import type { Answer } from '../../../src/questions/size/answer.js';
import { scenarioStudy } from '../../../src/questions/size/scenario-study.js';
import type { StudyOptions } from '../../../src/questions/size/study.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { parsePath, withRawValue } from '../../../src/scenario/raw-paths.js';
import { checkTree } from '../../../src/scenario/read-scenario.js';

/** @param changes values by dotted path */
export async function sizedHouse(
  name: string,
  changes: Readonly<Record<string, unknown>>,
  options: StudyOptions = {},
): Promise<Answer> {
  const { alternatives: _, ...own } = parse(
    readFileSync(`scenarios/${name}.yaml`, 'utf8'),
  ) as Record<string, unknown>;
  const tree = Object.entries(changes).reduce<unknown>(
    (sofar, [path, value]) => withRawValue(sofar, parsePath(path)!, value),
    own,
  );
  const read = checkTree(tree, () => ({ line: 1, column: 1 }), name, {
    piecesPerRack: piecesPerRackOf,
  });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const few = { days: 60, certifyOn: 1, ...options };
  return (await scenarioStudy(read, inThisThread(), few)).answer;
}
