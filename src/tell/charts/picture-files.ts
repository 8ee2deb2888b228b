/** What a reader takes along of a picture: its figures as a table that a spreadsheet opens. Pure text. */
import { safeText } from '../../ordering/safe-text.js';
import type { Formats } from '../format.js';
import type { ChartTable } from './chart-table.js';

/** Digits with the marks of any place between them, a sign before, a % after: no formula can be made of these. */
const PLAIN_NUMBER = /^[+-]?\d[\d.,'’\s]*%?$/u;

/**
 * One field of a CSV file (RFC 4180): quoted where it must be; what a spreadsheet would read as a formula is made
 * text by an apostrophe, unless it is a plain number.
 */
export function safeCell(text: string): string {
  const safe = PLAIN_NUMBER.test(text) ? text : safeText(text);
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Decimals kept of a figure: more than any chart shows, and none that only a float's last bits make. */
const DECIMALS = 6;

/**
 * The table behind a chart as CSV (RFC 4180, CRLF after every line): figures with a decimal point and shares as
 * 0..1, so that they can be counted with; times of day as they are written; empty where not known.
 */
export function chartCsv({ columns, rows }: ChartTable, formats: Pick<Formats, 'clock'>): string {
  const figure = (value: number): string => String(Number(value.toFixed(DECIMALS)));
  const cells = rows.map((row) =>
    columns.map(({ as }, i) => {
      const value = row[i] ?? null;
      if (value === null) return '';
      if (typeof value === 'string') return value;
      return as === 'clock' ? formats.clock(value) : figure(value);
    }),
  );
  return [columns.map(({ title }) => title), ...cells]
    .map((line) => `${line.map(safeCell).join(',')}\r\n`)
    .join('');
}
