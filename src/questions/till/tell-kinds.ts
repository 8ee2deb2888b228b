/** What a till says of kinds of day, and of the year, as blocks. */
import { heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import type { Aspect } from '../../till/compare-kinds.js';
import type { KindCompared, KindSeen, TillKinds } from '../../till/fit-kinds.js';
import { FEWEST_DAYS } from '../../till/fit-till.js';
import { WEEKS_FOR_SEASON, WEEKS_FOR_TREND, type Season } from '../../till/season.js';

const fixed = (value: number, digits: number): string => value.toFixed(digits);
const percent = (share: number): string => `${(100 * share).toFixed(1).replace('-', '−')} %`;
const chance = (p: number): string => (p < 0.001 ? 'p below 0.001' : `p = ${fixed(p, 3)}`);

const differing: Readonly<Record<Aspect, string>> = {
  volume: 'how many parties come',
  shape: 'when they come',
  mix: 'what they drink',
  sizes: 'drinks per party',
  spread: 'how much such days differ among themselves',
};
export const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

const joined = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

const times = ({ times: { times: one, low, high } }: Pick<KindCompared, 'times'>): string =>
  `${fixed(one, 2)} times (${fixed(low, 2)} to ${fixed(high, 2)})`;

/** Nothing where the map's days are all of one kind. */
export function kindBlocks(kinds: TillKinds): Block[] {
  const { compared, tooFew, absent } = kinds;
  if (compared.length + tooFew.length + absent.length === 0) return [];
  return [
    heading('Kinds of day'),
    paragraphs([...compared.map((kind) => sentence(kind, kinds.base)), ...proposal(kinds)]),
    table({
      caption: 'Kinds of day as the export has them',
      columns: [
        { title: 'Kind', as: 'words' },
        { title: 'Days', as: 'figures' },
        { title: 'Parties a day', as: 'figures' },
        { title: 'Compared with the first (95 % interval)', as: 'figures' },
        { title: 'Busiest from', as: 'figures', spare: true },
        { title: 'Drinks per party', as: 'figures', spare: true },
        { title: 'Spread of days', as: 'figures', spare: true },
      ],
      rows: [kinds.base, ...compared].map((kind) => [
        kind.id,
        `${kind.days}`,
        fixed(kind.partiesADay, 1),
        'times' in kind ? times(kind as KindCompared) : '–',
        kind.busiest,
        fixed(kind.drinks, 2),
        kind.spread === null ? '–' : fixed(kind.spread, 3),
      ]),
    }),
    list([
      ...tooFew.map(
        ({ id, days }) =>
          `${id}: only ${days} ${days === 1 ? 'day' : 'days'}, and fewer than ${FEWEST_DAYS} cannot be told from chance. They are taken together with the others; if they are odd, leave them out under days.except.`,
      ),
      ...absent.map((id) => `${id}: no day of the export is of this kind.`),
    ]),
    ...(compared.length === 0 ? [] : [chancesTable(compared)]),
  ];
}

function sentence({ id, differs, chances, days }: KindCompared, base: KindSeen): string {
  const tested = Object.values(chances).length;
  if (differs.length === 0)
    return `Days of the kind ${id} (${days}) do not differ from ${base.id} days (${base.days}) by more than chance in anything tested (${tested} tests), so both are taken together.`;
  return `Days of the kind ${id} (${days}) differ from ${base.id} days (${base.days}) by more than chance in this: ${joined(differs.map((aspect) => differing[aspect]))}.`;
}

function proposal({ base, fitted, daysAYear }: TillKinds): string[] {
  if (fitted.length === 0) return [];
  const kinds = [
    `${base.id} ${daysAYear}`,
    ...fitted.map((kind) => `${kind.id} ${kind.daysAYear}`),
  ];
  return [
    `Proposed for the scenario: calendar.kinds with ${joined(kinds)} days a year. cuptide size then finds one stock that is enough on each kind, and names the kind that needs most.`,
  ];
}

const chancesTable = (compared: readonly KindCompared[]): Block =>
  table({
    caption:
      'How often chance alone gives a difference as large (days shuffled 1,999 times). Found: still clear after allowing for the number of tests (Holm, 5 %)',
    columns: [
      { title: 'What', as: 'words' },
      ...compared.map(({ id }) => ({ title: id, as: 'figures' as const })),
    ],
    rows: (Object.keys(differing) as Aspect[]).map((aspect) => [
      differing[aspect],
      ...compared.map(({ chances, differs }) => {
        const p = chances[aspect];
        return p === undefined ? '–' : `${chance(p)}${differs.includes(aspect) ? ', found' : ''}`;
      }),
    ]),
  });

/** Trend and season in plain sentences. */
export function seasonBlock(season: Season): Block {
  return list(seasonSentences(season), 'Over the weeks');
}

export function seasonSentences({ weeks, span, trend, months: year }: Season): string[] {
  const told: string[] = [];
  if (trend === null)
    told.push(
      `Days of ${weeks} ${weeks === 1 ? 'week' : 'weeks'} are too few to tell a trend (it takes ${WEEKS_FOR_TREND}) or a season (it takes ${WEEKS_FOR_SEASON}).`,
    );
  else if (trend.found) {
    const way = trend.aWeek > 0 ? 'more' : 'fewer';
    told.push(
      `Trend: ${percent(Math.abs(trend.aWeek))} ${way} parties with every week, more than chance explains (${chance(trend.p)}). The last four weeks had ${fixed(trend.recent, 2)} times the average used here${
        trend.aWeek > 0
          ? ': to size for what is coming, use the latest weeks alone (days.between), and look again in a few months.'
          : '. Use the latest weeks alone (days.between) if the next months will be like them.'
      }`,
    );
  } else
    told.push(
      `Trend: none beyond chance in ${weeks} weeks (${percent(trend.aWeek)} a week, ${chance(trend.p)}).`,
    );
  if (trend === null) return told;
  if (year === null)
    told.push(
      `Season: ${weeks} weeks are too few to compare months (it takes ${WEEKS_FOR_SEASON}). A café with a season should be sized on its busy months.`,
    );
  else if (year.found)
    told.push(
      `Season: months differ by more than chance (${chance(year.p)}). ${months[year.busiest.month]} is the busiest, at ${fixed(year.busiest.times, 2)} times the mean${
        year.returns
          ? '.'
          : `; whether that comes back each year ${span} weeks cannot say (it takes two years).`
      } To size for it, make it a kind of day (kinds, between) or use it alone.`,
    );
  else
    told.push(
      `Season: months do not differ by more than chance (${chance(year.p)})${year.returns ? '.' : ', in less than two years.'}`,
    );
  return told;
}
