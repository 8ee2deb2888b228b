/** Reads a CSV table with named columns: a stocktake, the vessels of a collection. */
import { csvRows, isEmptyRow } from '../quantities/csv-rows.js';
import { problem } from './problems.js';
import type { Fault, Outcome } from '../quantities/flaw.js';

export interface TableKind {
  /** What the table is of, as in "a stocktake". */
  readonly what: string;
  /** Every column there may be; the first are those of the example. */
  readonly columns: readonly string[];
  readonly needed: readonly string[];
  /** What rows are, as in "counts". */
  readonly rows: string;
  /** What a row is for, as in "a row for each ware". */
  readonly row: string;
}

export interface TableRow {
  /** Line of the file, from 1, for messages. */
  readonly row: number;
  /** The text of a cell; '' where the column or the cell is missing. */
  readonly cell: (column: string) => string;
}

/**
 * The rows of a table, or everything that is wrong with it. Other columns are refused, so that a misspelt one is
 * not dropped in silence. Cells are parted by commas, semicolons or tabs, whichever the first line has.
 */
export function readTable(text: string, kind: TableKind): Outcome<readonly TableRow[]> {
  const read = csvRows(text);
  if (!read.ok) {
    const { line, rule, remedy } = read.problem;
    return { ok: false, problems: [problem(['row', line], '', rule, remedy)] };
  }
  const [first, ...rows] = read.value.filter((row) => !isEmptyRow(row));
  const header = (first?.cells ?? []).map((cell) => cell.toLowerCase());
  const problems: Fault[] = [];
  for (const needed of kind.needed) {
    if (!header.includes(needed))
      problems.push(
        problem(
          ['row', 1],
          header.join(','),
          `has no column "${needed}"`,
          `start the file with: ${kind.columns.join(',')}`,
        ),
      );
  }
  header.forEach((name, index) => {
    if (!kind.columns.includes(name))
      problems.push(
        problem(
          ['row', 1, 'column', index + 1],
          name,
          `is not a column of ${kind.what}`,
          `name it one of ${kind.columns.join(', ')}, or leave it out`,
        ),
      );
    else if (header.indexOf(name) !== index)
      problems.push(
        problem(['row', 1, 'column', index + 1], name, 'is given twice', 'keep one of them'),
      );
  });
  if (problems.length === 0 && rows.length === 0)
    problems.push(
      problem(['row', 2], '', `is missing: there are no ${kind.rows}`, `write ${kind.row}`),
    );
  if (problems.length > 0) return { ok: false, problems };

  const found = rows.map(({ cells, line: row }): TableRow => {
    if (cells.length > header.length)
      problems.push(
        problem(
          ['row', row],
          cells.join(','),
          'has more cells than the first row',
          'put text that contains a comma in quotes',
        ),
      );
    return {
      row,
      cell: (column) => (header.includes(column) ? (cells[header.indexOf(column)] ?? '') : ''),
    };
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: found };
}
