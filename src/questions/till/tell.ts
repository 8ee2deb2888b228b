/** What a till export says of a kind of day, reported once: what was found, what a till cannot know, and the details. */
import { fold, list, paragraphs, table, type Block } from '../../tell/block.js';
import { clock } from '../../till/clock.js';
import type { TillKinds } from '../../till/fit-kinds.js';
import type { TillFit } from '../../till/fit-till.js';
import type { Goodness } from '../../till/goodness.js';
import { kindBlocks, seasonBlock } from './tell-kinds.js';

const whole = (value: number): string => value.toLocaleString('en-GB');
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const fixed = (value: number, digits: number): string => value.toFixed(digits);
const plural = (count: number, one: string, many: string): string =>
  `${whole(count)} ${count === 1 ? one : many}`;

/** A chance, never printed as 0. */
const chance = (p: number): string =>
  p < 0.0001 ? 'p below 0.0001' : `p = ${p.toFixed(p < 0.01 ? 4 : 2)}`;

/** What, how many, and a remark. */
type Line = readonly [string, string, string?];

const lines = (caption: string, rows: readonly Line[], amount = 'Number'): Block =>
  table({
    caption,
    columns: [
      { title: 'What', as: 'words' },
      { title: amount, as: 'figures' },
      { title: 'Remark', as: 'words' },
    ],
    rows: rows.map(([what, value, remark = '']) => [what, value, remark]),
  });

/** @param notes what the new scenario changes beside the figures */
export function tillBlocks(
  fit: TillFit,
  notes: readonly string[] = [],
  kinds: TillKinds | null = null,
): Block[] {
  return [
    paragraphs([lead(fit)], 'lead'),
    paragraphs([
      `From ${fit.file}: ${fit.kind}, ${clock(fit.fromMinute)} to ${clock(fit.toMinute)}, ${plural(fit.days, 'day', 'days')} from ${fit.from} to ${fit.to}.`,
    ]),
    paragraphs(verdict(fit.goodness)),
    ...(kinds === null ? [] : [...kindBlocks(kinds), seasonBlock(kinds.season)]),
    list(readingNotes(fit), 'Check these'),
    list(notes, 'Changed in the new scenario'),
    list(CANNOT_TELL, 'What a till cannot tell; these stay as in your base scenario'),
    fold('What was read', [readRows(fit), dayRows(fit)]),
    fold('Guests through the day', [demandRows(fit), slotRows(fit)]),
    fold('Party sizes and menu', [sizeRows(fit), menuRows(fit)]),
    fold('How well it fits', [goodnessRows(fit)]),
  ];
}

function lead(fit: TillFit): string {
  const { mean, low, high } = fit.partiesADay;
  const busiest = busiestOf(fit);
  return `On an average day ${fixed(mean, 1)} parties come (${Math.round(100 * fit.dayFactor.confidence)} % interval: ${fixed(low, 1)} to ${fixed(high, 1)}) and order ${fixed(fit.drinksAParty, 2)} drinks each. The busiest ${fit.slotMinutes} minutes start at ${busiest.starts}, with ${fixed(busiest.parties, 1)} parties.`;
}

const busiestOf = ({ slots }: TillFit): TillFit['slots'][number] =>
  slots.reduce((one, other) => (other.parties > one.parties ? other : one));

function readRows({ reading }: TillFit): Block {
  return lines('What was read', [
    ['Rows', whole(reading.rows)],
    ['Rows skipped', whole(reading.skipped.reduce((sum, entry) => sum + entry.rows, 0))],
    ...reading.skipped.map(({ reason, rows, lines: at, example }): Line => {
      const more = rows > at.length ? ', …' : '';
      return [
        reason,
        whole(rows),
        `line${at.length > 1 ? 's' : ''} ${at.join(', ')}${more}${example === '' ? '' : ` (first: "${example}")`}`,
      ];
    }),
    ...(reading.ignoredRows > 0
      ? [['Rows of items the map ignores', whole(reading.ignoredRows)] as const]
      : []),
    ['Tickets', whole(reading.tickets), `on ${plural(reading.daysInExport, 'day', 'days')}`],
    ['Tickets with a drink', whole(reading.parties), percent(reading.parties / reading.tickets)],
    [
      'Drinks on these tickets',
      whole(reading.drinks),
      `${fixed(reading.drinks / reading.parties, 3)} each`,
    ],
    ['Tickets with a drink, outside the hours', whole(reading.partiesOutsideHours)],
  ]);
}

/** A share of rows that repeat the one before, at which the export may hold every row twice. */
const MANY_REPEATS = 0.45;

function readingNotes({ reading }: TillFit): string[] {
  const { rows, tooLarge, repeatedRows, dayReturns, otherItems } = reading;
  return [
    ...(tooLarge > 0
      ? [
          `${plural(tooLarge, 'ticket has', 'tickets have')} more drinks than the largest party: they were left out as orders to carry away.`,
        ]
      : []),
    ...(repeatedRows > 0
      ? [
          `${plural(repeatedRows, 'row repeats', 'rows repeat')} the row before. They were counted: the same item twice on a ticket means two.${repeatedRows > MANY_REPEATS * rows ? ' That is nearly every other row: if the export holds each row twice, all drinks are counted double; take one copy out.' : ''}`,
        ]
      : []),
    ...(dayReturns > 0
      ? [
          `The rows went back to an earlier day ${plural(dayReturns, 'time', 'times')}. That is right for several tills in one file, and wrong if parts were exported twice or rows are out of order.`,
        ]
      : []),
    ...(reading.minutesMerged
      ? [
          'There are no ticket numbers or seconds, so all tickets of one minute were counted as one.',
        ]
      : []),
    ...(reading.markedUtc
      ? [
          'Times are marked as UTC and were taken as they are. Shift `hours` in the map if the clock on your wall differs.',
        ]
      : []),
    ...(otherItems.length > 0
      ? [
          `Not drinks, by your map (most frequent first): ${otherItems.map(({ item, rows }) => `${item} ${whole(rows)}`).join(', ')}.`,
        ]
      : []),
  ];
}

function dayRows({ days, from, to, kind, chosen }: TillFit): Block {
  return lines('Days', [
    ['Used', whole(days), `${kind}, ${from} to ${to}`],
    ['Of another kind', whole(chosen.otherKind)],
    ['Excluded by the map', whole(chosen.excepted.length), chosen.excepted.join(', ')],
    ['No rows, taken as closed', whole(chosen.closed)],
    ['Partial, left out', whole(chosen.partial.length)],
    ...chosen.partial.map(({ date, from: start, to: end, expected }): Line => [
      date,
      '',
      `no ticket from ${start} to ${end}, where ${Math.round(expected)} are usual`,
    ]),
  ]);
}

function demandRows(fit: TillFit): Block {
  const { dayFactor, partiesADay } = fit;
  const interval = `${Math.round(100 * dayFactor.confidence)} % interval`;
  const busiest = busiestOf(fit);
  return lines(
    'Demand',
    [
      [
        'Parties a day',
        fixed(partiesADay.mean, 1),
        `${interval} ${fixed(partiesADay.low, 1)} to ${fixed(partiesADay.high, 1)}`,
      ],
      ['Drinks per party', fixed(fit.drinksAParty, 3)],
      [
        'Day factor (coefficient of variation)',
        fixed(dayFactor.cv, 3),
        `${interval} ${fixed(dayFactor.low, 3)} to ${fixed(dayFactor.high, 3)}; the variance of daily totals is ${fixed(dayFactor.varianceToMean, 2)} times what chance alone gives`,
      ],
      [
        `Parties in the busiest ${fit.slotMinutes} min (${busiest.starts})`,
        fixed(busiest.parties, 2),
        `standard error ${fixed(busiest.standardError, 2)}`,
      ],
    ],
    'Value',
  );
}

const slotRows = (fit: TillFit): Block =>
  table({
    caption: `Parties in ${fit.slotMinutes} min, and the range of nine days in ten`,
    columns: ['From', 'Average', 'Observed', 'Fitted'].map((title, at) => ({
      title,
      as: at === 0 ? ('words' as const) : ('figures' as const),
    })),
    rows: fit.slots.map(({ starts, parties, observed, fitted }) => [
      starts,
      fixed(parties, 2),
      `${observed.low}–${observed.high}`,
      `${fitted.low}–${fitted.high}`,
    ]),
  });

const sizeRows = (fit: TillFit): Block =>
  table({
    caption: `Party size${fit.sizesBy === 'sums' ? ' (estimated: the report gives drinks and tickets in each slot, not drinks on each ticket)' : ''}`,
    columns: [
      { title: 'Guests', as: 'words' },
      { title: 'Share of parties', as: 'figures' },
    ],
    rows: fit.partySize.map((share, at) => [`${at + 1}`, percent(share)]),
  });

const menuRows = (fit: TillFit): Block =>
  table({
    caption: 'Menu',
    columns: [
      { title: 'Drink', as: 'words' },
      { title: 'Sold', as: 'figures' },
      { title: 'Share', as: 'figures' },
      { title: 'Items of the till', as: 'words' },
    ],
    rows: fit.groups.map(({ drinks, count, share, items }) => [
      drinks.join(' + '),
      whole(count),
      percent(share),
      `${items.join(', ')}${drinks.length > 1 ? '; the till does not tell them apart' : ''}`,
    ]),
  });

function verdict({ table: test, totals }: Goodness): string[] {
  return [
    ...(test === null
      ? []
      : [
          test.p < 0.01
            ? 'Real days are somewhat more uneven than the fitted ones: they differ in shape as well as in level, or parties come in groups.'
            : 'The fit agrees with the export: all days have one shape, and parties come independently of each other.',
        ]),
    ...(totals !== null && totals.p < 0.01
      ? [
          'The daily totals do not follow the fitted spread well. Look for unusual days, seasons, or different kinds of day in one file.',
        ]
      : []),
  ];
}

function goodnessRows({ goodness: g }: TillFit): Block {
  return lines(
    'How well it fits',
    [
      ['Variance over mean within slots', fixed(g.withinSlots, 2), '1 is chance alone'],
      ...(g.beyondDayLevel !== null && g.table
        ? [
            [
              'The same, with the level of each day removed',
              fixed(g.beyondDayLevel, 2),
              `chi-square of days by slots ${fixed(g.table.statistic, 1)}, ${fixed(g.table.expected, 1)} expected; ${chance(g.table.p)}`,
            ] as const,
          ]
        : []),
      g.totals
        ? ([
            'Daily totals, chi-square',
            fixed(g.totals.statistic, 1),
            `${plural(g.totals.freedom, 'degree', 'degrees')} of freedom; ${chance(g.totals.p)}`,
          ] as const)
        : ['Daily totals', '–', 'too few days to test their distribution'],
    ],
    'Value',
  );
}

const CANNOT_TELL = [
  'the share of guests who stay in: a ticket does not say where the drink was drunk',
  'how long guests stay',
  'second drinks: one paid on a later ticket counts as a new party',
  'guests without a drink: a party has as many guests as drinks, one each',
  'demand that was lost: guests who saw a full room and left are on no ticket',
];
