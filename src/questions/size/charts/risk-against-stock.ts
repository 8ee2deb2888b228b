/** Chart: the chance that ware runs out in a rush, against the stock. */
import { cleanText, shorten } from '../../../tell/clean-text.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { tellingStrips } from '../../../tell/charts/hover.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';
import { english, type Words } from '../../../tell/words.js';

export interface RiskPoint {
  /** Pieces: of the one ware, or of all together. */
  readonly stock: number;
  /** Share 0..1 of rushes in which something runs out, with a 95 % interval. */
  readonly risk: number;
  readonly low: number;
  readonly high: number;
}

export interface RiskCurve {
  /** Name of the ware that varies, the rest staying as chosen; null: all ware together, scaled in proportion. */
  readonly ware: string | null;
  /** In order of stock. */
  readonly points: readonly RiskPoint[];
  /** Pieces chosen; drawn on the curve at the nearest point. */
  readonly chosen: number;
  /** Share of rushes promised to be free of shortage, 0..1. */
  readonly level: number;
}

/** Share of the plot's width kept to the right of the chosen point for its label: the curve comes from the left. */
const LABEL_ROOM = 0.24;

/** @throws RangeError if the curve has no points */
export function riskAgainstStock(
  curve: RiskCurve,
  context: ChartContext,
  words: Words = english,
): ChartSpec {
  const { formats, locale } = context;
  const say = words.charts.risk;
  const { points, level } = curve;
  if (points.length === 0) throw new RangeError('a risk curve needs at least one point');
  const name = curve.ware === null ? null : shorten(cleanText(curve.ware), 40);
  const chosen = nearest(points, curve.chosen);
  const first = points[0]!;
  const last = points.at(-1)!;
  const pieces = formats.count(curve.chosen);
  const risk = formats.percent(chosen.risk);
  const some = (stock: number): string =>
    name === null
      ? say.allPieces(formats.count(stock))
      : words.answer.pieces(formats.count(stock), name, stock === 1);
  const sentence = points.map((point) => ({
    at: point.stock,
    sentence: say.sentence(
      some(point.stock),
      formats.percent(point.risk),
      formats.percent(point.low),
      formats.percent(point.high),
    ),
  }));
  const allowed = 1 - level;
  const top = Math.min(1, Math.max(...points.map(({ high }) => high), allowed * 1.5));
  const x = {
    field: 'stock',
    type: 'quantitative' as const,
    title: name === null ? say.stockJoint : say.stockWare(name),
    scale: {
      domain: [
        first.stock,
        Math.max(last.stock, chosen.stock + LABEL_ROOM * (last.stock - first.stock)),
      ],
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
    axis: { format: top > 0.1 ? '.0%' : '.1%' },
  };
  return {
    ...framed({
      title:
        name === null
          ? say.titleJoint(pieces, risk)
          : say.titleWare(words.answer.pieces(pieces, name, curve.chosen === 1), risk),
      description: say.description(
        formats.count(first.stock),
        formats.percent(first.risk),
        formats.count(last.stock),
        formats.percent(last.risk),
      ),
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
              stock: first.stock,
              allowed,
              label: say.allowed(
                formats.percent(allowed, Number.isInteger(Math.round(allowed * 1e6) / 1e4) ? 0 : 1),
              ),
            },
          ],
        },
        mark: { type: 'text', align: 'left', baseline: 'bottom', dx: -4, dy: -4 },
        encoding: { x, y: { ...y, field: 'allowed' }, text: { field: 'label', type: 'nominal' } },
      },
      {
        data: { values: [chosen] },
        mark: { type: 'point', filled: true, size: 110, color: palette.vermilion, opacity: 1 },
        encoding: { x, y: { ...y, field: 'risk' } },
      },
      {
        data: { values: [{ ...chosen, label: say.chosen(pieces) }] },
        mark: { type: 'text', align: 'left', baseline: 'bottom', dx: 2, dy: -10, fontWeight: 600 },
        encoding: { x, y: { ...y, field: 'high' }, text: { field: 'label', type: 'nominal' } },
      },
      ...tellingStrips(sentence, x),
    ],
  };
}

export function riskAgainstStockTable(curve: RiskCurve, words: Words = english): ChartTable {
  const say = words.charts.risk;
  return {
    caption: say.caption,
    columns: [
      { title: say.stock, as: 'count' },
      { title: say.riskHead, as: 'share' },
      { title: say.low, as: 'share' },
      { title: say.high, as: 'share' },
    ],
    rows: curve.points.map(({ stock, risk, low, high }) => [stock, risk, low, high]),
  };
}

const nearest = (points: readonly RiskPoint[], stock: number): RiskPoint =>
  points.reduce((best, point) =>
    Math.abs(point.stock - stock) < Math.abs(best.stock - stock) ? point : best,
  );
