/** The order, told once: what to buy from whom, when again, where it stands. */
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { english } from '../../tell/words.js';
import { orderParts } from './parts.js';
import { orderCharts, orderDrawings } from './pictures.js';
import type { OrderStudy } from './study.js';

/** Columns of the sheet's row that say what is ordered now, and those that say how it goes on. */
const NOW = [0, 1, 2, 3, 4, 7, 8, 9, 10];
const AGAIN = [0, 5, 6, 11, 12];
const WORDS = [5, 6];

export function orderBlocks(study: OrderStudy, context: ReportContext): Block[] {
  const { sheet, unquoted } = study;
  const words = context.words ?? english;
  const say = words.order;
  const own = words.sections.order;
  const parts = orderParts(study, context);
  const pick = (row: readonly string[], at: readonly number[]): string[] =>
    at.map((index) => row[index] ?? '');
  const columns = (titles: readonly string[], at: readonly number[]) =>
    at.map((index) => ({
      title: titles[index]!,
      as: index === 0 || WORDS.includes(index) ? ('words' as const) : ('figures' as const),
    }));
  const figures = (titles: readonly string[]) =>
    titles.map((title, at) => ({
      title,
      as: at === 0 ? ('words' as const) : ('figures' as const),
    }));
  // The pictures of the ware that costs most stand open.
  const costliest = sheet.lines
    .map((line, at) => ({ line, at }))
    .toSorted(
      (a, b) =>
        (b.line.landedMinor ?? 0) - (a.line.landedMinor ?? 0) || b.line.pieces - a.line.pieces,
    )[0];
  const charts = orderCharts(study, context);
  const first = charts.filter(
    ({ id }) =>
      costliest !== undefined &&
      (id === `shelf-${costliest.at + 1}` || id === `landed-${costliest.at + 1}`),
  );
  return [
    heading(parts.heading),
    paragraphs([parts.sentence], 'lead'),
    paragraphs(sheet.plan === null || sheet.plan.proved ? [] : [own.notProved]),
    table({
      caption: own.orderCaption,
      columns: columns(say.head, NOW),
      rows: parts.rows.map((row) => pick(row, NOW)),
      totals: pick(parts.totals, NOW),
    }),
    paragraphs([say.notes], 'small'),
    paragraphs(parts.consignments),
    list(parts.warnings, say.warnings),
    table({
      caption: own.againCaption,
      columns: columns(say.head, AGAIN),
      rows: unquoted ? [] : parts.rows.map((row) => pick(row, AGAIN)),
    }),
    list(parts.nextSteps, say.next),
    list(parts.suppliers, say.suppliers),
    { kind: 'picture', pictures: first },
    fold(own.others, [{ kind: 'picture', pictures: charts.filter((one) => !first.includes(one)) }]),
    table({
      caption: say.takeaway,
      columns: figures([own.item, ...say.takeawayHead.slice(1)]),
      rows: parts.takeaway,
    }),
    list(parts.saucers, say.saucers),
    heading(parts.stored.length === 0 ? '' : say.storage, 2),
    paragraphs(parts.storing),
    { kind: 'picture', pictures: orderDrawings(study, context) },
    table({ caption: '', columns: figures(say.storageHead), rows: parts.stored }),
    list(parts.cautions, own.cautions),
  ];
}
