/** Chart: what the ware costs more or less than in the house as it is by machines, a line for each clearing round; the level is kept all along each line. */
import type { TradeOffMap } from '../answer.js';
import { cleanText } from '../../../tell/clean-text.js';
import { minutesText } from '../../../tell/format.js';
import { english } from '../../../tell/words.js';
import type { ChartTable } from '../../../tell/charts/chart-table.js';
import { withSentence, telling } from '../../../tell/charts/hover.js';
import {
  framed,
  palette,
  PLOT_WIDTH,
  type ChartContext,
  type ChartSpec,
} from '../../../tell/charts/style.js';

const colours = [
  palette.blue,
  palette.green,
  palette.orange,
  palette.vermilion,
  palette.purple,
  palette.sky,
];

/** One class of machine; where racks are an axis too, their least number (the table has all). */
export function tradeOffMapChart(
  map: TradeOffMap,
  machineClass: string,
  currency: string,
  { formats, locale }: ChartContext,
): ChartSpec {
  const say = english.compare.charts;
  const ofClass = map.points.filter((point) => point.machineClass === machineClass);
  const racks = ofClass[0]?.racks ?? null;
  const points = ofClass
    .filter((point) => point.racks === racks)
    .map(({ machines, stockCost: cost, clearingMinutes }) => {
      const stockCost = cost - map.own;
      const round = minutesText(clearingMinutes, formats);
      return {
        machines,
        stockCost,
        round,
        sentence: say.sentenceMap(
          formats.count(machines),
          cleanText(machineClass),
          round,
          `${stockCost > 0 ? '+' : ''}${formats.money(stockCost)}`,
        ),
      };
    });
  const rounds = [...new Set(points.map(({ round }) => round))];
  const counts = [...new Set(points.map(({ machines }) => machines))];
  const worth = map.machineWorth
    .filter(
      (one) =>
        one.machineClass === machineClass && one.racks === racks && one.from === 1 && one.to === 2,
    )
    .toSorted((a, b) => b.pieces - a.pieces)[0];
  const x = {
    field: 'machines',
    type: 'ordinal' as const,
    title: say.machines,
    axis: { labelAngle: 0, grid: true },
    scale: { type: 'point' as const, padding: 0.35 },
  };
  const most = Math.max(...points.map(({ stockCost }) => stockCost));
  const least = Math.min(...points.map(({ stockCost }) => stockCost));
  const y = {
    field: 'stockCost',
    type: 'quantitative' as const,
    title: say.money(currency, cleanText(machineClass)),
    scale: {
      zero: false,
      nice: true,
      domain: [least - 0.08 * (most - least + 1), most + 0.08 * (most - least + 1)],
    },
    axis: { format: '+,d' },
  };
  const color = {
    field: 'round',
    type: 'nominal' as const,
    sort: rounds,
    scale: { domain: rounds, range: colours },
    legend: { title: say.cleared, titleOrient: 'left' as const, columns: 3 },
  };
  const last = points.filter(({ machines }) => machines === counts.at(-1));
  return {
    ...framed({
      title:
        worth === undefined || worth.pieces < 0.5
          ? say.mapTitlePlain
          : say.mapTitle(
              formats.count(Math.round(worth.pieces)),
              Math.round(worth.pieces) === 1,
              cleanText(machineClass),
              minutesText(worth.clearingMinutes, formats),
            ),
      description: say.mapDescription,
      locale,
    }),
    width: PLOT_WIDTH,
    height: 260,
    layer: [
      {
        data: { values: points },
        mark: { type: 'line', strokeWidth: 2 },
        encoding: { x, y, color },
      },
      {
        data: { values: points },
        mark: { type: 'point', ...telling, filled: true, opacity: 1, size: 60 },
        encoding: { ...withSentence, x, y, color },
      },
      {
        data: { values: spread(last, 0.065 * (most - least + 1)) },
        mark: { type: 'text', align: 'left', dx: 9 },
        encoding: {
          x,
          y: { ...y, field: 'labelAt' },
          text: { field: 'stockCost', type: 'quantitative', format: '+,.0f' },
        },
      },
    ],
  };
}

/** Labels moved apart, so that none lies on another. */
function spread<P extends { readonly stockCost: number }>(
  points: readonly P[],
  apart: number,
): (P & { readonly labelAt: number })[] {
  let above = -Infinity;
  return points
    .toSorted((a, b) => a.stockCost - b.stockCost)
    .map((point) => {
      above = Math.max(point.stockCost, above + apart);
      return { ...point, labelAt: above };
    });
}

export function tradeOffMapTable({ points, own }: TradeOffMap): ChartTable {
  const say = english.compare;
  return {
    caption: say.charts.captions.map,
    columns: [
      { title: say.mapHead.class, as: 'text' },
      { title: say.mapHead.machines, as: 'count' },
      { title: say.mapHead.round, as: 'decimal' },
      { title: say.mapHead.racks, as: 'count' },
      { title: say.charts.pieces, as: 'count' },
      { title: say.head.stock, as: 'decimal' },
    ],
    rows: points.map((point) => [
      point.machineClass,
      point.machines,
      point.clearingMinutes,
      point.racks,
      point.pieces,
      point.stockCost - own,
    ]),
  };
}
