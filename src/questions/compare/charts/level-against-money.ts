/** Chart: money a year against the level: ware, drinks short, and both. */
import type { LevelAnswer } from '../answer.js';
import { digitsOf } from '../../size/facts.js';
import { english } from '../../../tell/words.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { tellingStrips } from '../../../tell/charts/hover.js';
import {
  framed,
  palette,
  percentAxis,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';

export function levelAgainstMoney(
  worth: LevelAnswer,
  currency: string,
  { formats, locale }: ChartContext,
): ChartSpec {
  const say = english.compare.charts;
  const series = [say.series.stock, say.series.short, say.series.both];
  const values = worth.points.flatMap(({ level, stockAYear, shortAYear, totalAYear }) => [
    { level, money: stockAYear, what: series[0]! },
    { level, money: shortAYear, what: series[1]! },
    { level, money: totalAYear, what: series[2]! },
  ]);
  const sentence = worth.points.map(({ level, stockAYear, shortAYear, totalAYear }) => ({
    at: level,
    sentence: say.sentenceLevel(
      formats.percent(level, digitsOf(level)),
      formats.money(stockAYear),
      formats.money(shortAYear),
      formats.money(totalAYear),
    ),
  }));
  const best = worth.points.find(({ level }) => level === worth.recommended)!;
  const x = {
    field: 'level',
    type: 'quantitative' as const,
    title: say.levelAxis,
    scale: { domain: [worth.points[0]!.level, 1], nice: false, padding: 10 },
    axis: { ...percentAxis(), tickCount: 7 },
  };
  const y = {
    field: 'money',
    type: 'quantitative' as const,
    title: say.levelMoney(currency),
    scale: { zero: true, nice: true },
    axis: { format: ',d' },
  };
  return {
    ...framed({
      title: say.levelTitle(
        formats.percent(best.level, digitsOf(best.level)),
        formats.money(best.totalAYear),
      ),
      description: say.levelDescription,
      locale,
    }),
    width: PLOT_WIDTH,
    height: 230,
    layer: [
      {
        data: { values },
        mark: { type: 'line', strokeWidth: 2 },
        encoding: {
          x,
          y,
          color: {
            field: 'what',
            type: 'nominal',
            sort: series,
            scale: { domain: series, range: [palette.blue, palette.orange, palette.vermilion] },
          },
          strokeDash: {
            field: 'what',
            type: 'nominal',
            sort: series,
            scale: {
              domain: series,
              range: [
                [1, 0],
                [6, 3],
                [1, 0],
              ],
            },
          },
        },
      },
      {
        data: { values: [{ level: best.level, money: best.totalAYear }] },
        mark: { type: 'point', filled: true, size: 110, color: palette.vermilion, opacity: 1 },
        encoding: { x, y },
      },
      ...tellingStrips(sentence, x),
    ],
  };
}

export function levelAgainstMoneyTable(worth: LevelAnswer, currency: string): ChartTable {
  const { levelHead: head, charts } = english.compare;
  const flat = (title: string): string => title.replace('\n', ' ');
  return {
    caption: `${charts.captions.level}, ${currency}`,
    columns: [
      { title: head.level, as: 'share' },
      { title: flat(head.short), as: 'decimal' },
      { title: flat(head.stockYear), as: 'decimal' },
      { title: flat(head.shortYear), as: 'decimal' },
      { title: flat(head.total), as: 'decimal' },
    ],
    rows: worth.points.map((one) => [
      one.level,
      one.shortADay,
      one.stockAYear,
      one.shortAYear,
      one.totalAYear,
    ]),
  };
}
