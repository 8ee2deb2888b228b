/**
 * Reading an export with one row an item: rows become tickets, tickets with a drink become parties.
 */
import { readDate, readTime, splitMoment } from './clock.js';
import type { NamedColumn } from './columns.js';
import { readWhole, widthFault } from './columns.js';
import type { TicketColumns, TillMap } from './compile-map.js';
import { itemReader } from './items.js';
import type { Row } from './rows.js';
import type { Counter } from './tally.js';

/**
 * Rows of one ticket need not follow one another (two tills may write in turn), but no more than so many
 * other tickets may begin between them: it bounds memory. Up to twice as many are held open.
 */
export const OPEN_TICKETS = 4096;

/** More of one item than this on one row is a slip of the hand. */
const MOST_ON_A_ROW = 500;

interface OpenTicket {
  readonly day: number;
  second: number;
  readonly byGroup: number[];
}

/** The columns an export of tickets needs, in the order `ticketReader` takes their places. */
export function ticketColumns(columns: TicketColumns): NamedColumn[] {
  return (['date', 'item', 'time', 'ticket', 'quantity'] as const).flatMap((role) => {
    const name = columns[role];
    return name === null ? [] : [{ name, path: ['columns', role] }];
  });
}

export interface RowReader {
  /** Take one row; a row that cannot be read is skipped, with its reason, in the counter. */
  readonly row: (row: Row) => void;
  /** Close what is still open. */
  readonly end: () => void;
}

export function ticketReader(
  map: TillMap,
  columns: TicketColumns,
  heading: readonly string[],
  places: readonly number[],
  counter: Counter,
): RowReader {
  const rest = [...places];
  const dateAt = rest.shift()!;
  const itemAt = rest.shift()!;
  const timeAt = columns.time === null ? null : rest.shift()!;
  const ticketAt = columns.ticket === null ? null : rest.shift()!;
  const quantityAt = columns.quantity === null ? null : rest.shift()!;
  const needed = Math.max(...places) + 1;
  const kindOf = itemReader(map.groups, map.ignored);
  counter.byMoment = ticketAt === null;
  const open = new Map<string, OpenTicket>();

  const close = (key: string, ticket: OpenTicket): void => {
    open.delete(key);
    counter.ticket(ticket.day, Math.floor(ticket.second / 60), ticket.byGroup);
  };

  const ticketOf = (key: string, day: number, second: number): OpenTicket => {
    const known = open.get(key);
    if (known) {
      known.second = Math.min(known.second, second);
      return known;
    }
    if (open.size >= 2 * OPEN_TICKETS) {
      // The oldest half at a time: one by one, a map walks over all that was taken out before.
      let left = OPEN_TICKETS;
      for (const [oldest, ticket] of open) {
        if (left-- === 0) break;
        close(oldest, ticket);
      }
    }
    const ticket = { day, second, byGroup: map.groups.map(() => 0) };
    open.set(key, ticket);
    return ticket;
  };

  const row = ({ line, fields }: Row): void => {
    const fault = widthFault(fields, heading, needed);
    if (fault !== null) return counter.skip(line, fault);
    const [dateText, timeInDate] = splitMoment(fields[dateAt]!.trim());
    const day = readDate(dateText, map.dates);
    if (day === null) return counter.skip(line, `no date (${map.dates})`, fields[dateAt]);
    const timeText = timeAt === null ? timeInDate : fields[timeAt]!.trim();
    const second = readTime(timeText);
    if (second === null) return counter.skip(line, 'no time of day', timeText);
    const item = fields[itemAt]!.trim();
    if (item === '') return counter.skip(line, 'no item');
    const id = ticketAt === null ? timeText : fields[ticketAt]!.trim();
    if (id === '') return counter.skip(line, 'no ticket number');
    const pieces = quantityAt === null ? 1 : readWhole(fields[quantityAt]!.trim());
    if (pieces === null)
      return counter.skip(line, 'quantity is not a whole number', fields[quantityAt!]);
    if (Math.abs(pieces) > MOST_ON_A_ROW)
      return counter.skip(line, `more than ${MOST_ON_A_ROW} of one item`, fields[quantityAt!]);

    counter.see(day, timeText, fields);
    const ticket = ticketOf(`${day} ${id}`, day, second);
    const kind = kindOf(item);
    if (kind === 'ignored') counter.ignore();
    else if (kind === 'other') counter.other(item);
    else ticket.byGroup[kind]! += pieces;
  };

  return { row, end: () => open.forEach((ticket, key) => close(key, ticket)) };
}
