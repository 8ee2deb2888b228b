/** The section of the order: what to buy from whom, when again, where it stands. */
import { landedCost, landedCostTable } from './charts/landed-cost.js';
import { shelfOverMonths, shelfOverMonthsTable } from './charts/shelf-over-months.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import type { OrderStudy } from './study.js';
import { drawMachineTop } from './machine-top.js';
import { formatsFor } from '../../tell/format.js';
import type { ReportChart } from '../../tell/html-picture.js';
import { orderParts } from './parts.js';
import { english } from '../../tell/words.js';
import type { ReportContext } from '../../tell/context.js';
import {
  folded,
  heading,
  joined,
  listUnder,
  paragraph,
  pictureList,
  shortName,
  subheading,
  table,
} from '../../tell/section-parts.js';

/** Columns of the sheet's row that say what is ordered now, and those that say how it goes on. */
const NOW = [0, 1, 2, 3, 4, 7, 8, 9, 10];
const AGAIN = [0, 5, 6, 11, 12];

/** For each ware the pieces on the shelf over the months, and its landed cost by size of order where a supplier quotes it. */
export function orderCharts({ sheet }: OrderStudy, context: ReportContext): Chart[] {
  const look = { locale: context.locale, formats: formatsFor(context) };
  return sheet.lines.flatMap((line, at) => {
    const shelf = { course: line.course, name: line.name };
    const landed = {
      name: line.name,
      currency: sheet.currency,
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
  const words = context.words ?? english;
  const say = words.order;
  const { count } = formatsFor(context);
  return [
    {
      id: 'machine-top',
      title: say.machineTop,
      words: words.sections.order.machineTop(count(storage.top.high)),
      svg: drawMachineTop(storage),
      table: {
        caption: words.sections.order.machineTopTable,
        columns: say.storageHead.map((title, at) => ({
          title,
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

/** @param pictures of `orderDrawings` and, drawn, of `orderCharts` */
export function orderSection(
  study: OrderStudy,
  context: ReportContext,
  pictures: readonly ReportChart[],
): string {
  const { sheet, unquoted } = study;
  const words = context.words ?? english;
  const say = words.order;
  const own = words.sections.order;
  const formats = formatsFor(context);
  const parts = orderParts(study, context);
  const pick = (row: readonly string[], at: readonly number[]): string[] =>
    at.map((index) => row[index] ?? '');
  // The pictures of the ware that costs most stand open.
  const costliest = sheet.lines
    .map((line, at) => ({ line, at }))
    .toSorted(
      (a, b) =>
        (b.line.landedMinor ?? 0) - (a.line.landedMinor ?? 0) || b.line.pieces - a.line.pieces,
    )[0];
  const charts = pictures.filter(({ id }) => id !== 'machine-top');
  const shown = charts.filter(
    ({ id }) =>
      costliest !== undefined &&
      (id === `shelf-${costliest.at + 1}` || id === `landed-${costliest.at + 1}`),
  );
  return joined([
    heading(parts.heading),
    paragraph(parts.sentence),
    sheet.plan === null || sheet.plan.proved ? '' : paragraph(own.notProved),
    table({
      caption: own.orderCaption,
      head: pick(say.head, NOW),
      rows: parts.rows.map((row) => pick(row, NOW)),
      totals: pick(parts.totals, NOW),
    }),
    paragraph(say.notes, 'small'),
    ...parts.consignments.map((text) => paragraph(text)),
    listUnder(say.warnings, parts.warnings),
    unquoted
      ? ''
      : table({
          caption: own.againCaption,
          words: [1, 2],
          head: pick(say.head, AGAIN),
          rows: parts.rows.map((row) => pick(row, AGAIN)),
        }),
    listUnder(say.next, parts.nextSteps),
    listUnder(say.suppliers, parts.suppliers),
    pictureList(shown, formats, words),
    folded(
      own.others,
      pictureList(
        charts.filter((one) => !shown.includes(one)),
        formats,
        words,
      ),
    ),
    table({
      caption: say.takeaway,
      head: [own.item, ...say.takeawayHead.slice(1)],
      rows: parts.takeaway,
    }),
    listUnder(say.saucers, parts.saucers),
    parts.stored.length === 0 ? '' : subheading(say.storage),
    ...parts.storing.map((text) => paragraph(text)),
    pictureList(
      pictures.filter(({ id }) => id === 'machine-top'),
      formats,
      words,
    ),
    table({ caption: say.storage, head: say.storageHead, rows: parts.stored }),
    listUnder(own.cautions, parts.cautions),
  ]);
}
