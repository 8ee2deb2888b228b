/** The sheet as a table to fill in with a spreadsheet (CSV, RFC 4180); `read-sheet.ts` reads it back. */
import {
  AFTER,
  BEFORE,
  clockText,
  columnsOf,
  ROWS,
  SLOT_MINUTES,
  type PartId,
} from '../../measuring/sheet.js';
import { safeCell } from '../../tell/charts/picture-files.js';
import type { SheetFacts } from './facts.js';

/** Rows after closing, until the last guests have left. */
export const QUARTERS_AFTER = 4;

export const quarterHours = ({ fromMinute, toMinute }: SheetFacts): number[] =>
  Array.from(
    { length: Math.ceil((toMinute - fromMinute) / SLOT_MINUTES) + QUARTERS_AFTER },
    (_, at) => fromMinute + at * SLOT_MINUTES,
  );

/** Lines before the first part. */
export const headLines = (house: string): [name: string, value: string][] => [
  ['sheet', 'cuptide measure'],
  ['house', house],
  ['date', ''],
];

/** The cells of the sheet, row by row; a part begins with its name alone. */
export function sheetLines(facts: SheetFacts): string[][] {
  const lines: string[][] = headLines(facts.name);
  for (const part of facts.parts) {
    const columns = columnsOf(part, facts.sizes);
    const empty = (first = ''): string[] => [first, ...columns.slice(1).map(() => '')];
    lines.push([], [part], columns, ...rowsOf(part, facts).map(empty));
  }
  return lines;
}

export const sheetCsv = (facts: SheetFacts): string =>
  sheetLines(facts)
    .map((line) => `${line.map(safeCell).join(',')}\r\n`)
    .join('');

/** First cells of the rows of a part; '' where somebody writes it. */
export function rowsOf(part: PartId, facts: SheetFacts): string[] {
  switch (part) {
    case 'tally':
      return [BEFORE, ...quarterHours(facts).map(clockText), AFTER];
    case 'ware':
      return facts.ware.map(({ id }) => id);
    case 'loads':
      return Array.from({ length: ROWS.loads }, () => '1');
    default:
      return Array.from({ length: ROWS[part] }, () => '');
  }
}
