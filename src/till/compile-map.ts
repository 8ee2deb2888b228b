/**
 * From a map that passed its schema to what the reading needs, or to what does not fit together in it.
 */
import type { DateOrder } from './clock.js';
import { clock, weekdayNames } from './clock.js';
import type { Outcome, TillFlaw } from './flaw.js';
import { fail, succeed } from './flaw.js';
import type { DrinkGroup } from './items.js';
import { groupDrinks, plainItem } from './items.js';
import { USUAL, WEEKDAY, usualKinds, type KindChoice } from './kinds-of-day.js';
import type { Separator } from './rows.js';
import type { TillMapFile } from './schema.js';
import { LARGEST_PARTY } from './schema.js';
import type { Encoding } from './text.js';

export interface TicketColumns {
  readonly form: 'tickets';
  readonly date: string;
  readonly time: string | null;
  readonly ticket: string | null;
  readonly item: string;
  readonly quantity: string | null;
}

export interface CountedColumns {
  readonly form: 'counts';
  readonly date: string;
  readonly slot: string;
  readonly everyMinutes: number;
  readonly parties: string;
  readonly tickets: string | null;
}

/** Which days are fitted. Days are numbers since 1970-01-01; Monday is 0. */
interface DayChoice {
  /** In words, for the summary. */
  readonly name: string;
  readonly weekdays: readonly number[];
  readonly between: readonly { readonly from: number; readonly to: number }[];
  readonly except: readonly number[];
  /** Only days of these kinds, where it says so. */
  readonly ofKinds?: readonly string[];
}

export interface TillMap {
  readonly columns: TicketColumns | CountedColumns;
  readonly dates: DateOrder;
  readonly separator: Separator;
  readonly encoding: Encoding;
  readonly groups: readonly DrinkGroup[];
  readonly ignored: readonly string[];
  readonly days: DayChoice;
  /** Kinds of day that may differ; a day that none names is of the rest. */
  readonly kinds: readonly KindChoice[];
  readonly keepPartialDays: boolean;
  /** Minutes since midnight; the hours are a whole number of slots. */
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly slotMinutes: number;
  readonly largestParty: number;
}

const MS_A_MINUTE = 60_000;

type Tell = (path: TillFlaw['path'], value: unknown, rule: string, remedy: string) => void;

function slotMinutesOf(ms: number, path: TillFlaw['path'], tell: Tell): number {
  const minutes = ms / MS_A_MINUTE;
  if (Number.isInteger(minutes) && minutes >= 1 && 1440 % minutes === 0) return minutes;
  tell(
    path,
    `${minutes} min`,
    'does not divide the day',
    'take a length that does, such as 5, 10, 15, 20, 30 or 60 min',
  );
  return 15;
}

type Week = TillMapFile['days']['week'];

const weekdaysOf = (week: Week): number[] => {
  const chosen: readonly string[] = typeof week === 'string' ? weeks[week].days : week;
  return weekdayNames.flatMap((name, at) => (chosen.includes(name) ? [at] : []));
};

function spellsInOrder(
  between: readonly { readonly from: number; readonly to: number }[],
  at: TillFlaw['path'],
  tell: Tell,
): void {
  between.forEach((spell, index) => {
    if (spell.to < spell.from)
      tell([...at, index], undefined, 'ends before it starts', 'swap the two days');
  });
}

const weeks = {
  weekdays: { days: weekdayNames.slice(0, 5), name: 'Monday to Friday' },
  weekends: { days: weekdayNames.slice(5), name: 'Saturday and Sunday' },
  any: { days: weekdayNames, name: 'any day of the week' },
};
const longNames = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

function dayChoice({ week, between = [], except }: TillMapFile['days'], tell: Tell): DayChoice {
  const weekdays = weekdaysOf(week);
  spellsInOrder(between, ['days', 'between'], tell);
  return {
    name:
      typeof week === 'string' ? weeks[week].name : weekdays.map((at) => longNames[at]).join(', '),
    weekdays,
    between,
    except,
  };
}

function kindChoices(listed: NonNullable<TillMapFile['kinds']>, tell: Tell): readonly KindChoice[] {
  return Object.entries(listed).map(([id, { week, dates = [], between = [] }]) => {
    if (week === undefined && dates.length + between.length === 0)
      tell(
        ['kinds', id],
        undefined,
        'does not say which days these are',
        'write { week: [wed] } or { dates: [2026-05-01, 2026-12-26] }',
      );
    if (id === USUAL || id === WEEKDAY)
      tell(
        ['kinds', id],
        undefined,
        'is the name of the days that no kind names',
        'leave it out: name the other kinds alone',
      );
    spellsInOrder(between, ['kinds', id, 'between'], tell);
    return { id, weekdays: week === undefined ? [] : weekdaysOf(week), between, dates };
  });
}

function columnsOf(file: TillMapFile, tell: Tell): TicketColumns | CountedColumns {
  if ((file.columns === undefined) === (file.counts === undefined)) {
    const rule = file.columns
      ? 'has both columns (one row an item) and counts (already counted by day and slot)'
      : 'has neither columns (one row an item) nor counts (already counted by day and slot)';
    tell([], undefined, rule, 'keep the one that fits the export');
  }
  if (file.columns) {
    const { date, item, time = null, ticket = null, quantity = null } = file.columns;
    return { form: 'tickets', date, item, time, ticket, quantity };
  }
  const {
    date,
    slot,
    every,
    parties,
    tickets = null,
  } = file.counts ?? { date: '', slot: '', every: 15 * MS_A_MINUTE, parties: '' };
  return {
    form: 'counts',
    date,
    slot,
    everyMinutes: slotMinutesOf(every, ['counts', 'every'], tell),
    parties,
    tickets,
  };
}

function drinkLines(file: TillMapFile, tell: Tell): (readonly [string, readonly string[]])[] {
  const lines = Object.entries(file.drinks).map(
    ([item, ids]) => [item, typeof ids === 'string' ? [ids] : [...new Set(ids)]] as const,
  );
  if (lines.length === 0)
    tell(
      ['drinks'],
      undefined,
      'is empty',
      'name at least one item of the till and the drink it is',
    );
  const names = new Map<string, string>();
  for (const [item] of lines) {
    const same = names.get(plainItem(item));
    if (same !== undefined)
      tell(
        ['drinks', item],
        item,
        `is the same item as "${same}": capitals and spaces do not count`,
        'keep one of them',
      );
    names.set(plainItem(item), item);
    if (file.counts && !file.columns && item.includes('*'))
      tell(
        ['drinks', item],
        item,
        'has a * where a counted report needs the name of a column',
        'write the name in full',
      );
  }
  return lines;
}

/** Turn a map into numbers; every flaw is reported at once. */
export function compileTillMap(file: TillMapFile): Outcome<TillMap> {
  const flaws: TillFlaw[] = [];
  const tell: Tell = (path, value, rule, remedy) => {
    flaws.push({ about: 'map', path, value, rule, remedy });
  };
  const columns = columnsOf(file, tell);
  const fromMinute = file.hours.from / MS_A_MINUTE;
  const toMinute = file.hours.to / MS_A_MINUTE;
  const slotMinutes = slotMinutesOf(file.every, ['every'], tell);
  const every = `${slotMinutes} min`;
  if (toMinute <= fromMinute) {
    tell(
      ['hours'],
      undefined,
      `end at ${clock(toMinute)}, which is not after their start at ${clock(fromMinute)}`,
      'give hours of one day, opening first',
    );
  } else if ((toMinute - fromMinute) % slotMinutes !== 0) {
    tell(
      ['every'],
      every,
      `does not divide the hours from ${clock(fromMinute)} to ${clock(toMinute)}`,
      'change the hours or the length of a slot',
    );
  }
  if (
    columns.form === 'counts' &&
    (slotMinutes % columns.everyMinutes !== 0 || fromMinute % columns.everyMinutes !== 0)
  ) {
    tell(
      ['every'],
      every,
      `from ${clock(fromMinute)} cannot be put together from counts every ${columns.everyMinutes} min`,
      `take a multiple of ${columns.everyMinutes} min, and hours that start with a counted slot`,
    );
  }
  if (file.largestParty > LARGEST_PARTY)
    tell(
      ['largestParty'],
      file.largestParty,
      `is more than the ${LARGEST_PARTY} guests a party of a scenario may have`,
      'write a smaller number',
    );
  const days = dayChoice(file.days, tell);
  const map: TillMap = {
    columns,
    dates: file.dates,
    separator: file.separator,
    encoding: file.encoding,
    groups: groupDrinks(drinkLines(file, tell)),
    ignored: file.ignored,
    days,
    kinds: file.kinds === undefined ? usualKinds(days.weekdays) : kindChoices(file.kinds, tell),
    keepPartialDays: file.partialDays === 'keep',
    fromMinute,
    toMinute,
    slotMinutes,
    largestParty: file.largestParty,
  };
  return flaws.length > 0 ? fail(...flaws) : succeed(map);
}
