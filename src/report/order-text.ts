/** The order and the stocktake for a terminal: one sentence, then tables that line up. */
import { formatMoney } from '../ordering/money.js';
import { nextStepSentence } from '../ordering/landed.js';
import { repeatWords } from '../ordering/order-sheet-csv.js';
import { poolingSentence } from '../ordering/saucers.js';
import type { Stocktake } from '../ordering/stocktake.js';
import type { OrderStudy } from '../study/order-study.js';
import { cleanText } from './clean-text.js';
import type { ReportContext } from './context.js';
import { formatsFor, textTable, wrapText } from './format.js';
import { english } from './words.js';

const WIDTH = 100;

export function orderText({ sheet, saucers, pools, storage, fetching, unquoted }: OrderStudy, context: ReportContext): string {
  const words = context.words ?? english;
  const say = words.order;
  const formats = formatsFor(context);
  const money = (minor: number | null): string => (minor === null ? say.none : formatMoney(minor, sheet.currency, sheet.locale ?? undefined));
  const { totals } = sheet;
  const sentence = unquoted
    ? say.sentenceUnquoted(formats.count(sheet.lines.reduce((sum, { needed }) => sum + needed, 0)))
    : say.sentence(formats.count(totals.pieces), money(totals.totalMinor), formats.percent(sheet.confidence, 0), formats.count(sheet.reviewDays));
  const table = textTable(
    say.head.map((title, at) => ({ title, right: ![0, 5, 6, 12].includes(at) })),
    [
      ...sheet.lines.map((line) => [
        cleanText(line.name),
        formats.count(line.par),
        formats.count(line.hold),
        formats.count(unquoted ? line.needed : line.pieces),
        line.cartons === null ? say.none : `${line.cartons} × ${line.cartonPieces}`,
        line.supplierName === null ? say.none : cleanText(line.supplierName),
        repeatWords(line.repeat) || say.none,
        money(line.goodsMinor),
        money(line.freightMinor),
        money(line.taxMinor),
        money(line.landedPerPieceMinor),
        line.reorderPoint === null ? say.none : formats.count(line.reorderPoint),
        line.nextOrder?.expected ?? say.none,
      ]),
      null,
      [say.total, '', '', formats.count(unquoted ? sheet.lines.reduce((sum, { needed }) => sum + needed, 0) : totals.pieces), formats.count(totals.cartons), '', '', money(totals.goodsMinor), money(totals.freightMinor), money(totals.taxMinor), '', '', ''],
    ],
    150,
  );
  const nameOf = (id: string): string => cleanText(context.ware.find((ware) => ware.id === id)?.name ?? id);
  const parts: string[][] = [
    [say.heading(cleanText(sheet.title), sheet.date)],
    wrapText(sentence, WIDTH),
    table,
    wrapText(say.notes, WIDTH),
    sheet.consignments.flatMap((one) =>
      wrapText(say.consignment(cleanText(one.name), one.cartons, one.massG === null ? '' : ` of ${formats.decimal(one.massG / 1000)} kg`, money(one.freightMinor), cleanText(one.freightStep), money(one.totalMinor), one.delivery), WIDTH),
    ),
    listUnder(say.next, sheet.consignments.flatMap((one) => one.nextSteps.map((step) => nextStepSentence(step, money)))),
    listUnder(
      say.suppliers,
      sheet.suppliers.map((one) => (one.alone === null ? say.missing(cleanText(one.name), one.missing.map(nameOf).join(', ')) : say.alone(cleanText(one.name), money(one.alone.openingMinor), money(one.alone.totalMinor)))),
    ),
    sheet.takeaway.length === 0
      ? []
      : [
          say.takeaway,
          ...textTable(
            say.takeawayHead.map((title, at) => ({ title, right: at > 0 })),
            sheet.takeaway.map((line) => [cleanText(line.name), formats.decimal(line.aWeek), formats.decimal(line.asFallBackAWeek), formats.count(line.sleevesAWeek), money(line.minorAWeek)]),
            WIDTH,
          ),
        ],
    listUnder(say.saucers, [
      ...saucers.pairs.map(({ cup, saucer, reason, clearanceMm }) => say.fit(nameOf(cup), nameOf(saucer), reason, clearanceMm === null ? '' : ` (${formats.decimal(clearanceMm)} mm of play)`)),
      ...pools.map(({ saucer, gain }) => say.pool(nameOf(saucer), poolingSentence(gain))),
      ...saucers.orphanCups.map((cup) => say.orphanCup(nameOf(cup))),
      ...saucers.orphanSaucers.map((saucer) => say.orphanSaucer(nameOf(saucer))),
    ]),
    storage === null
      ? []
      : [
          say.storage,
          ...textTable(
            say.storageHead.map((title, at) => ({ title, right: at > 0 })),
            storage.lines.map((line) => [cleanText(line.name), formats.count(line.onTop), formats.count(line.inReserve), line.trigger === null ? say.none : formats.count(line.trigger)]),
            WIDTH,
          ),
          ...(fetching === null ? [] : wrapText(say.fetching(formats.decimal(fetching.trips), formats.decimal(fetching.waits), formats.percent(fetching.safe)), WIDTH)),
          ...[...storage.homeless.map(({ ware, pieces }) => say.homeless(nameOf(ware), pieces)), ...storage.remedies].flatMap((line) => wrapText(line, WIDTH)),
        ],
    listUnder(say.warnings, [...sheet.warnings, ...(storage?.warnings ?? [])].map(({ message }) => message)),
    sheet.cautions.flatMap(({ text, defersTo }) => wrapText(`- ${text} (${words.cautions.defers} ${defersTo}.)`, WIDTH, '  ')),
  ];
  return `${parts.filter((part) => part.length > 0).map((part) => part.join('\n')).join('\n\n')}\n`;
}

const listUnder = (title: string, lines: readonly string[]): string[] => (lines.length === 0 ? [] : [title, ...lines.flatMap((line) => wrapText(`- ${cleanText(line)}`, WIDTH, '  '))]);

export function stocktakeText(stocktake: Stocktake, context: ReportContext): string {
  const say = (context.words ?? english).order;
  const formats = formatsFor(context);
  const nameOf = (id: string): string => cleanText(context.ware.find((ware) => ware.id === id)?.name ?? id);
  const rate = (value: number): string => formats.decimal(value, 2);
  const table = textTable(
    say.stocktakeHead.map((title, at) => ({ title, right: at > 0 })),
    stocktake.lines.map((line) => [
      nameOf(line.ware),
      formats.count(line.expected),
      formats.count(line.counted),
      formats.count(line.retired),
      formats.count(line.missing),
      line.seen === null ? say.none : say.seen(rate(line.seen.rate), rate(line.seen.low), rate(line.seen.high)),
      line.breakage === null ? say.none : say.update(rate(line.breakage.prior.mean), say.seen(rate(line.breakage.posterior.mean), rate(line.breakage.posterior.low), rate(line.breakage.posterior.high))),
      line.policy.reorderPoint === null ? say.none : formats.count(line.policy.reorderPoint),
      formats.count(line.topUp),
    ]),
    130,
  );
  return `${[say.stocktake(stocktake.days), '', ...table, '', ...wrapText(say.updateNote, WIDTH), ...(stocktake.uncounted.length === 0 ? [] : [say.uncounted(stocktake.uncounted.map(nameOf).join(', '))])].join('\n')}\n`;
}
