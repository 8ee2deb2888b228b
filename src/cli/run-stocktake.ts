/** A stocktake from a file: what has gone, what that says of the loss rates, what to order now. */
import { daysBetween } from '../ordering/dates.js';
import { readCounts } from '../ordering/counts-file.js';
import type { Problem } from '../ordering/problems.js';
import { contextOf } from '../tell/context-of.js';
import { stocktakeText } from '../questions/stocktake/text.js';
import { orderStudy } from '../questions/order/study.js';
import { orderFlaws } from '../questions/order/checks.js';
import { shown } from '../scenario/problems.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { stocktakeStudy } from '../questions/stocktake/study.js';
import { readWhole } from './files.js';
import { MistakeError } from './mistakes.js';
import { openScenario, problemsAsMistake } from './open-scenario.js';
import { placed } from '../questions/part-checks.js';
import { inOrder } from '../scenario/problems.js';
import { parsed } from './parsed.js';
import { today } from './run-question.js';
import { parseStock } from './study-options.js';
import { version } from './version.js';
import { printAnswer } from './print.js';
import { withRunner } from './with-runner.js';

export interface StocktakeArguments {
  readonly file: string;
  readonly counts: string;
  readonly since: string;
  readonly last?: string;
  readonly level?: number;
  readonly seed?: string;
  readonly days?: number;
  readonly threads?: number;
  readonly date?: string;
  readonly json: boolean;
}

const LARGEST_COUNTS = 1_000_000;

export async function runStocktake(args: StocktakeArguments): Promise<void> {
  const opened = await openScenario(args.file);
  const { scenario } = opened;
  const early = orderFlaws(scenario);
  if (early.length > 0) throw problemsAsMistake(inOrder(placed(early, opened, args.file)));
  const ids = Object.keys(scenario.ware);
  const date = args.date === undefined ? today() : dayOf('date', args.date);
  const days = daysBetween(dayOf('since', args.since), date);
  if (days <= 0)
    throw new MistakeError(
      `--since: "${args.since}" is not before ${date}, the day of this count; give the day of the last count`,
    );
  const last = args.last === undefined ? {} : parseStock(args.last, ids, 'last');
  const counts = readCounts(textOf(await readWhole(args.counts, LARGEST_COUNTS), args.counts), ids);
  if (!counts.ok) throw countMistake(counts.problems, args.counts);
  // What the order would be tells the holding that the count is held against.
  const ordered = await withRunner('running days', args.threads, (runner) =>
    orderStudy(scenario, runner, {
      ...(args.level === undefined ? {} : { level: args.level }),
      ...(args.seed === undefined ? {} : { seed: args.seed }),
      ...(args.days === undefined ? {} : { days: args.days }),
      date,
      loadSolver: null,
    }),
  );
  if (!ordered.ok) throw problemsAsMistake(inOrder(placed(ordered.problems, opened, args.file)));
  const result = stocktakeStudy(scenario, ordered.value, {
    counts: counts.value,
    last,
    days,
    date,
  });
  if (!result.ok) throw countMistake(result.problems, args.counts);
  printAnswer(args.json ? result.value : null, () =>
    stocktakeText(result.value, contextOf(scenario, opened.inputs, version, piecesPerRackOf)),
  );
}

function textOf(bytes: Uint8Array, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new MistakeError(`${file}: is not text in UTF-8; save the table as CSV in UTF-8`);
  }
}

/** Problems of a count name the row and the column of its file. */
function countMistake(problems: readonly Problem[], file: string): MistakeError {
  const lines = problems.map(({ path, value, rule, remedy }) => {
    const [, row, ...column] = path;
    return `${file}:${row}: ${column.length === 0 ? '' : `${column.join(' ')}: `}${shown(value)} ${rule}; ${remedy}`;
  });
  return new MistakeError(
    [...lines, `${lines.length} problem${lines.length === 1 ? '' : 's'}; nothing was done.`].join(
      '\n',
    ),
  );
}

const dayOf = (name: string, text: string): string =>
  String(parsed(name, { as: 'day', describe: '' }, text));
