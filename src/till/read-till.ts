/**
 * Reading a till export as it streams: rows in, counts by day and slot out.
 */
import { findColumns } from './columns.js';
import type { TillMap } from './compile-map.js';
import { countedColumns, countedReader } from './counted.js';
import type { Outcome, TillFlaw } from './flaw.js';
import { ReadingEnds, fail, succeed } from './flaw.js';
import { readRows } from './rows.js';
import type { Tally } from './tally.js';
import { Counter } from './tally.js';
import type { TillSource } from './text.js';
import type { RowReader } from './tickets.js';
import { ticketColumns, ticketReader } from './tickets.js';

/** With more of the rows than this unreadable, the map is wrong rather than the rows. */
const MOST_SKIPPED = 0.1;

function tooManySkipped(tally: Tally, skipped: number): TillFlaw {
  const worst = tally.skipped[0]!;
  const example = worst.example === '' ? '' : `, such as "${worst.example}"`;
  return {
    about: 'export',
    path: [],
    value: undefined,
    rule: `has ${skipped} rows of ${tally.rows} that cannot be read, mostly for this: ${worst.reason}${example}`,
    remedy: worst.reason.startsWith('no date')
      ? 'state in the map, under dates, the order in which the export writes them (iso, day-first, month-first)'
      : 'check the columns of the map against the export',
    line: worst.lines[0]!,
  };
}

/**
 * Read an export by its map. Rows that cannot be read are skipped, counted and reported with their lines.
 *
 * Refused, with every reason: no such columns, another encoding, an unclosed quotation mark, no rows, or
 * more than a tenth of the rows unreadable.
 */
export async function readTill(source: TillSource, map: TillMap): Promise<Outcome<Tally>> {
  const { columns } = map;
  const counter = new Counter(columns.form, map, map.groups.length, map.largestParty);
  let heading: readonly string[] | null = null;
  let reader: RowReader | null = null;
  try {
    for await (const row of readRows(source, map.separator, map.encoding)) {
      if (heading === null || reader === null) {
        heading = row.fields;
        const named =
          columns.form === 'tickets' ? ticketColumns(columns) : countedColumns(map, columns);
        const { places, flaws } = findColumns(heading, named, map.separator);
        if (flaws.length > 0) return fail(...flaws);
        reader =
          columns.form === 'tickets'
            ? ticketReader(map, columns, heading, places, counter)
            : countedReader(map, columns, heading, places, counter);
        continue;
      }
      counter.rows += 1;
      const { fields } = row;
      if (fields.length === heading.length && fields.every((field, at) => field === heading![at]))
        counter.skip(row.line, 'the first row again');
      else reader.row(row);
    }
  } catch (error) {
    if (error instanceof ReadingEnds) return fail(error.flaw);
    throw error;
  }
  reader?.end();
  const tally = counter.tally();
  if (tally.rows === 0) {
    return fail({
      about: 'export',
      path: [],
      value: undefined,
      rule: heading === null ? 'is empty' : 'has a heading but no rows',
      remedy: 'export the sales again, one row an item or counted by day and slot',
      line: 1,
    });
  }
  if (counter.skippedRows > MOST_SKIPPED * tally.rows)
    return fail(tooManySkipped(tally, counter.skippedRows));
  return succeed(tally);
}
