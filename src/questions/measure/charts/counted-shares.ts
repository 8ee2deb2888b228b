/** Chart: shares that were counted, party sizes among them, each with its interval, beside what the scenario had. */
import { chart, type Chart } from '../../../tell/charts/chart-table.js';
import { framed, palette, PLOT_WIDTH } from '../../../tell/charts/style.js';
import { shorten } from '../../../tell/clean-text.js';
import type { ReportContext } from '../../../tell/context.js';
import { inputName } from '../../../tell/input-name.js';
import type { Measured } from '../answer.js';
import { say } from '../words.js';

const ROW = 26;

/** No chart where no share was counted. */
export function sharesCharts(measured: readonly Measured[], context: ReportContext): Chart[] {
  const { shares: words } = say.charts;
  const rows = measured.flatMap(({ path, shares = [] }) =>
    shares.map((one) => ({
      ...one,
      name: one.size === '' ? shorten(inputName(path), 44) : words.size(one.size),
    })),
  );
  if (rows.length === 0) return [];
  const y = {
    field: 'name',
    type: 'nominal' as const,
    title: null,
    sort: rows.map(({ name }) => name),
    axis: { labelLimit: 260, grid: false },
  };
  const x = {
    field: 'share',
    type: 'quantitative' as const,
    title: words.axis,
    axis: { format: '.0%', tickCount: 5 },
  };
  const color = {
    field: 'what',
    type: 'nominal' as const,
    title: null,
    scale: {
      domain: [words.counted, words.before],
      range: [palette.blue, palette.vermilion],
    },
  };
  const shape = {
    field: 'what',
    type: 'nominal' as const,
    title: null,
    scale: { domain: [words.counted, words.before], range: ['circle', 'diamond'] },
  };
  const point = (what: string, filled: boolean, field: string) => ({
    transform: [{ calculate: JSON.stringify(what), as: 'what' }],
    mark: { type: 'point' as const, filled, size: 70, opacity: 1, strokeWidth: 1.6 },
    encoding: { y, x: { ...x, field }, color, shape },
  });
  return [
    chart(
      'counted-shares',
      {
        ...framed({ title: words.title, description: words.description, locale: context.locale }),
        width: PLOT_WIDTH - 160,
        height: ROW * rows.length,
        data: { values: rows },
        layer: [
          {
            mark: { type: 'rule', color: palette.blue, strokeWidth: 2 },
            encoding: { y, x: { ...x, field: 'low' }, x2: { field: 'high' } },
          },
          point(words.counted, true, 'share'),
          point(words.before, false, 'before'),
        ],
      },
      {
        caption: words.title,
        columns: [
          { title: say.input, as: 'text' },
          { title: words.counted, as: 'share' },
          { title: words.low, as: 'share' },
          { title: words.high, as: 'share' },
          { title: words.before, as: 'share' },
        ],
        rows: rows.map(({ name, share, low, high, before }) => [name, share, low, high, before]),
      },
    ),
  ];
}
