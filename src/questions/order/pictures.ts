/** The pictures of an order: the shelf over the months, landed cost by size of order, the machine top to scale. */
import { landedCost, landedCostTable } from './charts/landed-cost.js';
import { shelfOverMonths, shelfOverMonthsTable } from './charts/shelf-over-months.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import type { OrderStudy } from './study.js';
import { drawMachineTop } from './machine-top.js';
import { formatsFor } from '../../tell/format.js';
import type { ReportChart } from '../../tell/html-picture.js';
import { say } from './words.js';
import type { ReportContext } from '../../tell/context.js';
import { shortName } from '../../tell/section-parts.js';

/** For each ware the pieces on the shelf over the months, and its landed cost by size of order where a supplier quotes it. */
export function orderCharts({ sheet }: OrderStudy, context: ReportContext): Chart[] {
  const look = { locale: context.locale, formats: formatsFor(context) };
  return sheet.lines.flatMap((line, at) => {
    const shelf = { course: line.course, name: line.name };
    const landed = {
      name: line.name,
      currency: sheet.currency,
      costs: sheet.totals.costs.filter((cost) => cost.landed).map((cost) => cost.name),
      points: line.landedBySize,
      chosenPieces: line.pieces,
    };
    return [
      chart(`shelf-${at + 1}`, shelfOverMonths(shelf, look), shelfOverMonthsTable(shelf)),
      ...(line.landedBySize.length === 0
        ? []
        : [chart(`landed-${at + 1}`, landedCost(landed, look), landedCostTable(landed))]),
    ];
  });
}

/** The machine top to scale, where the scenario says what stands there. */
export function orderDrawings({ storage }: OrderStudy, context: ReportContext): ReportChart[] {
  if (storage === null) return [];
  const { count } = formatsFor(context);
  return [
    {
      id: 'machine-top',
      title: say.machineTop,
      words: say.machineTopText(count(storage.top.high)),
      svg: drawMachineTop(storage),
      table: {
        caption: say.storageCaption,
        columns: say.storageHead.map((title, at) => ({
          title: title.replace('\n', ' '),
          as: at === 0 ? ('text' as const) : ('count' as const),
        })),
        rows: storage.lines.map((line) => [
          shortName(line.name),
          line.onTop,
          line.inReserve,
          line.trigger,
        ]),
      },
    },
  ];
}
