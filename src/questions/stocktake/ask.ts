/** The stocktake, asked and answered: scenario and counts → what has gone and what to order. */
import { readCounts } from '../../ordering/counts-file.js';
import { daysBetween } from '../../ordering/dates.js';
import { problem as countProblem } from '../../ordering/problems.js';
import type { Fault } from '../../quantities/flaw.js';
import { didYouMean } from '../../quantities/nearest.js';
import { inOrder, problem, type Problem } from '../../scenario/problems.js';
import { orderFlaws } from '../order/checks.js';
import { orderStudy } from '../order/study.js';
import { placed } from '../part-checks.js';
import type { Ask } from '../question.js';
import type { stocktake } from './head.js';
import { stocktakeStudy } from './study.js';
import { stocktakeBlocks } from './tell.js';

export const ask: Ask<typeof stocktake> = async (asking, given) => {
  const { opened, fileName, runner, context, today, loadSolver } = asking;
  const { scenario } = opened;
  const inScenario = (problems: readonly Fault[]) =>
    ({ ok: false, problems: inOrder(placed(problems, opened, fileName)) }) as const;
  const early = orderFlaws(scenario);
  if (early.length > 0) return inScenario(early);
  const { counts: file, since, last = {}, date = today, level, seed, days: daysRun } = given;
  if (file === undefined || since === undefined)
    throw new Error('a count and the day of the last one are required');
  const ids = Object.keys(scenario.ware);
  const days = daysBetween(since, date);
  const wrong = [
    ...(days > 0
      ? []
      : [
          typed(
            'since',
            since,
            `is not before ${date}, the day of this count`,
            'give the day of the last count',
          ),
        ]),
    ...Object.keys(last)
      .filter((id) => !ids.includes(id))
      .map((id) => typed('last', id, 'is not a ware of this scenario', didYouMean(id, ids))),
  ];
  const counts = countsOf(file.bytes, ids);
  if (!counts.ok) wrong.push(...counts.problems.map((one) => counted(one, file.name)));
  if (wrong.length > 0 || !counts.ok) return { ok: false, problems: wrong };
  // The holding of the order is what the count is compared with.
  const ordered = await orderStudy(scenario, runner, {
    ...(level === undefined ? {} : { level }),
    ...(seed === undefined ? {} : { seed }),
    ...(daysRun === undefined ? {} : { days: daysRun }),
    date,
    loadSolver: null,
  });
  if (!ordered.ok) return inScenario(ordered.problems);
  const result = await stocktakeStudy(
    scenario,
    ordered.value,
    { counts: counts.value, last, days, date },
    loadSolver,
  );
  if (!result.ok)
    return { ok: false, problems: result.problems.map((one) => counted(one, file.name)) };
  return {
    ok: true,
    value: { json: result.value, blocks: stocktakeBlocks(result.value, context) },
  };
};

/** What is wrong with what was typed for a setting. */
const typed = (name: string, value: string, rule: string, remedy: string): Problem =>
  problem({ path: [`--${name}`], value, rule, remedy }, '', { line: 0, column: 0 });

/** What is wrong with a count names the row and the column of its file. */
function counted({ path, value, rule, remedy }: Fault, file: string): Problem {
  const [, row, ...column] = path;
  return problem(
    { path: column.length === 0 ? [] : [column.join(' ')], value, rule, remedy },
    file,
    { line: Number(row), column: 0 },
  );
}

function countsOf(bytes: Uint8Array, ids: readonly string[]): ReturnType<typeof readCounts> {
  try {
    return readCounts(new TextDecoder('utf-8', { fatal: true }).decode(bytes), ids);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    return {
      ok: false,
      problems: [
        countProblem(['row', 1], '', 'is not text in UTF-8', 'save the table as CSV in UTF-8'),
      ],
    };
  }
}
