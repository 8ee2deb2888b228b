/** How many days a house is open: said once, and read by every question that counts by the year or the week. */
import * as z from 'zod';
import { patchFields } from '../comparing/schema.js';
import { group, named } from '../quantities/group.js';
import { plainNumber } from '../quantities/numbers.js';
import { quantities, text } from '../quantities/quantity.js';
import type { Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';
import { groupAt, isGroup, valueAt } from './tree.js';

const WEEKS = 52;
/** Where nothing is said: closed one day a week; common practice, no source. */
const DAYS_A_YEAR = 6 * WEEKS;
/** What a year of 52 weeks leaves out; two figures no farther apart say the same. */
const ROUNDING = 8;

/** A number up to the days of a year or a week. */
const upTo = (most: number, of: string): z.ZodType<number> => {
  const schema = plainNumber('days', true).refine((value) => value <= most, {
    error: `is more days than ${of} has; write ${most} or fewer`,
  });
  quantities.add(schema, { kind: 'number' });
  return schema;
};

const kind = group(
  {
    name: text('the name of the kind of day').optional(),
    daysAYear: upTo(366, 'a year'),
    ...patchFields,
  },
  'write { daysAYear: 52, scale: { arrivals: 130 % } }',
);

export const calendarSchema = group(
  {
    /** Days like those of the scenario. */
    daysAYear: upTo(366, 'a year').optional(),
    daysAWeek: upTo(7, 'a week').optional(),
    weeksAYear: upTo(53, 'a year (in weeks)').optional(),
    /** Kinds of day: one without changes is the file as it is, each other a change of it. */
    kinds: named(
      kind,
      'write one kind of day per line, such as sunday: { daysAYear: 52, scale: { arrivals: 130 % } }',
    ).optional(),
  },
  'write { daysAYear: 250 }, or { daysAWeek: 5, weeksAYear: 50 }',
);

export interface Calendar {
  readonly daysAYear: number;
  /** Mean over the weeks of a year. */
  readonly daysAWeek: number;
}

interface Dated {
  readonly calendar?:
    | {
        readonly daysAYear?: number | undefined;
        readonly daysAWeek?: number | undefined;
        readonly weeksAYear?: number | undefined;
        readonly kinds?: Readonly<Record<string, { readonly daysAYear: number }>> | undefined;
      }
    | undefined;
  readonly costs?: { readonly daysAYear?: number | undefined } | undefined;
  readonly supply?: { readonly openDaysAWeek?: number | undefined } | undefined;
}

const daysOf = (kinds: readonly { readonly daysAYear?: unknown }[]): number =>
  kinds.reduce((sum, { daysAYear }) => sum + (typeof daysAYear === 'number' ? daysAYear : 0), 0);

/** The calendar, or what costs or supply say alone; six days a week where none does. */
export function calendarOf({ calendar = {}, costs, supply }: Dated): Calendar {
  const daysAYear =
    (calendar.kinds === undefined ? undefined : daysOf(Object.values(calendar.kinds))) ??
    calendar.daysAYear ??
    (calendar.daysAWeek === undefined
      ? undefined
      : calendar.daysAWeek * (calendar.weeksAYear ?? WEEKS)) ??
    costs?.daysAYear ??
    (supply?.openDaysAWeek === undefined ? DAYS_A_YEAR : supply.openDaysAWeek * WEEKS);
  return { daysAYear, daysAWeek: Math.min(7, daysAYear / WEEKS) };
}

/** A statement of how many days a year there are. */
interface Said {
  readonly path: Path;
  readonly value: number | undefined;
  readonly year: number;
  /** Counted in days rather than weeks. */
  readonly exact: boolean;
}

/** A file that says two things: each place, with what the other says. */
export function checkCalendar(tree: unknown): Flaw[] {
  const number = (path: Path): number | null => {
    const value = valueAt(tree, path);
    return typeof value === 'number' ? value : null;
  };
  const weeks = number(['calendar', 'weeksAYear']) ?? WEEKS;
  const kinds = groupAt(tree, 'calendar', 'kinds');
  const ofKinds = daysOf(Object.values(kinds).filter(isGroup));
  const said: Said[] = [
    ...(ofKinds > 0
      ? [{ path: ['calendar', 'kinds'], value: undefined, year: ofKinds, exact: true }]
      : []),
    ...(
      [
        [['calendar', 'daysAYear'], 1],
        [['calendar', 'daysAWeek'], weeks],
        [['costs', 'daysAYear'], 1],
        [['supply', 'openDaysAWeek'], WEEKS],
      ] as const
    ).flatMap(([path, times]) => {
      const value = number([...path]);
      return value === null
        ? []
        : [{ path: [...path], value, year: value * times, exact: times === 1 }];
    }),
  ];
  const first = said[0];
  const other = said.find(
    ({ year, exact }) =>
      Math.abs(year - first!.year) > (ofKinds > 0 && exact && first!.exact ? 0 : ROUNDING),
  );
  const figure = ({ path, value }: Said): string =>
    `${path.join('.')} (${
      value ??
      Object.values(kinds)
        .filter(isGroup)
        .map(({ daysAYear }) => String(daysAYear))
        .join(' + ')
    })`;
  const contrary = (one: Said, against: Said): Flaw =>
    problemAt(
      one.path,
      one.value,
      `makes ${Math.round(one.year)} days a year, and ${figure(against)} makes ${Math.round(against.year)}`,
      ofKinds > 0
        ? 'correct the days of the kinds, and leave out the other'
        : 'say it once, under calendar: { daysAYear: 250 }',
    );
  const weeksAlone =
    number(['calendar', 'weeksAYear']) !== null && number(['calendar', 'daysAWeek']) === null
      ? [
          problemAt(
            ['calendar', 'weeksAYear'],
            weeks,
            'needs days a week beside it',
            'add daysAWeek, or write daysAYear alone',
          ),
        ]
      : [];
  const empty =
    isGroup(valueAt(tree, ['calendar'])) &&
    number(['calendar', 'daysAYear']) === null &&
    number(['calendar', 'daysAWeek']) === null &&
    Object.keys(kinds).length === 0 &&
    weeksAlone.length === 0
      ? [
          problemAt(
            ['calendar'],
            undefined,
            'does not say how many days',
            'write { daysAYear: 250 }, or { daysAWeek: 5, weeksAYear: 50 }',
          ),
        ]
      : [];
  const tooMany =
    ofKinds > 366
      ? [
          problemAt(
            ['calendar', 'kinds'],
            undefined,
            `has kinds of ${ofKinds} days a year in all, and a year has 366`,
            'correct their daysAYear',
          ),
        ]
      : [];
  return [
    ...weeksAlone,
    ...empty,
    ...tooMany,
    ...(first === undefined || other === undefined
      ? []
      : [contrary(first, other), contrary(other, first)]),
  ];
}
