/**
 * The map file: which column of a till export is what, and which days and hours to fit.
 *
 * zod is the one source of its form; `compile-map.ts` turns it into what the reading needs.
 */
import * as z from 'zod';
import { group, list, named } from '../quantities/group.js';
import { clock, count } from '../quantities/numbers.js';
import { bad, good, kindOf, wrongKind } from '../quantities/parsed.js';
import { quantity, text } from '../quantities/quantity.js';
import { duration } from '../quantities/units.js';
import { readDate, weekdayNames } from './clock.js';

const column = text('the name of a column');

/** A day of the calendar as year-month-day; the result is days since 1970-01-01. */
const calendarDay = quantity<number>(
  'date',
  (input) => {
    const remedy = 'write a day as year-month-day, such as 2026-05-31';
    if (typeof input !== 'string')
      return wrongKind(`is ${kindOf(input)} where a date is needed`, remedy);
    const day = readDate(input.trim(), 'iso');
    return day === null ? bad('is not a day of the calendar', remedy) : good(day);
  },
  {
    type: 'string',
    pattern: '^\\d{4}-\\d{2}-\\d{2}$',
    examples: ['2026-05-31'],
    description: 'A day, year-month-day.',
  },
);

const columns = group(
  {
    date: column,
    time: column.optional().describe('Leave out when the date column holds the time as well.'),
    ticket: column
      .optional()
      .describe('Leave out when there is none: rows of the same moment are then one ticket.'),
    item: column,
    quantity: column.optional().describe('Leave out when every row is one piece.'),
  },
  'write { date: Date, time: Time, item: Item } with the names of the first row of the export',
);

const counts = group(
  {
    date: column,
    slot: column.describe('When the slot starts.'),
    every: duration.describe('How long a slot of the report is.'),
    parties: column.describe('Tickets of the slot with at least one drink.'),
    tickets: column
      .optional()
      .describe(
        'All tickets of the slot: shows whether a slot without drinks was quiet or closed.',
      ),
  },
  'write { date: day, slot: from, every: 15 min, parties: tickets } with the names of the first row of the report',
);

const week = z.union(
  [
    z.enum(['weekdays', 'weekends', 'any']),
    list(z.enum(weekdayNames), 'write [mon, tue]').min(
      1,
      'is empty; write the days, such as [mon, tue]',
    ),
  ],
  {
    error:
      'does not name days of the week; write weekdays, weekends, any, or a list such as [fri, sat]',
  },
);

const between = list(
  group({ from: calendarDay, to: calendarDay }, 'write { from: 2026-01-05, to: 2026-06-28 }'),
  'write [{ from: 2026-01-05, to: 2026-06-28 }]',
);

const kind = group(
  {
    week: week.optional().describe('These days of the week.'),
    dates: list(calendarDay, 'write the days, such as [2026-05-01, 2026-12-26]')
      .optional()
      .describe('These dates.'),
    between: between.optional().describe('These periods, both ends included.'),
  },
  'write { week: [wed] } or { dates: [2026-05-01, 2026-12-26] }',
);

const days = group(
  {
    week: week.describe('Days of the week that belong together.'),
    between: between.optional().describe('Only these periods, both ends included.'),
    except: list(calendarDay, 'write the days to leave out, such as [2026-12-24]')
      .default([])
      .describe('Holidays and odd days to leave out.'),
  },
  'write { week: weekdays }',
);

const drinkIds = z.union(
  [
    text('the id of a drink'),
    list(text('the id of a drink'), 'write [flat-white, latte]').min(
      1,
      'is empty; write the drinks, such as [flat-white, latte]',
    ),
  ],
  {
    error:
      'does not name a drink; write the id of a drink of the base scenario, or a list of them where the till does not tell them apart',
  },
);

/** The largest party of a scenario; a ticket with more drinks is an order to carry away. */
export const LARGEST_PARTY = 99;

/** The map file as written. */
export const tillMapSchema = group(
  {
    columns: columns.optional(),
    counts: counts.optional(),
    dates: z
      .enum(['iso', 'day-first', 'month-first'])
      .describe('Order in which the export writes dates; never guessed.'),
    separator: z.enum(['comma', 'semicolon', 'tab']).default('comma'),
    encoding: z.enum(['utf-8', 'windows-1252', 'utf-16']).default('utf-8'),
    drinks: z
      .record(z.string().min(1), drinkIds, {
        error:
          'is not a map from items to drinks; write one item per line, such as Hot chocolate: hot-chocolate',
      })
      .describe(
        'Item (or counted column) to the drink of the base scenario; * in an item stands for any letters.',
      ),
    ignored: list(text('an item'), 'write [Voucher, "Beans *"]')
      .default([])
      .describe('Items that are not drinks, although their names look like it.'),
    days,
    kinds: named(kind, 'write one kind of day per line, such as market: { week: [wed] }')
      .optional()
      .describe(
        'Kinds of day that may differ: each is tested against the others. Left out: weekends against weekdays.',
      ),
    partialDays: z
      .enum(['leave-out', 'keep'])
      .default('leave-out')
      .describe('Days with a long time without any ticket.'),
    hours: group({ from: clock, to: clock }, 'write { from: "08:00", to: "16:00" }').describe(
      'Opening hours to fit; they become those of the scenario.',
    ),
    every: duration.prefault('15 min').describe('Length of a slot of the fitted arrivals.'),
    largestParty: count('drinks on a ticket', 1)
      .default(LARGEST_PARTY)
      .describe('Tickets with more drinks are takeaway orders, not parties.'),
  },
  'write the map as columns: ..., dates: ..., drinks: ..., and so on',
);

/** A map that passed the schema: durations and times of day are milliseconds, dates are days since 1970-01-01. */
export type TillMapFile = z.output<typeof tillMapSchema>;
