/** The charts that a letter needs, each with its words and its table. */
import type { Answer } from '../answer.js';
import type { ReportContext } from '../../../tell/context.js';
import { formatsFor } from '../../../tell/format.js';
import { english } from '../../../tell/words.js';
import { needsNothing } from '../lead.js';
import { arrivalsAndSeats, arrivalsAndSeatsTable } from './arrivals-and-seats.js';
import { chart, type Chart } from '../../../tell/charts/chart-table.js';
import { placesThroughRush, placesThroughRushTable } from './places-through-rush.js';
import {
  decidedPart,
  riskAgainstStock,
  riskAgainstStockTable,
  type RiskCurve,
} from './risk-against-stock.js';
import { staffAndMachine, staffAndMachineTable } from './staff-and-machine.js';

/**
 * Risk against stock for the curve given; and, where the answer carries evidence, the places of the
 * ware that was tightest (else the first), arrivals and seats, staff and machine.
 */
export function letterCharts(
  answer: Answer,
  context: ReportContext,
  curves: readonly RiskCurve[],
): Chart[] {
  const look = { locale: context.locale, formats: formatsFor(context) };
  const { openingMinute, seats, capacity } = context;
  // Where no piece leaves the shelf, there is nothing to draw of pieces.
  const unused = needsNothing(answer);
  const list = (unused ? [] : curves)
    .filter(({ points }) => points.length > 0)
    .slice(0, 1)
    .map((curve): Chart => ({
      ...chart('risk-against-stock', riskAgainstStock(curve, look), riskAgainstStockTable(curve)),
      ...(decidedPart(curve).length === curve.points.length
        ? {}
        : {
            whole: {
              spec: riskAgainstStock(curve, look, true),
              label: english.charts.risk.whole,
            },
          }),
    }));
  const { evidence } = answer;
  if (evidence === undefined) return list;
  const ware = Math.max(
    0,
    answer.stock.findIndex((line) => line.ware === answer.tightest.ware),
  );
  const line = answer.stock[ware];
  if (line !== undefined && !unused) {
    const places = { evidence, ware, name: line.name, stock: line.pieces, openingMinute };
    list.push(
      chart('places-through-rush', placesThroughRush(places, look), placesThroughRushTable(places)),
    );
  }
  const house = { evidence, seats, openingMinute };
  list.push(
    chart('arrivals-and-seats', arrivalsAndSeats(house, look), arrivalsAndSeatsTable(house)),
  );
  const staff = { evidence, capacity, openingMinute };
  list.push(chart('staff-and-machine', staffAndMachine(staff, look), staffAndMachineTable(staff)));
  return list;
}
