/** Chart: pieces of one ware on the shelf over the months, with its par, reorder point and orders. */
import type { ShelfCourse } from '../../ordering/shelf-course.js';
import { cleanText, shorten } from '../clean-text.js';
import { safeLocale } from '../format.js';
import type { ChartTable } from './chart-table.js';
import { framed, palette, PLOT_WIDTH, type ChartContext, type ChartSpec } from './style.js';

const words = {
  title: (name: string, orders: number, times: string, point: number | null): string =>
    point === null ? `${name}: one order for the life of the range` : orders < 0.05 ? `${name}: no further order is expected` : `${name}: order when fewer than ${point} are counted, ${times} times on average`,
  description: (name: string, par: number, low: number): string => `Expected pieces of ${name} on the shelf with the band that holds nine times in ten, against the ${par} that must stand at opening. The band is lowest at ${low} pieces.`,
  pieces: 'Pieces on the shelf',
  par: (pieces: string): string => `par ${pieces}`,
  reorder: (pieces: string): string => `order < ${pieces}`,
  caption: 'Pieces on the shelf',
  date: 'Date',
  expected: 'Expected',
  low: '5 % of the time below',
  high: '95 % of the time at most',
};

export interface ShelfInput {
  readonly course: ShelfCourse;
  readonly name: string;
}

/** Epoch milliseconds of a `YYYY-MM-DD` date, in UTC: the axis and the labels read it in UTC too. */
const at = (date: string): number => Date.parse(`${date}T00:00:00Z`);

/** Width kept free at the right for the names of the two lines. */
const LABELS = 66;

/** A band of nine in ten round the mean, and dashed lines at par and reorder point. */
export function shelfOverMonths({ course, name }: ShelfInput, context: ChartContext): ChartSpec {
  const shown = shorten(cleanText(name), 40);
  const { points, par, reorderPoint } = course;
  const values = points.map(({ date, mean, low, high }) => ({ time: at(date), mean, low, high }));
  const lowest = Math.min(par, ...points.map(({ low }) => low));
  const most = Math.max(par, ...points.map(({ high }) => high));
  const start = values[0]?.time ?? 0;
  const end = values.at(-1)?.time ?? start;
  const x = { field: 'time', type: 'temporal' as const, scale: { type: 'utc' as const, domain: [start, end], nice: false }, axis: monthAxis(start, end, context.locale) };
  const y = { type: 'quantitative' as const, title: words.pieces, scale: { zero: false, domainMin: Math.max(0, lowest - 3 - 0.06 * (most - lowest)) }, axis: { format: ',d', tickMinStep: 1 } };
  const line = (pieces: number, label: string, colour: string, above: boolean) => [
    { data: { values: [{ pieces }] }, mark: { type: 'rule' as const, color: colour, strokeDash: [5, 4], strokeWidth: 1.5 }, encoding: { y: { ...y, field: 'pieces' } } },
    {
      data: { values: [{ time: end, pieces, label }] },
      mark: { type: 'text' as const, align: 'left' as const, baseline: above ? ('bottom' as const) : ('top' as const), dx: 6, dy: above ? 3 : -3 },
      encoding: { x, y: { ...y, field: 'pieces' }, text: { field: 'label', type: 'nominal' as const } },
    },
  ];
  return {
    ...framed({ title: words.title(shown, course.ordersExpected, context.formats.decimal(course.ordersExpected), reorderPoint), description: words.description(shown, par, Math.min(...points.map(({ low }) => low))), locale: context.locale }),
    width: PLOT_WIDTH - LABELS,
    height: 220,
    layer: [
      { data: { values }, mark: { type: 'area', color: palette.sky, opacity: 0.35 }, encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' } } },
      { data: { values }, mark: { type: 'line', color: palette.blue, strokeWidth: 2 }, encoding: { x, y: { ...y, field: 'mean' } } },
      ...line(par, words.par(context.formats.count(par)), palette.vermilion, false),
      ...(reorderPoint === null || reorderPoint === par ? [] : line(reorderPoint, words.reorder(context.formats.count(reorderPoint)), palette.purple, true)),
    ],
  };
}

/** The figures behind the picture. */
export function shelfOverMonthsTable({ course }: ShelfInput): ChartTable {
  return {
    caption: words.caption,
    columns: [
      { title: words.date, as: 'text' },
      { title: words.expected, as: 'decimal' },
      { title: words.low, as: 'count' },
      { title: words.high, as: 'count' },
    ],
    rows: course.points.map(({ date, mean, low, high }) => [date, mean, low, high]),
  };
}

/** Firsts of months, at most nine of them, named as the place does. */
function monthAxis(start: number, end: number, locale: string) {
  const from = new Date(start);
  const months = (new Date(end).getUTCFullYear() - from.getUTCFullYear()) * 12 + new Date(end).getUTCMonth() - from.getUTCMonth();
  const every = [1, 2, 3, 4, 6, 12, 24, 60].find((step) => months / step <= 8) ?? 120;
  const name = new Intl.DateTimeFormat(safeLocale(locale), { month: 'short', year: 'numeric', timeZone: 'UTC' });
  const values: number[] = [];
  for (let month = 1; month <= months; month++) {
    const first = Date.UTC(from.getUTCFullYear(), from.getUTCMonth() + month, 1);
    if (month % every === 0 && first <= end) values.push(first);
  }
  const labels = Object.fromEntries(values.map((value) => [String(value), name.format(value).split(' ')]));
  return { title: null, values, labelExpr: `(${JSON.stringify(labels)})[toNumber(datum.value)]` };
}
