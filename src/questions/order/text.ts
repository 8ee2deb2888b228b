/** The order and the stocktake for a terminal: one sentence, then tables that line up. */
import type { Stocktake } from '../../ordering/stocktake.js';
import type { OrderStudy } from './study.js';
import { cleanText } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, textTable, wrapText } from '../../tell/format.js';
import { orderParts, type OrderParts } from './parts.js';
import { english } from '../../tell/words.js';

const WIDTH = 100;
/** Columns of words rather than figures. */
const WORDS = [0, 5, 6, 12];

export function orderText(study: OrderStudy, context: ReportContext): string {
  const say = (context.words ?? english).order;
  const parts = orderParts(study, context);
  const head = (titles: readonly string[], words: readonly number[] = [0]) =>
    titles.map((title, at) => ({ title, right: !words.includes(at) }));
  const wrapped = (lines: readonly string[]): string[] =>
    lines.flatMap((line) => wrapText(line, WIDTH));
  const listed = (lines: readonly string[]): string[] =>
    lines.flatMap((line) => wrapText(`- ${line}`, WIDTH, '  '));
  const listUnder = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : [title, ...listed(lines)];
  const tableUnder = (
    title: string,
    titles: readonly string[],
    rows: OrderParts['rows'],
    notes: readonly string[] = [],
  ): string[] =>
    rows.length === 0 ? [] : [title, ...textTable(head(titles), rows, WIDTH), ...wrapped(notes)];
  const blocks: string[][] = [
    [parts.heading],
    wrapped([parts.sentence]),
    textTable(head(say.head, WORDS), [...parts.rows, null, parts.totals], 150),
    wrapped([say.notes]),
    wrapped(parts.consignments),
    listUnder(say.next, parts.nextSteps),
    listUnder(say.suppliers, parts.suppliers),
    tableUnder(say.takeaway, say.takeawayHead, parts.takeaway),
    listUnder(say.saucers, parts.saucers),
    tableUnder(say.storage, say.storageHead, parts.stored, parts.storing),
    listUnder(say.warnings, parts.warnings),
    listed(parts.cautions),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

export function stocktakeText(stocktake: Stocktake, context: ReportContext): string {
  const say = (context.words ?? english).order;
  const formats = formatsFor(context);
  const nameOf = (id: string): string =>
    cleanText(context.ware.find((ware) => ware.id === id)?.name ?? id);
  const rate = (value: number): string => formats.decimal(value, 2);
  const table = textTable(
    say.stocktakeHead.map((title, at) => ({ title, right: at > 0 })),
    stocktake.lines.map((line) => [
      nameOf(line.ware),
      formats.count(line.expected),
      formats.count(line.counted),
      formats.count(line.retired),
      formats.count(line.missing),
      line.seen === null
        ? say.none
        : say.seen(rate(line.seen.rate), rate(line.seen.low), rate(line.seen.high)),
      line.breakage === null
        ? say.none
        : say.update(
            rate(line.breakage.prior.mean),
            say.seen(
              rate(line.breakage.posterior.mean),
              rate(line.breakage.posterior.low),
              rate(line.breakage.posterior.high),
            ),
          ),
      line.policy.reorderPoint === null ? say.none : formats.count(line.policy.reorderPoint),
      formats.count(line.topUp),
    ]),
    130,
  );
  return `${[say.stocktake(stocktake.days), '', ...table, '', ...wrapText(say.updateNote, WIDTH), ...(stocktake.uncounted.length === 0 ? [] : [say.uncounted(stocktake.uncounted.map(nameOf).join(', '))])].join('\n')}\n`;
}
