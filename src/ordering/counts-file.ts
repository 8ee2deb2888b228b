/** Reads a stocktake: a CSV table with a row a ware. */
import { didYouMean } from '../quantities/nearest.js';
import { problem } from './problems.js';
import type { Fault, Outcome } from '../quantities/flaw.js';
import { readTable } from './table-file.js';

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
 * Reads the table. Columns `ware` and `counted` are needed, `broken`, `retired` and `delivered` may be there.
 *
 * @param known ids of the ware there is; absent: any will do here
 */
export function readCounts(text: string, known?: readonly string[]): Outcome<readonly Count[]> {
  const table = readTable(text, {
    what: 'a stocktake',
    columns: COLUMNS,
    needed: ['ware', 'counted'],
    rows: 'counts',
    row: 'a row for each ware',
  });
  if (!table.ok) return table;
  const problems: Fault[] = [];
  const seen = new Map<string, number>();
  const counts = table.value.map(({ row, cell }): Count => {
    const whole = (column: string): number | null => {
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
