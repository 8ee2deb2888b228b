/** The backtest: fit on earlier days, size, run the later recorded days at that stock; the origin rolls on. */
import type { Runner } from '../../cafe/runner.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { nameOf } from '../../quantities/name.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { readScenario } from '../../scenario/read-scenario.js';
import type { Scenario } from '../../scenario/scenario.js';
import { applyTill } from '../../till/apply-till.js';
import { isoDate } from '../../till/clock.js';
import type { TillMap } from '../../till/compile-map.js';
import { fitDayFactor } from '../../till/day-factor.js';
import { chooseDays } from '../../till/days.js';
import { fitTill, type TillFit } from '../../till/fit-till.js';
import type { TillFlaw } from '../../till/flaw.js';
import type { Tally, TillDay } from '../../till/tally.js';
import { study } from '../size/study.js';
import type { Backtest, Origin, RecordedDay } from './answer.js';
import { shareInterval } from '../../statistics/share-interval.js';
import { causesOf, effectiveDays } from './judged.js';
import { recordedDay } from './recorded.js';

/** Fewer fitted days cannot be told from chance (as the till import has it); fewer tried ones say nothing. */
const FEWEST_FITTED = 8;
const FEWEST_TRIED = 4;
const MOST_ORIGINS = 4;

export interface BacktestAsking {
  /** The base scenario, from which all but the demand comes. */
  readonly text: string;
  readonly map: TillMap;
  readonly tally: Tally;
  readonly file: string;
  readonly runner: Runner;
  readonly level: number;
  readonly seed: string;
  readonly days: number;
  readonly draws: number;
}

export type BacktestResult =
  | { readonly ok: true; readonly value: Backtest }
  | { readonly ok: false; readonly flaws: readonly TillFlaw[] };

const total = ({ parties }: TillDay): number => parties.reduce((sum, one) => sum + one, 0);

export async function backtestStudy(asking: BacktestAsking): Promise<BacktestResult> {
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
  const needs: number[] = [];
  let firstFit: TillFit | null = null;
  let scenarioName = '';
  for (let from = first; from < used.length; from += together) {
    const earlier = used.slice(0, from);
    const fit = fitTill(
      { ...tally, days: new Map(earlier.map((day) => [day.day, day])) },
      { ...map, keepPartialDays: true },
      file,
    );
    if (!fit.ok) return fit;
    firstFit ??= fit.value;
    const house = fittedHouse(asking.text, fit.value);
    if ('flaws' in house) return { ok: false, flaws: house.flaws };
    scenarioName = house.scenario.name;
    const one = await tryDays(house.scenario, used.slice(from, from + together), asking);
    needs.push(...one.needs);
    origins.push({
      from: fit.value.from,
      to: fit.value.to,
      days: fit.value.days,
      partiesADay: fit.value.partiesADay.mean,
      dayFactor: fit.value.dayFactor.cv,
      stock: one.stock,
      tried: one.days,
    });
  }
  const tried = used.slice(first);
  const all = origins.flatMap((origin) => origin.tried);
  const share = all.reduce((sum, { safe }) => sum + safe, 0) / all.length;
  const worth = effectiveDays(tried.map(total));
  const { low, high } = shareInterval(share, worth);
  const { causes, trend } = causesOf(used, tried);
  const dayFactor = fitDayFactor(used.map(total));
  return {
    ok: true,
    value: {
      scenario: scenarioName,
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
      verdict: high < level ? 'tooOptimistic' : low >= level ? 'held' : 'notKnown',
      causes,
      busier:
        tried.reduce((sum, day) => sum + total(day), 0) / tried.length / firstFit!.partiesADay.mean,
      trend: trend === null ? null : { shareAWeek: trend.shareAWeek, p: trend.p },
      factor: factorFor(needs, level),
      dayFactor: { cv: dayFactor.cv, high: dayFactor.high },
    },
  };
}

function fittedHouse(
  text: string,
  fit: TillFit,
): { readonly scenario: Scenario } | { readonly flaws: readonly TillFlaw[] } {
  const applied = applyTill(text, fit);
  if (!applied.ok) return { flaws: applied.flaws };
  const read = readScenario(applied.value.text, 'fitted', { piecesPerRack: piecesPerRackOf });
  if (read.ok) return { scenario: read.scenario };
  return {
    flaws: read.problems.map(({ at, value, rule, remedy }) => ({
      about: 'base',
      path: at.map(String),
      value,
      rule,
      remedy,
    })),
  };
}

interface Tried {
  readonly stock: Origin['stock'];
  readonly days: RecordedDay[];
  /** By run of a day: the stock, times this, would just have been enough. */
  readonly needs: number[];
}

async function tryDays(
  scenario: Scenario,
  tried: readonly TillDay[],
  { map, runner, level, seed, days, draws }: BacktestAsking,
): Promise<Tried> {
  const { answer } = await study(scenario, runner, {
    level,
    seed,
    days,
    certifyOn: days,
    piecesPerRack: piecesPerRackOf,
  });
  const model = compile(scenario, piecesPerRackOf);
  const stock = answer.stock.map(({ pieces }) => pieces);
  const stream = new Stream(streamKey(seed, 'recorded days'));
  const listed = tried.flatMap((day) =>
    Array.from({ length: draws }, (_, draw) =>
      recordedDay(
        { day, slotMinutes: map.slotMinutes, groups: map.groups },
        model,
        stream.toDay(day.day * draws + draw),
      ),
    ),
  );
  const task = { model, seed: `${seed}/recorded`, from: 0, days: listed.length, listed };
  const at = await runner.run({ ...task, stock, byDay: true });
  const free = await runner.run({ ...task, stock: null, byDay: false });
  return {
    stock: answer.stock.map(({ ware, name, pieces }) => ({ ware, name, pieces })),
    needs: listed.map((_, run) =>
      Math.max(
        ...stock.map(
          (pieces, ware) => free.peaks[run * stock.length + ware]! / Math.max(1, pieces),
        ),
      ),
    ),
    days: tried.map((day, index) => {
      const runs = at.byDay.slice(index * draws, (index + 1) * draws);
      const short = runs.filter(({ firstShortMs }) => firstShortMs >= 0);
      const often = stock.map((_, ware) => short.filter((run) => run.short[ware]! > 0).length);
      const worst = often.indexOf(Math.max(...often));
      const times = short.map(({ firstShortMs }) => firstShortMs).toSorted((a, b) => a - b);
      return {
        date: isoDate(day.day),
        parties: total(day),
        safe: 1 - short.length / draws,
        ware:
          short.length === 0
            ? null
            : nameOf(answer.stock[worst]!.ware, scenario.ware[answer.stock[worst]!.ware]!),
        minute:
          times.length === 0 ? null : Math.round(times[Math.floor(times.length / 2)]! / 60_000),
      };
    }),
  };
}

/** The least that all pieces must be times for so many runs to be safe. */
function factorFor(needs: readonly number[], level: number): number {
  const sorted = needs.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(level * sorted.length) - 1)]!;
}
