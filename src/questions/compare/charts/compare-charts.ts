/** The charts of a comparison, each where there is something to show. */
import type { Comparison } from '../answer.js';
import type { ReportContext } from '../../../tell/context.js';
import { formatsFor } from '../../../tell/format.js';
import { alternativesCost, alternativesCostTable } from './alternatives-cost.js';
import { chart, type Chart } from '../../../tell/charts/chart-table.js';
import { levelAgainstMoney, levelAgainstMoneyTable } from './level-against-money.js';
import { tradeOffMapChart, tradeOffMapTable } from './trade-off-map.js';
import { whatMovesTheOrder, whatMovesTheOrderTable } from './what-moves-the-order.js';

export function compareCharts(comparison: Comparison, context: ReportContext): Chart[] {
  const { currency } = comparison;
  const look = { locale: context.locale, formats: formatsFor(context) };
  const { worth, map, moves, ranking } = comparison;
  return [
    ...(ranking.order.length - ranking.notRanked.length > 1
      ? [
          chart(
            'alternatives-cost',
            alternativesCost(comparison, look),
            alternativesCostTable(comparison),
          ),
        ]
      : []),
    ...(map === null
      ? []
      : [...new Set(map.points.map(({ machineClass }) => machineClass))].map((cls) =>
          chart(
            `trade-off-map-${cls}`,
            tradeOffMapChart(map, cls, currency, look),
            tradeOffMapTable(map),
          ),
        )),
    ...(moves === null
      ? []
      : [
          chart(
            'what-moves-the-order',
            whatMovesTheOrder(moves, currency, look),
            whatMovesTheOrderTable(moves),
          ),
        ]),
    ...(worth === null || worth.points.length < 2
      ? []
      : [
          chart(
            'level-against-money',
            levelAgainstMoney(worth, currency, look),
            levelAgainstMoneyTable(worth, currency),
          ),
        ]),
  ];
}
