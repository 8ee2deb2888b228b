/** Chart: recorded days in order, each with how often it was safe, against the level promised. */
import { chart, type Chart } from '../../../tell/charts/chart-table.js';
import { telling, thinned, withSentence } from '../../../tell/charts/hover.js';
import { framed, palette, PLOT_WIDTH } from '../../../tell/charts/style.js';
import type { ReportContext } from '../../../tell/context.js';
import { digitsOf, formatsFor } from '../../../tell/format.js';
import type { Backtest } from '../answer.js';
import { say } from '../words.js';

export function recordedDaysChart(found: Backtest, context: ReportContext): Chart {
  const formats = formatsFor(context);
  const { safe, level, draws } = found;
  const { charts } = say;
  const promised = formats.percent(level, digitsOf(level));
  const days = found.origins.flatMap(({ tried }) => tried);
  const points = days.map((day) => ({
    date: day.date,
    safe: day.safe,
    held: day.safe >= level ? charts.held(promised) : charts.fell(promised),
    sentence: charts.sentence(
      day.date,
      formats.count(day.parties),
      formats.percent(day.safe, 0),
      day.ware,
    ),
  }));
  const told = new Set(thinned(points));
  const kinds = [charts.held(promised), charts.fell(promised)];
  const y = {
    field: 'safe',
    type: 'quantitative' as const,
    title: charts.y,
    scale: { domain: [0, 1] },
    axis: { format: '.0%', tickCount: 5, grid: true },
  };
  const x = {
    field: 'date',
    type: 'ordinal' as const,
    title: null,
    axis: { labelAngle: -45, labelOverlap: true, grid: false },
  };
  const whole = { x: { value: 0 }, x2: { value: 'width' as const } };
  return chart(
    'recorded-days',
    {
      ...framed({
        title: charts.title(formats.count(days.length), formats.percent(safe.share), promised),
        description: charts.description(
          formats.count(draws),
          formats.percent(safe.low),
          formats.percent(safe.high),
        ),
        locale: context.locale,
      }),
      width: PLOT_WIDTH,
      height: 200,
      layer: [
        {
          data: { values: [safe] },
          mark: { type: 'rect', color: palette.sky, opacity: 0.18 },
          encoding: { ...whole, y: { ...y, field: 'low' }, y2: { field: 'high' } },
        },
        {
          data: { values: [safe] },
          mark: { type: 'rule', color: palette.blue, opacity: 0.9 },
          encoding: { ...whole, y: { ...y, field: 'share' } },
        },
        {
          data: { values: [{ level }] },
          mark: { type: 'rule', strokeDash: [5, 4], strokeWidth: 1.5 },
          encoding: { ...whole, y: { ...y, field: 'level' } },
        },
        {
          data: { values: points.map((one) => (told.has(one) ? one : { ...one, sentence: '' })) },
          mark: { type: 'point', ...telling, filled: true, size: 70, opacity: 1 },
          encoding: {
            ...withSentence,
            x,
            y,
            color: {
              field: 'held',
              type: 'nominal',
              scale: { domain: kinds, range: [palette.blue, palette.vermilion] },
            },
            shape: {
              field: 'held',
              type: 'nominal',
              scale: { domain: kinds, range: ['circle', 'diamond'] },
            },
          },
        },
      ],
    },
    {
      caption: say.days,
      columns: [
        { title: say.day, as: 'text' },
        { title: say.parties, as: 'count' },
        { title: say.safe, as: 'share' },
      ],
      rows: days.map(({ date, parties, safe: share }) => [date, parties, share]),
    },
  );
}
