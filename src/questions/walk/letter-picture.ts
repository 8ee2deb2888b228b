/** The tight morning of an answer as a chart: the day is walked again at the stock of the answer. */
import type { ListedDay } from '../../cafe/listed-day.js';
import { compile } from '../../scenario/compile.js';
import { kindOf } from '../../scenario/kinds.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { Chart } from '../../tell/charts/chart-table.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor } from '../../tell/format.js';
import type { Answer } from '../size/answer.js';
import { tightMorningChart } from './charts/tight-morning.js';
import { walkDay } from './day.js';
import { tightMorning } from './tight-morning.js';

export function tightMorningOf(
  file: Scenario,
  answer: Answer,
  context: ReportContext,
  listed: readonly ListedDay[] | null,
): Chart {
  const { day, ware } = answer.tightest;
  const { scenario, seed } = kindOf(file, answer.tightestKind, answer.seed);
  const walk = walkDay({
    model: compile(scenario, piecesPerRackOf),
    seed,
    day,
    stock: answer.stock.map(({ pieces }) => pieces),
    listed,
  });
  const morning = tightMorning(walk, ware);
  const name = answer.stock.find((line) => line.ware === morning.ware)?.name ?? morning.ware;
  return tightMorningChart(
    { morning, name, openingMinute: context.openingMinute },
    { locale: context.locale, formats: formatsFor(context) },
  );
}
