/**
 * Reading a sales report that is already counted by day and slot.
 */
import { clock, isoDate, readDate, readTime, splitMoment } from './clock.js';
import type { NamedColumn } from './columns.js';
import { readWhole, widthFault } from './columns.js';
import type { CountedColumns, TillMap } from './compile-map.js';
import type { Row } from './rows.js';
import type { Counter } from './tally.js';
import type { RowReader } from './tickets.js';

/** The columns a counted report needs, in the order `countedReader` takes their places. */
export function countedColumns(map: TillMap, columns: CountedColumns): NamedColumn[] {
  const named: NamedColumn[] = [
    { name: columns.date, path: ['counts', 'date'] },
    { name: columns.slot, path: ['counts', 'slot'] },
    { name: columns.parties, path: ['counts', 'parties'] },
    ...map.groups.flatMap((group) => group.items.map((name) => ({ name, path: ['drinks', name] }))),
  ];
  return columns.tickets === null
    ? named
    : [...named, { name: columns.tickets, path: ['counts', 'tickets'] }];
}

export function countedReader(
  map: TillMap,
  columns: CountedColumns,
  heading: readonly string[],
  places: readonly number[],
  counter: Counter,
): RowReader {
  const [dateAt, slotAt, partiesAt] = places as readonly [number, number, number];
  const groupOfColumn = map.groups.flatMap((group, at) => group.items.map(() => at));
  const drinksAt = places.slice(3, 3 + groupOfColumn.length);
  const ticketsAt = columns.tickets === null ? partiesAt : places[places.length - 1]!;
  const needed = Math.max(...places) + 1;
  // One entry a day and slot of the report, as there is one row for each.
  const counted = new Set<number>();

  const row = ({ line, fields }: Row): void => {
    const fault = widthFault(fields, heading, needed);
    if (fault !== null) return counter.skip(line, fault);
    const [dateText, timeInDate] = splitMoment(fields[dateAt]!.trim());
    const day = readDate(dateText, map.dates);
    if (day === null) return counter.skip(line, `no date (${map.dates})`, fields[dateAt]);
    const timeText = slotAt === dateAt ? timeInDate : fields[slotAt]!.trim();
    const second = readTime(timeText);
    if (second === null) return counter.skip(line, 'no time of day', timeText);
    const minute = second / 60;
    if (minute % columns.everyMinutes !== 0)
      return counter.skip(line, `not the start of a slot of ${columns.everyMinutes} min`, timeText);

    const parties = readWhole(fields[partiesAt]!.trim());
    const tickets = readWhole(fields[ticketsAt]!.trim());
    const drinks = drinksAt.map((at) => readWhole(fields[at]!.trim()));
    const counts = [parties, tickets, ...drinks];
    if (counts.some((count) => count === null || count < 0))
      return counter.skip(line, 'a count is not a whole number of 0 or more');
    const byGroup = map.groups.map(() => 0);
    drinks.forEach((count, column) => {
      byGroup[groupOfColumn[column]!]! += count!;
    });
    const drunk = byGroup.reduce((sum, count) => sum + count, 0);
    if (drunk < parties! || (parties === 0 && drunk > 0))
      return counter.skip(
        line,
        'drinks do not match the tickets that hold one',
        `${parties} tickets, ${drunk} drinks`,
      );
    if (tickets! < parties!)
      return counter.skip(
        line,
        'more tickets with a drink than tickets',
        `${parties} of ${tickets}`,
      );
    const key = day * 1440 + minute;
    if (counted.has(key))
      return counter.skip(
        line,
        'day and slot counted twice (the first is kept)',
        `${isoDate(day)} ${clock(minute)}`,
      );
    counted.add(key);

    counter.see(day, timeText, fields);
    counter.add(day, minute, tickets!, parties!, byGroup);
  };

  return { row, end: () => undefined };
}
