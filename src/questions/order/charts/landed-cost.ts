/** Chart: landed cost of a piece against the size of the order. */
import type { LandedPoint } from '../../../ordering/landed.js';
import { inUnits } from '../../../ordering/money.js';
import { cleanText, shorten } from '../../../tell/clean-text.js';
import { english, listed } from '../../../tell/words.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { tellingStrips } from '../../../tell/charts/hover.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';

export interface LandedCostInput {
  readonly name: string;
  readonly currency: string;
  /** Names of the landed costs, goods first. */
  readonly costs: readonly string[];
  /** In order of size, at least one. */
  readonly points: readonly LandedPoint[];
  /** Pieces that are ordered; null: none. */
  readonly chosenPieces: number | null;
}

/** Height of the picture over its highest point: a label goes there. */
const HEADROOM = 1.12;

/** @throws RangeError if there are no points */
export function landedCost(input: LandedCostInput, context: ChartContext): ChartSpec {
  const say = english.charts.landed;
  const { points, currency } = input;
  if (points.length === 0)
    throw new RangeError('a chart of landed cost needs at least one order size');
  const { formats, locale } = context;
  const name = shorten(cleanText(input.name), 40);
  const beside = input.costs.slice(1).map((cost) => cost.toLowerCase());
  const values = points.map((point) => ({
    pieces: point.pieces,
    landed: inUnits(point.perPieceMinor, currency),
    goods: inUnits(point.goodsPerPieceMinor, currency),
    step: point.step,
  }));
  const [first, last] = [values[0]!, values.at(-1)!];
  const x = {
    field: 'pieces',
    type: 'quantitative' as const,
    title: say.size,
    scale: { zero: false, nice: false, padding: 8 },
    axis: { format: ',d', tickMinStep: 1, tickCount: 7 },
  };
  const y = {
    type: 'quantitative' as const,
    title: say.cost(input.costs.join(', ').toLowerCase(), currency),
    scale: {
      domain: [0, HEADROOM * Math.max(...values.flatMap(({ landed, goods }) => [landed, goods]))],
      nice: true,
    },
    axis: { format: ',.2f' },
  };
  const sentence = points.map((point, i) => {
    const text = say.sentence(
      formats.count(point.pieces),
      formats.count(point.cartons),
      point.cartons === 1,
      formats.money(values[i]!.landed),
      listed(beside),
      formats.money(values[i]!.goods),
    );
    return {
      at: point.pieces,
      sentence:
        point.step === null ? text : say.sentenceStep(text, shorten(cleanText(point.step), 60)),
    };
  });
  const chosen = values.filter(({ pieces }) => pieces === input.chosenPieces);
  const steps = values
    .filter(({ step }) => step !== null)
    .map(({ step, ...value }) => ({ ...value, label: shorten(cleanText(step!), 24) }));
  return {
    ...framed({
      title: say.title(
        name,
        formats.money(first.landed),
        formats.money(last.landed),
        formats.count(last.pieces),
      ),
      description: say.description(name, listed([input.costs[0]!, ...beside])),
      locale,
    }),
    width: PLOT_WIDTH,
    height: 220,
    layer: [
      {
        data: { values },
        mark: {
          type: 'line',
          interpolate: 'step-after',
          color: 'currentColor',
          opacity: 0.45,
          strokeWidth: 1.5,
        },
        encoding: { x, y: { ...y, field: 'goods' } },
      },
      {
        data: { values },
        mark: {
          type: 'line',
          color: palette.blue,
          strokeWidth: 2,
          point: { filled: true, size: 26, color: palette.blue },
        },
        encoding: { x, y: { ...y, field: 'landed' } },
      },
      ...(steps.length === 0 ? [] : stepMarks(steps, x)),
      ...(chosen.length === 0
        ? []
        : chosenMarks(
            chosen.map((value) => ({ ...value, label: say.chosen(formats.count(value.pieces)) })),
            x,
            y,
          )),
      ...tellingStrips(sentence, x),
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
    {
      data: { values: [...steps] },
      mark: { type: 'rule' as const, strokeDash: [2, 3], opacity: 0.6 },
      encoding: { x },
    },
    ...steps.slice(0, 4).map((step, row) => ({
      data: { values: [step] },
      mark: {
        type: 'text' as const,
        align: 'left' as const,
        baseline: 'middle' as const,
        dx: 4,
        fontSize: 11,
        y: 10 + 15 * row,
      },
      encoding: { x, text: { field: 'label', type: 'nominal' as const } },
    })),
  ];
}

/** The size that is ordered, with its name. */
function chosenMarks(chosen: readonly Size[], x: object, y: object) {
  return [
    {
      data: { values: [...chosen] },
      mark: {
        type: 'point' as const,
        filled: true,
        size: 110,
        color: palette.vermilion,
        opacity: 1,
      },
      encoding: { x, y: { ...y, field: 'landed' } },
    },
    {
      data: { values: [...chosen] },
      mark: {
        type: 'text' as const,
        align: 'left' as const,
        baseline: 'bottom' as const,
        dx: 6,
        dy: -8,
        fontWeight: 600 as const,
      },
      encoding: {
        x,
        y: { ...y, field: 'landed' },
        text: { field: 'label', type: 'nominal' as const },
      },
    },
  ];
}

/** The figures behind the picture, money in whole units of the currency. */
export function landedCostTable({ points, currency }: LandedCostInput): ChartTable {
  const say = english.charts.landed;
  return {
    caption: `${say.caption}, ${currency}`,
    columns: [
      { title: say.cartons, as: 'count' },
      { title: say.pieces, as: 'count' },
      { title: say.landed, as: 'decimal' },
      { title: say.goods, as: 'decimal' },
      { title: say.step, as: 'text' },
    ],
    rows: points.map((point) => [
      point.cartons,
      point.pieces,
      inUnits(point.perPieceMinor, currency),
      inUnits(point.goodsPerPieceMinor, currency),
      point.step,
    ]),
  };
}
