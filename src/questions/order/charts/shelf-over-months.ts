/** Chart: pieces of one ware on the shelf over the months, with its par, reorder point and orders. */
import type { ShelfCourse } from '../../../ordering/shelf-course.js';
import { cleanText, shorten } from '../../../tell/clean-text.js';
import { safeLocale } from '../../../tell/format.js';
import { english } from '../../../tell/words.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { tellingStrips } from '../../../tell/charts/hover.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';

export interface ShelfInput {
  readonly course: ShelfCourse;
  readonly name: string;
}

/** Epoch milliseconds of a `YYYY-MM-DD` date, in UTC: the labels are written in UTC too, so the scale can be one of plain numbers. */
const at = (date: string): number => Date.parse(`${date}T00:00:00Z`);

/** Width kept free at the right for the names of the two lines. */
const LABELS = 66;

/** A band of nine in ten round the mean, and dashed lines at par and reorder point. */
export function shelfOverMonths({ course, name }: ShelfInput, context: ChartContext): ChartSpec {
  const say = english.charts.shelf;
  const shown = shorten(cleanText(name), 40);
  const { points, par, reorderPoint } = course;
  const values = points.map(({ date, mean, low, high }) => ({ time: at(date), mean, low, high }));
  const day = new Intl.DateTimeFormat(safeLocale(context.locale), {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  const { decimal, count } = context.formats;
  const sentence = points.map(({ date, mean, low, high }) => ({
    at: at(date),
    sentence: say.sentence(day.format(at(date)), decimal(mean), count(low), count(high)),
  }));
  const lowest = Math.min(par, ...points.map(({ low }) => low));
  const most = Math.max(par, ...points.map(({ high }) => high));
  const start = values[0]?.time ?? 0;
  const end = values.at(-1)?.time ?? start;
  const x = {
    field: 'time',
    type: 'quantitative' as const,
    scale: { domain: [start, end], nice: false },
    axis: monthAxis(start, end, context.locale),
  };
  const y = {
    type: 'quantitative' as const,
    title: say.pieces,
    scale: { zero: false, domainMin: Math.max(0, lowest - 3 - 0.06 * (most - lowest)) },
    axis: { format: ',d', tickMinStep: 1 },
  };
  const line = (pieces: number, label: string, colour: string, above: boolean) => [
    {
      data: { values: [{ pieces }] },
      mark: { type: 'rule' as const, color: colour, strokeDash: [5, 4], strokeWidth: 1.5 },
      encoding: { y: { ...y, field: 'pieces' } },
    },
    {
      data: { values: [{ time: end, pieces, label }] },
      mark: {
        type: 'text' as const,
        align: 'left' as const,
        baseline: above ? ('bottom' as const) : ('top' as const),
        dx: 6,
        dy: above ? 3 : -3,
      },
      encoding: {
        x,
        y: { ...y, field: 'pieces' },
        text: { field: 'label', type: 'nominal' as const },
      },
    },
  ];
  return {
    ...framed({
      title: say.title(
        shown,
        course.ordersExpected,
        context.formats.decimal(course.ordersExpected),
        reorderPoint,
      ),
      description: say.description(shown, par, Math.min(...points.map(({ low }) => low))),
      locale: context.locale,
    }),
    width: PLOT_WIDTH - LABELS,
    height: 220,
    layer: [
      {
        data: { values },
        mark: { type: 'area', color: palette.sky, opacity: 0.35 },
        encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' } },
      },
      {
        data: { values },
        mark: { type: 'line', color: palette.blue, strokeWidth: 2 },
        encoding: { x, y: { ...y, field: 'mean' } },
      },
      ...line(par, say.par(context.formats.count(par)), palette.vermilion, false),
      ...(reorderPoint === null || reorderPoint === par
        ? []
        : line(
            reorderPoint,
            say.reorder(context.formats.count(reorderPoint)),
            palette.purple,
            true,
          )),
      ...tellingStrips(sentence, x),
    ],
  };
}

/** The figures behind the picture. */
export function shelfOverMonthsTable({ course }: ShelfInput): ChartTable {
  const say = english.charts.shelf;
  return {
    caption: say.caption,
    columns: [
      { title: say.date, as: 'text' },
      { title: say.expected, as: 'decimal' },
      { title: say.low, as: 'count' },
      { title: say.high, as: 'count' },
    ],
    rows: course.points.map(({ date, mean, low, high }) => [date, mean, low, high]),
  };
}

/** Firsts of months, at most nine of them, named as the place does. */
function monthAxis(start: number, end: number, locale: string) {
  const from = new Date(start);
  const months =
    (new Date(end).getUTCFullYear() - from.getUTCFullYear()) * 12 +
    new Date(end).getUTCMonth() -
    from.getUTCMonth();
  const every = [1, 2, 3, 4, 6, 12, 24, 60].find((step) => months / step <= 8) ?? 120;
  const name = new Intl.DateTimeFormat(safeLocale(locale), {
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  });
  const values: number[] = [];
  for (let month = 1; month <= months; month++) {
    const first = Date.UTC(from.getUTCFullYear(), from.getUTCMonth() + month, 1);
    if (month % every === 0 && first <= end) values.push(first);
  }
  const labels = Object.fromEntries(
    values.map((value) => [String(value), name.format(value).split(' ')]),
  );
  return { title: null, values, labelExpr: `(${JSON.stringify(labels)})[datum.value]` };
}
