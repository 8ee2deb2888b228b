/**
 * A table in fixed-width type, at most so many columns wide. Words wrap within their column; where that is not
 * enough, spare columns go; where that is not enough either, each row becomes a small list.
 */
import { withColumns, type TableBlock } from './block.js';
import { cleanText, columnsOf } from './clean-text.js';
import { wrapText } from './format.js';

const GAP = 2;
/** Narrowest a column of words may get before columns are left out. */
const LEAST_WORDS = 10;

/** Lines of the table, none wider than `width` (at least 20). */
export function fitTable(given: TableBlock, width: number): string[] {
  const clean: TableBlock = {
    ...given,
    rows: given.rows.map((row) => row.map(cleanText)),
    ...(given.totals === undefined ? {} : { totals: given.totals.map(cleanText) }),
  };
  for (let block = clean; ;) {
    const widths = widthsOf(block, width);
    if (widths !== null) return [...drawn(block, widths), ...leftOut(clean, block, width)];
    const spare = block.columns.findLastIndex((column) => column.spare === true);
    // The first column names the rows: it stays.
    if (spare <= 0) return stacked(clean, width);
    block = withColumns(
      block,
      block.columns.flatMap((_, at) => (at === spare ? [] : [at])),
    );
  }
}

function leftOut(whole: TableBlock, shown: TableBlock, width: number): string[] {
  const titles = whole.columns
    .filter((column) => !shown.columns.includes(column))
    .map(({ title }) => title.replaceAll('\n', ' ').toLowerCase());
  return titles.length === 0
    ? []
    : wrapText(`Left out at this width: ${titles.join(', ')}.`, width);
}

const longestWord = (text: string): number => Math.max(...text.split(/[ \n]/).map(columnsOf));

/** Width of each column, or null where they cannot fit. */
function widthsOf({ columns, rows, totals }: TableBlock, width: number): number[] | null {
  const all = totals === undefined ? rows : [...rows, totals];
  const cells = (at: number): string[] => all.map((row) => row[at] ?? '');
  const widest = columns.map((_, at) => Math.max(0, ...cells(at).map(columnsOf)));
  const wanted = columns.map(({ title }, at) =>
    Math.max(widest[at]!, ...title.split('\n').map(columnsOf)),
  );
  const least = columns.map(({ title, as }, at) =>
    as === 'figures'
      ? Math.max(widest[at]!, longestWord(title))
      : Math.min(wanted[at]!, Math.max(LEAST_WORDS, ...[title, ...cells(at)].map(longestWord))),
  );
  const room = width - GAP * (columns.length - 1);
  const sum = (parts: readonly number[]): number => parts.reduce((a, b) => a + b, 0);
  if (sum(least) > room) return null;
  // The widest column gives way first: long remarks wrap, short names stay whole.
  const widths = [...wanted];
  while (sum(widths) > room) {
    let widest = -1;
    widths.forEach((one, at) => {
      if (one > least[at]! && (widest === -1 || one > widths[widest]!)) widest = at;
    });
    widths[widest]! -= 1;
  }
  return widths;
}

function drawn({ columns, rows, totals }: TableBlock, widths: readonly number[]): string[] {
  const pad = (text: string, at: number): string => {
    const space = ' '.repeat(Math.max(0, widths[at]! - columnsOf(text)));
    return columns[at]!.as === 'figures' ? space + text : text + space;
  };
  const line = (cells: readonly string[]): string =>
    columns
      .map((_, at) => pad(cells[at] ?? '', at))
      .join(' '.repeat(GAP))
      .trimEnd();
  const wrapped = (cells: readonly string[], down: boolean): string[] => {
    const parts = columns.map((_, at) =>
      (cells[at] ?? '').split('\n').flatMap((text) => wrapText(text, widths[at]!)),
    );
    const high = Math.max(...parts.map((part) => part.length));
    return Array.from({ length: high }, (_, n) =>
      line(parts.map((part) => part[down ? n - high + part.length : n] ?? '')),
    );
  };
  const rule = '-'.repeat(widths.reduce((a, b) => a + b, GAP * (widths.length - 1)));
  return [
    ...wrapped(
      columns.map(({ title }) => title),
      true,
    ),
    rule,
    ...rows.flatMap((row) => wrapped(row, false)),
    ...(totals === undefined ? [] : [rule, ...wrapped(totals, false)]),
  ];
}

/** Each row as its head and a line a column. */
function stacked({ columns, rows, totals }: TableBlock, width: number): string[] {
  const all = totals === undefined ? rows : [...rows, totals];
  return all.flatMap(([head = '', ...rest]) => [
    ...wrapText(head, width),
    ...rest.flatMap((text, at) =>
      text === ''
        ? []
        : wrapText(`${columns[at + 1]!.title.replaceAll('\n', ' ')}: ${text}`, width - 2, '  ').map(
            (line) => `  ${line}`,
          ),
    ),
  ]);
}
