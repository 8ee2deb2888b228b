/** Sheets of the workbook that follow the order: paper cups, cards and notes. */
import { inUnits } from './money.js';
import type { OrderSheet } from './order-sheet.js';
import { reorderCard } from './reorder-card.js';
import { head, moneyFormat, number, text, wrapped, type SheetCell } from './workbook-cells.js';

export function takeawayRows(sheet: OrderSheet): SheetCell[][] {
  const titles = [
    'Item',
    'Kind',
    'Mean week',
    'Of these, a house cup ran out',
    'Enough for, in the share of weeks asked for',
    'Pieces a sleeve',
    'Whole sleeves',
    `Cost a week, ${sheet.currency}`,
  ];
  return [
    titles.map(head),
    ...sheet.takeaway.map((line): SheetCell[] => [
      text(line.name),
      text(line.kind),
      number(line.aWeek, '#,##0.0'),
      number(line.asFallBackAWeek, '#,##0.0'),
      number(line.forAWeek),
      number(line.sleeve),
      number(line.sleevesAWeek),
      line.minorAWeek === null
        ? null
        : number(inUnits(line.minorAWeek, sheet.currency), moneyFormat(sheet.currency)),
    ]),
  ];
}

export function cardRows(sheet: OrderSheet): SheetCell[][] {
  const rows = sheet.lines.flatMap((line): SheetCell[][] => {
    const card = reorderCard(line, sheet);
    return [
      [text(card.title), text('Rule'), wrapped(card.rule)],
      ...card.rows.map(({ label, text: said }): SheetCell[] => [null, text(label), wrapped(said)]),
    ];
  });
  return [['Ware', 'What', 'How much, when'].map(head), ...rows];
}

export function noteRows(sheet: OrderSheet): SheetCell[][] {
  return [
    ['Kind', 'Note', 'Defers to'].map(head),
    ...sheet.warnings.map((warning): SheetCell[] => [
      text('Warning'),
      wrapped(warning.message),
      null,
    ]),
    ...sheet.cautions.map((caution): SheetCell[] => [
      text('Caution'),
      wrapped(caution.text),
      wrapped(caution.defersTo),
    ]),
  ];
}

/** Name of the sheet that says what the order was made from. */
export const MADE_FROM = 'Made from';
export type MadeLines = readonly (readonly [what: string, text: string])[];

/** The sheet that says what the order was made from; none where that is not known. */
export const madeSheets = (made: MadeLines): SheetCell[][][] =>
  made.length === 0 ? [] : [made.map(([what, said]) => [text(what), text(said)])];
