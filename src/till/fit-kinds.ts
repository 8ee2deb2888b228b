/** The kinds of day of an export: which differ beyond chance, each with a fit of its own, and how they change over the year. */
import { mean } from 'simple-statistics';
import { holm } from '../statistics/holm.js';
import { clock } from './clock.js';
import {
  aspects,
  compareKinds,
  partiesOf,
  timesThe,
  type Aspect,
  type Chances,
} from './compare-kinds.js';
import type { TillMap } from './compile-map.js';
import { fitDayFactor } from './day-factor.js';
import { chooseDays } from './days.js';
import { FEWEST_DAYS, fitTill, type TillFit } from './fit-till.js';
import { succeed, type Outcome } from './flaw.js';
import { restOf } from './kinds-of-day.js';
import { seasonOf, type Season } from './season.js';
import type { Tally, TillDay } from './tally.js';

/** A kind of day as the export shows it. */
export interface KindSeen {
  readonly id: string;
  readonly days: number;
  readonly partiesADay: number;
  /** Drinks a party. */
  readonly drinks: number;
  /** Start of its busiest slot, HH:MM. */
  readonly busiest: string;
  /** Coefficient of variation of the day factor; null with too few days. */
  readonly spread: number | null;
}

export interface KindCompared extends KindSeen {
  /** Parties a day as a multiple of those of the base, with a 95 % interval. */
  readonly times: { readonly times: number; readonly low: number; readonly high: number };
  readonly chances: Chances;
  /** What differs, once all that was tested is allowed for. */
  readonly differs: readonly Aspect[];
}

/** A kind that differs, and becomes one of the scenario. */
export interface KindFit extends Pick<KindCompared, 'id' | 'times' | 'differs'> {
  readonly fit: TillFit;
  readonly daysAYear: number;
}

export interface TillKinds {
  /** The kind of which there are most days. */
  readonly base: KindSeen;
  readonly compared: readonly KindCompared[];
  /** Kinds with too few days to be told from chance. */
  readonly tooFew: readonly { readonly id: string; readonly days: number }[];
  /** Kinds of the map without a single day. */
  readonly absent: readonly string[];
  /** Of the base and all that does not differ from it. */
  readonly fit: TillFit;
  readonly fitted: readonly KindFit[];
  /** Days a year like those of `fit`; null where there is one kind of day. */
  readonly daysAYear: number | null;
  readonly season: Season;
}

function seen(id: string, days: readonly TillDay[], map: TillMap): KindSeen {
  const totals = days.map(partiesOf);
  const slots = days[0]!.parties.map((_, slot) => mean(days.map(({ parties }) => parties[slot]!)));
  const parties = totals.reduce((all, one) => all + one, 0);
  const drinks = days.reduce((all, day) => all + day.drinks.reduce((a, b) => a + b, 0), 0);
  return {
    id,
    days: days.length,
    partiesADay: mean(totals),
    drinks: parties === 0 ? 0 : drinks / parties,
    busiest: clock(map.fromMinute + slots.indexOf(Math.max(...slots)) * map.slotMinutes),
    spread: days.length < FEWEST_DAYS || parties === 0 ? null : fitDayFactor(totals).cv,
  };
}

/** The map's days of these kinds alone. */
const onlyKinds = (map: TillMap, ofKinds: readonly string[], name: string): TillMap => ({
  ...map,
  days: { ...map.days, ofKinds, name },
});

/**
 * @param deals how often days are dealt anew for each comparison
 * Refused as `fitTill` refuses.
 */
export function fitKinds(
  tally: Tally,
  map: TillMap,
  file: string,
  deals?: number,
): Outcome<TillKinds> {
  const ids = [restOf(map.kinds), ...map.kinds.map(({ id }) => id)];
  const groups = ids.map((id) => ({ id, ...chooseDays(tally, onlyKinds(map, [id], id)) }));
  const enough = groups.filter(({ used }) => used.length >= FEWEST_DAYS && used.some(partiesOf));
  const most = Math.max(...enough.map(({ used }) => used.length));
  const base = enough.find(({ used }) => used.length === most);
  if (base === undefined || map.kinds.length === 0) return oneKind(tally, map, file);

  const others = enough.filter((group) => group !== base);
  const chances = others.map(({ id, used }) =>
    compareKinds(used, base.used, `${file}/${id}`, deals),
  );
  const tested = chances.flatMap((one, at) =>
    aspects.flatMap((aspect) => {
      const p = one[aspect];
      return p === undefined ? [] : [{ at, aspect, p }];
    }),
  );
  const found = holm(tested.map(({ p }) => p));
  const compared = others.map(({ id, used }, at): KindCompared => ({
    ...seen(id, used, map),
    times: timesThe(used, base.used),
    chances: chances[at]!,
    differs: tested.flatMap((one, index) => (one.at === at && found[index]! ? [one.aspect] : [])),
  }));
  const apart = compared.filter(({ differs }) => differs.length > 0);
  if (apart.length === 0 && groups.filter(({ used }) => used.length > 0).length === 1)
    return oneKind(tally, map, file);

  const together = ids.filter((id) => !apart.some((kind) => kind.id === id));
  const fit = fitTill(
    tally,
    apart.length === 0
      ? map
      : onlyKinds(map, together, `${map.days.name} except ${listOf(apart.map(({ id }) => id))}`),
    file,
  );
  if (!fit.ok) return fit;
  const fits: { readonly kind: KindCompared; readonly fit: TillFit }[] = [];
  for (const kind of apart) {
    const own = fitTill(tally, onlyKinds(map, [kind.id], kind.id), file);
    if (!own.ok) return own;
    fits.push({ kind, fit: own.value });
  }
  const year = yearOf(groups, map);
  const ofYear = (id: string): number => year.get(id) ?? 0;
  const levels = groups.flatMap(({ id, used }) => {
    const middle = apart.find((kind) => kind.id === id)?.partiesADay ?? fit.value.partiesADay.mean;
    return used.map((day) => ({ day: day.day, level: partiesOf(day) / middle }));
  });
  return succeed({
    base: seen(base.id, base.used, map),
    compared,
    tooFew: groups
      .filter((group) => !enough.includes(group) && group.used.length > 0)
      .map(({ id, used }) => ({ id, days: used.length })),
    absent: groups.filter(({ id, used }) => used.length === 0 && id !== ids[0]).map(({ id }) => id),
    fit: fit.value,
    fitted: fits.map(({ kind: { id, times, differs }, fit: own }) => ({
      id,
      times,
      differs,
      fit: own,
      daysAYear: ofYear(id),
    })),
    daysAYear: apart.length === 0 ? null : together.reduce((all, id) => all + ofYear(id), 0),
    season: seasonOf(levels),
  });
}

function oneKind(tally: Tally, map: TillMap, file: string): Outcome<TillKinds> {
  const fit = fitTill(tally, map, file);
  if (!fit.ok) return fit;
  const { used } = chooseDays(tally, map);
  const middle = fit.value.partiesADay.mean;
  return succeed({
    base: seen(restOf([]), used, map),
    compared: [],
    tooFew: [],
    absent: [],
    fit: fit.value,
    fitted: [],
    daysAYear: null,
    season: seasonOf(used.map((day) => ({ day: day.day, level: partiesOf(day) / middle }))),
  });
}

const DAYS_OF_A_YEAR = 365;

/**
 * Open days of each kind in the spell of the export, as days of a year. Kinds by date or period come once a year, so they
 * are not scaled up; the others share what is left of the year as they share the rest of the spell.
 */
function yearOf(
  groups: readonly (Pick<ReturnType<typeof chooseDays>, 'used' | 'partial'> & {
    readonly id: string;
  })[],
  map: TillMap,
): ReadonlyMap<string, number> {
  const all = groups.flatMap(({ used }) => used.map(({ day }) => day));
  const first = all.reduce((low, day) => Math.min(low, day), Infinity);
  const last = all.reduce((high, day) => Math.max(high, day), -Infinity);
  // Whole weeks, so that an export from a Saturday to a Sunday does not count one weekend too many.
  const span = Math.max(7, 7 * Math.round((last - first + 1) / 7));
  const open = groups.map(({ used, partial }) => used.length + partial.length);
  const dated = groups.map(({ id }) =>
    map.kinds.some((kind) => kind.id === id && kind.weekdays.length === 0),
  );
  const onDates = open.reduce((days, one, at) => days + (dated[at] ? one : 0), 0);
  const once = onDates / Math.max(1, span / DAYS_OF_A_YEAR);
  // Open every day, and rounded down to whole weeks: there are then more open days than the spell has.
  const others = open.reduce((days, one) => days + one, 0) - onDates;
  const rest = (DAYS_OF_A_YEAR - once) / Math.max(1, others, span - onDates);
  let left = DAYS_OF_A_YEAR;
  return new Map(
    groups.map(({ id }, at) => {
      const scaled = open[at]! * (dated[at] ? 1 / Math.max(1, span / DAYS_OF_A_YEAR) : rest);
      const days = Math.min(left, Math.max(1, Math.round(scaled)));
      left -= days;
      return [id, days] as const;
    }),
  );
}

/** "a", "a and b", "a, b and c". */
const listOf = (names: readonly string[]): string =>
  [names.slice(0, -1).join(', '), names.at(-1)!].filter((part) => part !== '').join(' and ');
