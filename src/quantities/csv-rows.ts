/** The rows of a table written as CSV, whole in memory: the one reader of tables that people write. Tills' long exports come in a stream (`till/rows.ts`). */
import { CsvError, parse } from 'csv-parse/sync';

export interface CsvRow {
  /** Without the spaces around them. */
  readonly cells: readonly string[];
  /** Line of the file, from 1. */
  readonly line: number;
}

/** Why the text is no table, and on which line. */
export interface CsvMisfit {
  readonly line: number;
  readonly rule: string;
  readonly remedy: string;
}

/** @param separator what parts the cells; by default what the first line has. Empty lines are rows without text. */
export function csvRows(
  text: string,
  separator = separatorOf(text),
):
  | { readonly ok: true; readonly value: readonly CsvRow[] }
  | { readonly ok: false; readonly problem: CsvMisfit } {
  try {
    // With `info` each record comes with its line; the package's types leave that out.
    const records = parse(evenLines(text), {
      bom: true,
      delimiter: separator,
      trim: true,
      relax_column_count: true,
      info: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return {
      ok: true,
      value: records.map(({ record, info }) => ({ cells: record, line: info.lines })),
    };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = Number(error.lines ?? 1);
    return {
      ok: false,
      problem: { line, rule: 'is not a row of a table', remedy: 'check its quotes' },
    };
  }
}

/** Whether a line of the file has nothing on it. */
export const isEmptyRow = ({ cells }: CsvRow): boolean => cells.length === 1 && cells[0] === '';

/**
 * A text whose lines all end alike: a table put together from two programs has several kinds of ends, and the parser,
 * which goes by the first, then counts lines wrongly.
 */
const evenLines = (text: string): string => text.replace(/\r\n?/g, '\n');

/** What parts the cells of the first line: a comma unless it has none and another sign. */
function separatorOf(text: string): string {
  const first = text.slice(0, /[\r\n]|$/.exec(text)!.index);
  return first.includes(',') ? ',' : ([';', '\t'].find((sign) => first.includes(sign)) ?? ',');
}
