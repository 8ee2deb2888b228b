/** The charts of a comparison, each where there is something to show. */
import type { Comparison } from '../answer.js';
import type { ReportContext } from '../../../tell/context.js';
import { formatsFor } from '../../../tell/format.js';
import { english } from '../../../tell/words.js';
import { alternativesCost, alternativesCostTable } from './alternatives-cost.js';
import { chart, type Chart } from '../../../tell/charts/chart-table.js';
import { levelAgainstMoney, levelAgainstMoneyTable } from './level-against-money.js';
import { tradeOffMapChart, tradeOffMapTable } from './trade-off-map.js';
import { whatMovesTheOrder, whatMovesTheOrderTable } from './what-moves-the-order.js';

export function compareCharts(comparison: Comparison, context: ReportContext): Chart[] {
  const words = english;
  const { currency } = comparison;
  const look = { locale: context.locale, formats: formatsFor(context) };
  const { worth, map, moves, ranking } = comparison;
  return [
    ...(ranking.order.length - ranking.notRanked.length > 1
      ? [
          chart(
            'alternatives-cost',
            alternativesCost(comparison, look, words),
            alternativesCostTable(comparison, words),
          ),
        ]
      : []),
    ...(map === null
      ? []
      : [...new Set(map.points.map(({ machineClass }) => machineClass))].map((cls) =>
          chart(
            `trade-off-map-${cls}`,
            tradeOffMapChart(map, cls, currency, look, words),
            tradeOffMapTable(map, words),
          ),
        )),
    ...(moves === null
      ? []
      : [
          chart(
            'what-moves-the-order',
            whatMovesTheOrder(moves, currency, look, words),
            whatMovesTheOrderTable(moves, words),
          ),
        ]),
    ...(worth === null || worth.points.length < 2
      ? []
      : [
          chart(
            'level-against-money',
            levelAgainstMoney(worth, currency, look, words),
            levelAgainstMoneyTable(worth, currency, words),
          ),
        ]),
  ];
}
