/** Chart: landed cost of a piece against the size of the order. */
import type { LandedPoint } from '../../ordering/landed.js';
import { inUnits } from '../../ordering/money.js';
import { cleanText, shorten } from '../clean-text.js';
import type { ChartTable } from './chart-table.js';
import { framed, palette, PLOT_WIDTH, type ChartContext, type ChartSpec } from './style.js';

const words = {
  title: (name: string, first: string, last: string, pieces: string): string => `${name}: ${first} a piece on the smallest order, ${last} on ${pieces}`,
  description: (name: string): string => `Goods, freight and tax of one piece of ${name}, ordered by itself, for each number of cartons; the grey line is the price of the goods alone.`,
  size: 'Pieces ordered',
  cost: (currency: string): string => `Landed cost of a piece, ${currency}`,
  chosen: (pieces: string): string => `${pieces} ordered`,
  caption: 'Landed cost against order size',
  cartons: 'Cartons',
  pieces: 'Pieces',
  landed: 'Landed a piece',
  goods: 'Goods a piece',
  step: 'What begins here',
};

export interface LandedCostInput {
  readonly name: string;
  readonly currency: string;
  /** In order of size, at least one. */
  readonly points: readonly LandedPoint[];
  /** Pieces that are ordered; null: none. */
  readonly chosenPieces: number | null;
}

/** @throws RangeError if there are no points */
export function landedCost(input: LandedCostInput, context: ChartContext): ChartSpec {
  const { points, currency } = input;
  if (points.length === 0) throw new RangeError('a chart of landed cost needs at least one order size');
  const { formats, locale } = context;
  const name = shorten(cleanText(input.name), 40);
  const values = points.map((point) => ({ pieces: point.pieces, landed: inUnits(point.perPieceMinor, currency), goods: inUnits(point.goodsPerPieceMinor, currency), step: point.step }));
  const [first, last] = [values[0]!, values.at(-1)!];
  const x = { field: 'pieces', type: 'quantitative' as const, title: words.size, scale: { zero: false, nice: false, padding: 8 }, axis: { format: ',d', tickMinStep: 1, tickCount: 7 } };
  const y = { type: 'quantitative' as const, title: words.cost(currency), scale: { zero: true }, axis: { format: ',.2f' } };
  const chosen = values.filter(({ pieces }) => pieces === input.chosenPieces);
  const steps = values.filter(({ step }) => step !== null).map(({ step, ...value }) => ({ ...value, label: shorten(cleanText(step!), 24) }));
  return {
    ...framed({ title: words.title(name, formats.money(first.landed), formats.money(last.landed), formats.count(last.pieces)), description: words.description(name), locale }),
    width: PLOT_WIDTH,
    height: 220,
    layer: [
      { data: { values }, mark: { type: 'line', interpolate: 'step-after', color: 'currentColor', opacity: 0.45, strokeWidth: 1.5 }, encoding: { x, y: { ...y, field: 'goods' } } },
      { data: { values }, mark: { type: 'line', color: palette.blue, strokeWidth: 2, point: { filled: true, size: 26, color: palette.blue } }, encoding: { x, y: { ...y, field: 'landed' } } },
      ...(steps.length === 0 ? [] : stepMarks(steps, x)),
      ...(chosen.length === 0 ? [] : chosenMarks(chosen.map((value) => ({ ...value, label: words.chosen(formats.count(value.pieces)) })), x, y)),
    ],
  };
}

interface Size {
  readonly pieces: number;
  readonly landed: number;
  readonly label: string;
}

/** Fine lines where a step begins, the first few named one under the other from the top. */
function stepMarks(steps: readonly Size[], x: object) {
  return [
    { data: { values: [...steps] }, mark: { type: 'rule' as const, strokeDash: [2, 3], opacity: 0.6 }, encoding: { x } },
    ...steps.slice(0, 4).map((step, row) => ({
      data: { values: [step] },
      mark: { type: 'text' as const, align: 'left' as const, baseline: 'middle' as const, dx: 4, fontSize: 11, y: 10 + 15 * row },
      encoding: { x, text: { field: 'label', type: 'nominal' as const } },
    })),
  ];
}

/** The size that is ordered, with its name. */
function chosenMarks(chosen: readonly Size[], x: object, y: object) {
  return [
    { data: { values: [...chosen] }, mark: { type: 'point' as const, filled: true, size: 110, color: palette.vermilion, opacity: 1 }, encoding: { x, y: { ...y, field: 'landed' } } },
    {
      data: { values: [...chosen] },
      mark: { type: 'text' as const, align: 'left' as const, baseline: 'bottom' as const, dx: 6, dy: -8, fontWeight: 600 as const },
      encoding: { x, y: { ...y, field: 'landed' }, text: { field: 'label', type: 'nominal' as const } },
    },
  ];
}

/** The figures behind the picture, money in whole units of the currency. */
export function landedCostTable({ points, currency }: LandedCostInput): ChartTable {
  return {
    caption: `${words.caption}, ${currency}`,
    columns: [
      { title: words.cartons, as: 'count' },
      { title: words.pieces, as: 'count' },
      { title: words.landed, as: 'decimal' },
      { title: words.goods, as: 'decimal' },
      { title: words.step, as: 'text' },
    ],
    rows: points.map((point) => [point.cartons, point.pieces, inUnits(point.perPieceMinor, currency), inUnits(point.goodsPerPieceMinor, currency), point.step]),
  };
}
