/** The backtest: fit on earlier days, size, run the later recorded days at that stock; the origin rolls on. */
import { isoDate } from '../../till/clock.js';
import { fitDayFactor } from '../../till/day-factor.js';
import { chooseDays } from '../../till/days.js';
import type { TillMap } from '../../till/compile-map.js';
import type { TillFlaw } from '../../till/flaw.js';
import { kindOfDay } from '../../till/kinds-of-day.js';
import type { TillDay } from '../../till/tally.js';
import type { Backtest, KindTried, Origin, RecordedDay, Verdict } from './answer.js';
import { fittedHouse, ONE_KIND, type FittedHouse } from './fitted.js';
import { partiesOf, tryDays, type Run, type Trying } from './try-days.js';
import { shareInterval } from '../../statistics/share-interval.js';
import { causesOf, effectiveDays } from './judged.js';

/** Fewer fitted days cannot be told from chance (as the till import has it); fewer tried ones say nothing. */
const FEWEST_FITTED = 8;
const FEWEST_TRIED = 4;
const MOST_ORIGINS = 4;

export type BacktestResult =
  | { readonly ok: true; readonly value: Backtest }
  | { readonly ok: false; readonly flaws: readonly TillFlaw[] };

export async function backtestStudy(asking: Trying): Promise<BacktestResult> {
  const { map, tally, draws, level, seed, days, file } = asking;
  const { used } = chooseDays(tally, map);
  const first = Math.max(FEWEST_FITTED, Math.ceil(used.length / 2));
  if (used.length < first + FEWEST_TRIED)
    return {
      ok: false,
      flaws: [
        {
          about: 'map',
          path: ['days'],
          value: undefined,
          rule: `leaves ${used.length} days of the export (${map.days.name}), and a backtest needs ${FEWEST_FITTED} to fit and ${FEWEST_TRIED} to try`,
          remedy: 'export a longer period, or include more days',
        },
      ],
    };
  const together = Math.ceil((used.length - first) / MOST_ORIGINS);
  const origins: Origin[] = [];
  const runs: Run[] = [];
  const houses: FittedHouse[] = [];
  for (let from = first; from < used.length; from += together) {
    const earlier = used.slice(0, from);
    const house = fittedHouse(asking, earlier);
    if (!house.ok) return house;
    houses.push(house.value);
    const { fit } = house.value;
    const one = await tryDays(house.value, used.slice(from, from + together), asking);
    runs.push(...one.runs);
    origins.push({
      from: isoDate(earlier[0]!.day),
      to: isoDate(earlier.at(-1)!.day),
      days: earlier.length,
      partiesADay: fit.partiesADay.mean,
      dayFactor: fit.dayFactor.cv,
      stock: one.stock,
      tried: one.days,
    });
  }
  const tried = used.slice(first);
  const all = origins.flatMap((origin) => origin.tried);
  const levels = levelsOf(used, houses.at(-1)!);
  const levelOf = (day: TillDay): number => levels.get(day.day)!;
  const { share, low, high, worth, verdict } = heldOn(all, tried.map(levelOf), level);
  const { kindOf } = houses.at(-1)!;
  const { causes, trend, season } = causesOf(
    used.map((day) => ({ day, kind: kindOf(day.day), level: levelOf(day) })),
    tried.length,
  );
  const dayFactor = fitDayFactor(mostOf(used, kindOf).map(partiesOf));
  return {
    ok: true,
    value: {
      scenario: houses[0]!.scenario.name,
      file,
      kind: map.days.name,
      seed,
      level,
      days,
      draws,
      origins,
      tried: tried.length,
      safe: { share, low, high },
      effectiveDays: worth,
      verdict,
      kinds: kindsTried(all, runs, tried, levelOf, level),
      joined: joinedKinds(map, used, kindOf),
      causes,
      busier: busierThan(houses[0]!, tried),
      trend: trend === null ? null : { shareAWeek: trend.shareAWeek, p: trend.p },
      season,
      factor: factorFor(
        runs.map(({ need }) => need),
        level,
      ),
      dayFactor: { cv: dayFactor.cv, high: dayFactor.high },
    },
  };
}

/** Parties of each day; where kinds of day stand apart, as if all days were of one level. */
function levelsOf(days: readonly TillDay[], { kindOf }: FittedHouse): ReadonlyMap<number, number> {
  const all = days.reduce((sum, day) => sum + partiesOf(day), 0) / days.length;
  const of = new Map<string, number[]>();
  for (const day of days)
    of.set(kindOf(day.day), [...(of.get(kindOf(day.day)) ?? []), partiesOf(day)]);
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, one) => sum + one, 0) / values.length;
  return new Map(
    days.map((day) => [
      day.day,
      of.size === 1
        ? partiesOf(day)
        : (partiesOf(day) * all) / Math.max(1e-9, mean(of.get(kindOf(day.day))!)),
    ]),
  );
}

/** The days of the kind of which there are most. */
function mostOf(days: readonly TillDay[], kindOf: (day: number) => string): readonly TillDay[] {
  const ids = [...new Set(days.map(({ day }) => kindOf(day)))];
  return ids
    .map((id) => days.filter(({ day }) => kindOf(day) === id))
    .reduce((most, some) => (some.length > most.length ? some : most));
}

/** Parties of the days tried over those that the first fit expects of days of their kinds. */
function busierThan({ kindOf, expected }: FittedHouse, tried: readonly TillDay[]): number {
  const came = tried.reduce((sum, day) => sum + partiesOf(day), 0);
  return came / tried.reduce((sum, { day }) => sum + expected(kindOf(day)), 0);
}

/** Kinds of the map that no day is counted as: too few days of them, or too like the others. */
const joinedKinds = (
  { kinds }: TillMap,
  used: readonly TillDay[],
  kindOf: FittedHouse['kindOf'],
): Backtest['joined'] =>
  kinds.flatMap(({ id }) =>
    used.some(({ day }) => kindOf(day) === id)
      ? []
      : [{ kind: id, days: used.filter(({ day }) => kindOfDay(kinds, day) === id).length }],
  );

/** @param levels of these days, in their order */
export function heldOn(
  days: readonly Pick<RecordedDay, 'safe'>[],
  levels: readonly number[],
  level: number,
): { share: number; low: number; high: number; worth: number; verdict: Verdict } {
  const share = days.reduce((sum, { safe }) => sum + safe, 0) / days.length;
  const worth = effectiveDays(levels);
  const { low, high } = shareInterval(share, worth);
  const verdict = high < level ? 'tooOptimistic' : low >= level ? 'held' : 'notKnown';
  return { share, low, high, worth, verdict };
}

/** Each kind of day by itself; none where there is one. */
function kindsTried(
  days: readonly RecordedDay[],
  runs: readonly Run[],
  tried: readonly TillDay[],
  levelOf: (day: TillDay) => number,
  level: number,
): KindTried[] {
  const ids = [...new Set(days.map(({ kind }) => kind))];
  if (ids.length === 1 && ids[0] === ONE_KIND) return [];
  return ids.map((kind): KindTried => {
    const own = days.filter((day) => day.kind === kind);
    const { share, low, high, verdict } = heldOn(
      own,
      tried.filter((_, at) => days[at]!.kind === kind).map(levelOf),
      level,
    );
    return {
      kind,
      days: own.length,
      safe: { share, low, high },
      verdict,
      factor: factorFor(
        runs.filter((run) => run.kind === kind).map(({ need }) => need),
        level,
      ),
    };
  });
}

/** The least that all pieces must be times for so many runs to be safe. */
function factorFor(needs: readonly number[], level: number): number {
  const sorted = needs.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(level * sorted.length) - 1)]!;
}
