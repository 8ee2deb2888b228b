/** Chart: measured times as they were seen, and the three laws tried on them; the chosen one stands out. */
import { lawCdf } from '../../../measuring/fit-law.js';
import { chart, type Chart } from '../../../tell/charts/chart-table.js';
import { framed, palette, PLOT_WIDTH } from '../../../tell/charts/style.js';
import { shorten } from '../../../tell/clean-text.js';
import type { ReportContext } from '../../../tell/context.js';
import { formatsFor } from '../../../tell/format.js';
import { inputName } from '../../../tell/input-name.js';
import type { Measured } from '../answer.js';
import { say } from '../words.js';

const POINTS = 60;
/** The laws are drawn so far beyond the longest time. */
const BEYOND = 1.2;

type WithLaw = Measured & { readonly law: NonNullable<Measured['law']> };

/** Stays of all party sizes share one law, fitted to each as a multiple of its size's mean. */
const STAYS = 'guests.dwell';

/** One picture for each law that was fitted. */
export const lawCharts = (measured: readonly Measured[], context: ReportContext): Chart[] =>
  measured
    .filter((one): one is WithLaw => one.law !== null)
    .filter(({ law }, at, all) => all.findIndex((one) => one.law.times === law.times) === at)
    .map((one) => lawChart(one.path.startsWith(STAYS) ? { ...one, path: STAYS } : one, context));

function lawChart({ path, unit, law: { fit, times } }: WithLaw, context: ReportContext): Chart {
  const formats = formatsFor(context);
  const { charts } = say;
  const name = shorten(inputName(path), 60);
  const axis = path === STAYS ? charts.multiple : charts.time(unit);
  const seen = times.toSorted((a, b) => a - b);
  const end = BEYOND * seen.at(-1)!;
  const steps = [
    { time: 0, share: 0 },
    ...seen.map((time, at) => ({ time, share: (at + 1) / seen.length })),
    { time: end, share: 1 },
  ];
  const laws = fit.tried.map((law, rank) => ({
    law: rank === 0 ? charts.chosen(law.law) : law.law,
    points: Array.from({ length: POINTS + 1 }, (_, at) => {
      const time = (end * at) / POINTS;
      return { time, share: lawCdf(law, time) };
    }),
  }));
  const kinds = [charts.seen, ...laws.map(({ law }) => law)];
  const values = [
    ...steps.map((one) => ({ ...one, kind: charts.seen })),
    ...laws.flatMap(({ law, points }) => points.map((one) => ({ ...one, kind: law }))),
  ];
  const of = (kind: string) => `datum.kind === ${JSON.stringify(kind)}`;
  const x = { field: 'time', type: 'quantitative' as const, title: axis };
  const y = {
    field: 'share',
    type: 'quantitative' as const,
    title: charts.share,
    scale: { domain: [0, 1] },
    axis: { format: '.0%', tickCount: 5 },
  };
  const color = {
    field: 'kind',
    type: 'nominal' as const,
    title: null,
    sort: kinds,
    scale: {
      domain: kinds,
      range: [palette.vermilion, palette.blue, palette.green, palette.purple],
    },
  };
  const strokeDash = {
    field: 'kind',
    type: 'nominal' as const,
    title: null,
    sort: kinds,
    scale: {
      domain: kinds,
      range: [
        [1, 0],
        [1, 0],
        [6, 3],
        [2, 3],
      ],
    },
  };
  const line = (kind: string, strokeWidth: number, interpolate: 'step-after' | 'linear') => ({
    transform: [{ filter: of(kind) }],
    mark: { type: 'line' as const, strokeWidth, interpolate },
    encoding: { x, y, color, strokeDash },
  });
  return chart(
    `fitted-${path
      .replace(/[^a-z0-9]+/gi, '-')
      .replace(/^-|-$/g, '')
      .toLowerCase()}`,
    {
      ...framed({
        title: charts.title(name, formats.count(times.length), fit.chosen.law),
        description: `${charts.description} ${goodness(fit)}`,
        locale: context.locale,
      }),
      width: PLOT_WIDTH,
      height: 180,
      data: { values },
      layer: [
        ...kinds.slice(2).map((kind) => line(kind, 1.2, 'linear')),
        line(kinds[1]!, 2.5, 'linear'),
        line(charts.seen, 1.5, 'step-after'),
      ],
    },
    {
      caption: charts.table(name),
      columns: [
        { title: axis, as: 'decimal' },
        { title: charts.seen, as: 'share' },
        ...laws.map(({ law }) => ({ title: law, as: 'share' as const })),
      ],
      rows: seen.map((time, at) => [
        time,
        (at + 1) / seen.length,
        ...fit.tried.map((law) => lawCdf(law, time)),
      ]),
    },
  );
}

/** How well the chosen law fits, in words. */
export const goodness = ({ fit }: WithLaw['law']['fit']): string =>
  fit === null ? say.charts.notTested : say.charts.fits(fit.p);
