/** Reads a stocktake: a CSV table with a row a ware. */
import { parse, CsvError } from 'csv-parse/sync';
import { didYouMean } from '../quantities/nearest.js';
import { problem, type Outcome, type Problem } from './problems.js';

/** One row of a stocktake. */
export interface Count {
  readonly ware: string;
  /** Pieces found fit for use. */
  readonly counted: number;
  /** Of the pieces gone since the last count, those known to have broken or chipped; null: not given. */
  readonly broken: number | null;
  /** Pieces taken out as stained or worn since the last count; null: not given. */
  readonly retired: number | null;
  /** Pieces delivered since the last count; null: not given. */
  readonly delivered: number | null;
  /** Line of the file, from 1, for messages. */
  readonly row: number;
}

const COLUMNS = ['ware', 'counted', 'broken', 'retired', 'delivered'] as const;

/**
 * Reads the table. Columns `ware` and `counted` are needed, `broken`, `retired` and `delivered` may be
 * there; any other column is refused, so that a misspelt one is not dropped in silence. Cells are parted by
 * commas, semicolons or tabs, whichever the first line has.
 *
 * @param known ids of the ware there is; absent: any will do here
 */
export function readCounts(text: string, known?: readonly string[]): Outcome<readonly Count[]> {
  let records: { record: string[]; info: { lines: number } }[];
  try {
    // With `info` each record comes with its line; the package's types leave that out.
    records = parse(text, {
      bom: true,
      delimiter: separatorOf(text),
      trim: true,
      skip_empty_lines: true,
      relax_column_count: true,
      info: true,
    }) as unknown as typeof records;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return {
      ok: false,
      problems: [
        problem(['row', error.lines as number], '', 'is not a row of a table', 'check its quotes'),
      ],
    };
  }
  const rows = records.map(({ record }) => record);
  const header = (rows[0] ?? []).map((cell) => cell.toLowerCase());
  const problems: Problem[] = [];
  for (const needed of ['ware', 'counted']) {
    if (!header.includes(needed))
      problems.push(
        problem(
          ['row', 1],
          header.join(','),
          `has no column "${needed}"`,
          'start the file with: ware,counted,broken,retired,delivered',
        ),
      );
  }
  header.forEach((name, index) => {
    if (!COLUMNS.some((column) => column === name))
      problems.push(
        problem(
          ['row', 1, 'column', index + 1],
          name,
          'is not a column of a stocktake',
          `name it one of ${COLUMNS.join(', ')}, or leave it out`,
        ),
      );
    else if (header.indexOf(name) !== index)
      problems.push(
        problem(['row', 1, 'column', index + 1], name, 'is given twice', 'keep one of them'),
      );
  });
  if (problems.length === 0 && rows.length < 2)
    problems.push(
      problem(['row', 2], '', 'is missing: there are no counts', 'write a row for each ware'),
    );
  if (problems.length > 0) return { ok: false, problems };

  const seen = new Map<string, number>();
  const counts = rows.slice(1).map((cells, index): Count => {
    const row = records[index + 1]!.info.lines;
    const cell = (column: (typeof COLUMNS)[number]): string =>
      header.includes(column) ? (cells[header.indexOf(column)] ?? '') : '';
    const whole = (column: (typeof COLUMNS)[number]): number | null => {
      const written = cell(column);
      if (written === '') return null;
      if (/^\d{1,9}$/.test(written)) return Number(written);
      problems.push(
        problem(
          ['row', row, column],
          written,
          'is not a count of pieces',
          'write a whole number, 0 or more',
        ),
      );
      return null;
    };
    const ware = cell('ware');
    if (cells.length > header.length)
      problems.push(
        problem(
          ['row', row],
          cells.join(','),
          'has more cells than the first row',
          'put text that contains a comma in quotes',
        ),
      );
    if (ware === '')
      problems.push(
        problem(['row', row, 'ware'], ware, 'is not the id of a ware', 'write the id of a ware'),
      );
    else if (seen.has(ware))
      problems.push(
        problem(
          ['row', row, 'ware'],
          ware,
          `was counted in row ${seen.get(ware)} already`,
          'add the counts into one row',
        ),
      );
    else {
      seen.set(ware, row);
      if (known !== undefined && !known.includes(ware))
        problems.push(
          problem(
            ['row', row, 'ware'],
            ware,
            'is not a ware of this scenario',
            didYouMean(ware, known),
          ),
        );
    }
    if (cell('counted') === '')
      problems.push(
        problem(
          ['row', row, 'counted'],
          '',
          'is not a count',
          'write how many pieces were found, 0 if none',
        ),
      );
    return {
      ware,
      counted: whole('counted') ?? 0,
      broken: whole('broken'),
      retired: whole('retired'),
      delivered: whole('delivered'),
      row,
    };
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: counts };
}

/** What parts the cells of the first line: a comma unless it has none and another sign. */
function separatorOf(text: string): string {
  const first = text.slice(0, /[\r\n]|$/.exec(text)!.index);
  return first.includes(',') ? ',' : ([';', '\t'].find((sign) => first.includes(sign)) ?? ',');
}
