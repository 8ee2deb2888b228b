/** Chart: the chance that ware runs out in a rush, against the stock and its cost: where it is decided, or all of it. */
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
import { english } from '../../../tell/words.js';

export interface RiskPoint {
  /** Pieces of all ware together. */
  readonly stock: number;
  /** What has to be bought for it, in whole currency units. */
  readonly cost: number;
  /** Share 0..1 of rushes in which something runs out, with a 95 % interval. */
  readonly risk: number;
  readonly low: number;
  readonly high: number;
}

export interface RiskCurve {
  /** All ware scaled in proportion, in order of stock. */
  readonly points: readonly RiskPoint[];
  /** Pieces chosen; drawn on the curve at the nearest point. */
  readonly chosen: number;
  /** Share of rushes promised to be free of shortage, 0..1. */
  readonly level: number;
}

/** Share of the plot's width kept to the right of the last labelled point: the curve comes from the left. */
const LABEL_ROOM = 0.4;
/** Risk up to which the curve is shown, unless twice what is allowed is more: there it is decided. */
const DECIDED_BELOW = 0.1;
/** Pieces more and fewer whose risk and cost are written on the curve. */
const BESIDE = 5;

/** @throws RangeError if the curve has no points */
export function riskAgainstStock(
  curve: RiskCurve,
  context: ChartContext,
  whole = false,
): ChartSpec {
  const { formats, locale } = context;
  const say = english.charts.risk;
  const { level } = curve;
  const points = whole ? curve.points : decidedPart(curve);
  if (points.length === 0) throw new RangeError('a risk curve needs at least one point');
  const chosen = nearest(points, curve.chosen);
  const first = points[0]!;
  const last = points.at(-1)!;
  const pieces = formats.count(curve.chosen);
  const risk = formats.percent(chosen.risk);
  const beside = besides(curve).filter((point) => points.includes(point));
  const furthest = Math.max(chosen.stock, ...beside.map(({ stock }) => stock));
  const difference = (point: RiskPoint): string =>
    say.beside(
      formats.count(Math.abs(point.stock - chosen.stock)),
      formats.money(Math.abs(point.cost - chosen.cost)),
      formats.percent(point.risk),
      point.stock > chosen.stock,
    );
  const sentence = points.map((point) => ({
    at: point.stock,
    sentence: say.sentence(
      formats.count(point.stock),
      formats.percent(point.risk),
      formats.percent(point.low),
      formats.percent(point.high),
    ),
  }));
  const allowed = 1 - level;
  const top = Math.min(1, Math.max(...points.map(({ high }) => high), allowed * 1.5));
  const right = Math.max(last.stock, furthest + LABEL_ROOM * (furthest - first.stock));
  const x = {
    field: 'stock',
    type: 'quantitative' as const,
    title: say.stock,
    scale: {
      domain: [first.stock, right],
      zero: false,
      nice: false,
      padding: 8,
    },
    axis: { tickMinStep: 1, tickCount: 7, format: ',d' },
  };
  const y = {
    type: 'quantitative' as const,
    title: say.risk,
    scale: { domain: [0, top], nice: true },
    axis: percentAxis(top > 0.05 ? '.0%' : '.1%'),
  };
  return {
    ...framed({
      title: say.title(pieces, risk),
      description: [...besides(curve).map((point) => difference(point)), say.band].join(' '),
      locale,
    }),
    width: PLOT_WIDTH,
    height: 220,
    layer: [
      {
        data: { values: [...points] },
        mark: { type: 'area', color: palette.sky, opacity: 0.35 },
        encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' } },
      },
      {
        data: { values: [...points] },
        mark: { type: 'line', color: palette.blue, strokeWidth: 2 },
        encoding: { x, y: { ...y, field: 'risk' } },
      },
      {
        data: { values: [{ allowed }] },
        mark: { type: 'rule', strokeDash: [5, 4], opacity: 0.7 },
        encoding: { y: { ...y, field: 'allowed' } },
      },
      {
        data: {
          values: [
            {
              stock: right,
              allowed,
              label: say.allowed(
                formats.percent(allowed, Number.isInteger(Math.round(allowed * 1e6) / 1e4) ? 0 : 1),
              ),
            },
          ],
        },
        mark: { type: 'text', align: 'right', baseline: 'bottom', dx: 4, dy: -4 },
        encoding: { x, y: { ...y, field: 'allowed' }, text: { field: 'label', type: 'nominal' } },
      },
      {
        data: { values: [chosen] },
        mark: { type: 'point', filled: true, size: 110, color: palette.vermilion, opacity: 1 },
        encoding: { x, y: { ...y, field: 'risk' } },
      },
      {
        data: { values: [{ ...chosen, label: say.chosen(pieces) }] },
        // Under the falling curve there is room for it; above, the others have theirs.
        mark: { type: 'text', align: 'right', baseline: 'top', dx: -8, dy: 4, fontWeight: 600 },
        encoding: { x, y: { ...y, field: 'risk' }, text: { field: 'label', type: 'nominal' } },
      },
      {
        data: {
          values: beside.map((point) => ({
            ...point,
            more: point.stock > chosen.stock,
            label: say.besideLabel(
              formats.count(Math.abs(point.stock - chosen.stock)),
              formats.money(Math.abs(point.cost - chosen.cost)),
              point.stock > chosen.stock,
            ),
          })),
        },
        encoding: { x, y: { ...y, field: 'risk' } },
        layer: [
          { mark: { type: 'point', filled: true, size: 60, color: palette.blue, opacity: 1 } },
          // Points that lie close together keep their labels apart.
          ...[
            { more: false, dy: -16 },
            { more: true, dy: -3 },
          ].map(({ more, dy }) => ({
            transform: [{ filter: { field: 'more', equal: more } }],
            mark: {
              type: 'text' as const,
              align: 'left' as const,
              baseline: 'bottom' as const,
              dx: 6,
              dy,
            },
            encoding: { text: { field: 'label', type: 'nominal' as const } },
          })),
        ],
      },
      ...tellingStrips(sentence, x),
    ],
  };
}

export function riskAgainstStockTable(curve: RiskCurve): ChartTable {
  const say = english.charts.risk;
  return {
    caption: say.caption,
    columns: [
      { title: say.pieces, as: 'count' },
      { title: say.riskHead, as: 'share' },
      { title: say.low, as: 'share' },
      { title: say.high, as: 'share' },
    ],
    rows: curve.points.map(({ stock, risk, low, high }) => [stock, risk, low, high]),
  };
}

/** The part of the curve where it is decided; all of it where that would leave the chosen stock out or nothing to see. */
export function decidedPart({ points, chosen, level }: RiskCurve): readonly RiskPoint[] {
  const most = Math.max(DECIDED_BELOW, 2 * (1 - level));
  const part = points.filter(({ risk }) => risk <= most);
  return part.length < 3 || !part.includes(nearest(points, chosen)) ? points : part;
}

/** The points some pieces below and above the chosen one, where the curve has them. */
function besides({ points, chosen }: RiskCurve): RiskPoint[] {
  if (points.length === 0) return [];
  const at = nearest(points, chosen);
  return [-BESIDE, BESIDE].flatMap((step) => {
    const point = nearest(points, at.stock + step);
    return (point.stock - at.stock) * step > 0 ? [point] : [];
  });
}

const nearest = (points: readonly RiskPoint[], stock: number): RiskPoint =>
  points.reduce((best, point) =>
    Math.abs(point.stock - stock) < Math.abs(best.stock - stock) ? point : best,
  );
