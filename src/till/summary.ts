/**
 * A fit in words and tables, for people.
 */
import { clock } from './clock.js';
import type { TillFit } from './fit-till.js';
import type { Goodness } from './goodness.js';

type Cell = string | number;

/** Columns that line up: the first to the left, all others to the right; the last to the left if it is prose. */
function table(rows: readonly (readonly Cell[])[], proseLast = false): string[] {
  const cells = rows.map((row) =>
    row.map((cell) => (typeof cell === 'number' ? cell.toLocaleString('en-GB') : cell)),
  );
  const width = (column: number): number =>
    Math.max(...cells.map((row) => row[column]?.length ?? 0));
  return cells.map((row) =>
    `  ${row.map((cell, at) => (at === 0 || (proseLast && at === row.length - 1 && at > 1) ? cell.padEnd(width(at)) : cell.padStart(width(at)))).join('  ')}`.trimEnd(),
  );
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const fixed = (value: number, digits: number): string => value.toFixed(digits);

/** A chance, never printed as 0. */
function chance(p: number): string {
  return p < 0.0001 ? 'p below 0.0001' : `p = ${p.toFixed(p < 0.01 ? 4 : 2)}`;
}

function plural(count: number, one: string, many: string): string {
  return `${count.toLocaleString('en-GB')} ${count === 1 ? one : many}`;
}

function readPart({ reading }: TillFit): string[] {
  const skipped = reading.skipped.map(({ reason, rows, lines, example }) => {
    const more = rows > lines.length ? ', …' : '';
    return [
      `  ${reason}`,
      rows,
      `line${lines.length > 1 ? 's' : ''} ${lines.join(', ')}${more}${example === '' ? '' : ` (first: "${example}")`}`,
    ];
  });
  const rows: Cell[][] = [
    ['rows', reading.rows, ''],
    ['skipped', reading.skipped.reduce((sum, entry) => sum + entry.rows, 0), ''],
    ...skipped,
    ...(reading.ignoredRows > 0 ? [['ignored items', reading.ignoredRows, '']] : []),
    ['tickets', reading.tickets, `on ${plural(reading.daysInExport, 'day', 'days')}`],
    ['with a drink', reading.parties, percent(reading.parties / reading.tickets)],
    ['drinks on them', reading.drinks, `${fixed(reading.drinks / reading.parties, 3)} each`],
    ['with a drink, out of hours', reading.partiesOutsideHours, ''],
  ];
  const notes = [
    ...(reading.tooLarge > 0
      ? [
          `  ${plural(reading.tooLarge, 'ticket holds', 'tickets hold')} more drinks than the largest party: taken as orders to carry away, left out.`,
        ]
      : []),
    ...(reading.repeatedRows > 0
      ? [
          `  ${plural(reading.repeatedRows, 'row repeats', 'rows repeat')} the row before: counted, as the same item twice on a ticket is two.`,
        ]
      : []),
    ...(reading.dayReturns > 0
      ? [
          `  The rows came back to an earlier day ${plural(reading.dayReturns, 'time', 'times')}: right for several tills in one file, wrong for parts exported twice or rows out of order.`,
        ]
      : []),
    ...(reading.minutesMerged
      ? ['  Without ticket numbers and seconds, all tickets of one minute are counted as one.']
      : []),
    ...(reading.markedUtc
      ? [
          '  Times are marked as UTC and taken as they stand: shift `hours` in the map if the clock on the wall differs.',
        ]
      : []),
    ...(reading.otherItems.length > 0
      ? [
          `  No drinks by the map, commonest first: ${reading.otherItems.map(({ item, rows: count }) => `${item} ${count}`).join(', ')}.`,
        ]
      : []),
  ];
  return ['What was read', ...table(rows, true), ...notes];
}

function dayPart({ days, from, to, kind, chosen }: TillFit): string[] {
  return [
    'Days',
    ...table(
      [
        ['used', days, `${kind}, ${from} to ${to}`],
        ['of another kind', chosen.otherKind, ''],
        ['excepted by the map', chosen.excepted.length, chosen.excepted.join(', ')],
        ['without a row, taken as closed', chosen.closed, ''],
        ['partial, left out', chosen.partial.length, ''],
        ...chosen.partial.map((day) => [
          `  ${day.date}`,
          '',
          `no ticket ${day.from} to ${day.to}, where ${Math.round(day.expected)} are usual`,
        ]),
      ],
      true,
    ),
  ];
}

function fitPart(fit: TillFit): string[] {
  const { dayFactor, partiesADay } = fit;
  const interval = `${Math.round(100 * dayFactor.confidence)} % interval`;
  const busiest = fit.slots.reduce((one, other) => (other.parties > one.parties ? other : one));
  return [
    'Demand',
    ...table(
      [
        [
          'parties a day',
          fixed(partiesADay.mean, 1),
          `${interval} ${fixed(partiesADay.low, 1)} to ${fixed(partiesADay.high, 1)}`,
        ],
        ['drinks a party', fixed(fit.drinksAParty, 3), ''],
        [
          'day factor, CV',
          fixed(dayFactor.cv, 3),
          `${interval} ${fixed(dayFactor.low, 3)} to ${fixed(dayFactor.high, 3)}; daily totals have ${fixed(dayFactor.varianceToMean, 2)} times the variance of chance alone`,
        ],
        [
          `busiest ${fit.slotMinutes} min`,
          busiest.starts,
          `${fixed(busiest.parties, 2)} parties, standard error ${fixed(busiest.standardError, 2)}`,
        ],
      ],
      true,
    ),
    '',
    `  Parties in ${fit.slotMinutes} min, and the band of nine days in ten`,
    ...table([
      ['from', 'mean', 'observed', 'fitted'],
      ...fit.slots.map((slot) => [
        slot.starts,
        fixed(slot.parties, 2),
        `${slot.observed.low}–${slot.observed.high}`,
        `${slot.fitted.low}–${slot.fitted.high}`,
      ]),
    ]),
    '',
    `  Party size${fit.sizesBy === 'sums' ? ' (worked out: the report gives drinks and tickets a slot, not drinks a ticket)' : ''}`,
    ...table(fit.partySize.map((share, at) => [`${at + 1}`, percent(share)])),
    '',
    '  Menu',
    ...table(
      fit.groups.map((group) => [
        group.drinks.join(' + '),
        group.count,
        percent(group.share),
        group.drinks.length > 1
          ? `from ${group.items.join(', ')}; not told apart by the till`
          : `from ${group.items.join(', ')}`,
      ]),
      true,
    ),
  ];
}

function verdict({ table: test, totals }: Goodness): string[] {
  const lines: string[] = [];
  if (test) {
    lines.push(
      test.p < 0.01
        ? '  Days differ in shape as well as in level, or parties come in bunches: real days are somewhat more uneven than the fitted ones.'
        : '  Nothing speaks against one shape for all days and parties that come independently.',
    );
  }
  if (totals && totals.p < 0.01)
    lines.push(
      '  The daily totals do not follow the fitted spread well: look for odd days, seasons or kinds of day mixed together.',
    );
  return lines;
}

function goodnessPart({ goodness: g }: TillFit): string[] {
  const rows: Cell[][] = [
    ['variance/mean within slots', fixed(g.withinSlots, 2), '1 is chance alone'],
  ];
  if (g.beyondDayLevel !== null && g.table) {
    rows.push([
      'the same, day level taken out',
      fixed(g.beyondDayLevel, 2),
      `chi-square of days by slots ${fixed(g.table.statistic, 1)}, ${fixed(g.table.expected, 1)} expected; ${chance(g.table.p)}`,
    ]);
  }
  rows.push(
    g.totals
      ? [
          'daily totals, chi-square',
          fixed(g.totals.statistic, 1),
          `${plural(g.totals.freedom, 'degree', 'degrees')} of freedom; ${chance(g.totals.p)}`,
        ]
      : ['daily totals', '–', 'too few days to test their distribution'],
  );
  return ['How well it fits', ...table(rows, true), ...verdict(g)];
}

const cannotTell = [
  'What the till cannot tell, and is kept from the base scenario',
  '  the share staying in (a ticket does not say where the drink was drunk)',
  '  how long guests stay',
  '  second drinks (one paid on a later ticket already counts as a new party)',
  '  guests without a drink: a party has as many guests as drinks, one each',
  '  what was wanted: guests who saw a full room and left are on no ticket',
];

/** A fit for people: what was read and skipped, the days, the figures, how well they fit, and what stays unknown. */
export function tillSummary(fit: TillFit): string {
  const title = `${fit.file}: ${fit.kind}, ${clock(fit.fromMinute)} to ${clock(fit.toMinute)}`;
  return (
    [[title], readPart(fit), dayPart(fit), fitPart(fit), goodnessPart(fit), cannotTell]
      .map((part) => part.join('\n'))
      .join('\n\n') + '\n'
  );
}
