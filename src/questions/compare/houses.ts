/** Each house of a comparison as it is reported: its stock and money, the house as it is as certified, others by their difference to it. */
import { Day } from '../../cafe/day.js';
import { Demand } from '../../cafe/demand.js';
import { Floor } from '../../cafe/floor.js';
import { EveryStep } from '../../cafe/looking-on.js';
import type { CafeModel } from '../../cafe/model.js';
import { PLACE_COUNT, SHELF } from '../../cafe/places.js';
import { mergeDays } from '../../cafe/rush.js';
import { Turns } from '../../cafe/turns.js';
import { annuityFactor } from '../../comparing/annuity.js';
import type { Costs } from '../../comparing/costs.js';
import { nameOf } from '../../quantities/name.js';
import { exactBinomialInterval } from '../../statistics/exact-binomial-interval.js';
import type { Answer, Share } from '../size/answer.js';
import type { Advice } from './advice.js';
import type { AtBest, Changes, ComparedAlternative, Difference } from './answer.js';
import { breakEvens } from './break-even.js';
import { shortDrinkCost } from '../../comparing/level-worth.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { checkTree } from '../../scenario/read-scenario.js';
import { withOneOut } from './usual.js';
import { costOfScenario, frameOf, racksOf, shelfM2, shortDrinkOf } from './costs.js';
import { extraOf, runningOf, type Evaluated } from './evaluate.js';
import type { Looked, Looks } from './looks.js';
import { rushFacts } from '../size/rush-facts.js';
import { rushWarnings } from '../size/rush-warnings.js';
import type { Runner } from '../../cafe/runner.js';

export interface Telling {
  readonly seed: string;
  readonly perUnit: number;
  readonly cheaper: ReadonlyMap<string, Share>;
}

/** Fresh days on which the level of an alternative's stock is measured. */
export const FRESH_DAYS = 1000;
const DAYS_WATCHED = 150;
export const DAYS_OUT = 300;

/** @param certified the answer of the base, as `size` has it */
export async function comparedHouses(
  { houses }: Looks,
  advice: Advice,
  certified: Answer,
  runner: Runner,
  telling: Telling,
): Promise<ComparedAlternative[]> {
  const own = houses[0]!.one;
  const stock = certified.stock.map(({ pieces }) => pieces);
  const costs = costOfScenario(
    own.candidate.scenario,
    {
      ...runningOf(own.candidate, own.model, mergeDays(own.parts)),
      stock,
      unitCost: own.unitCost,
      racksNeeded: certified.loads.racksNeeded,
    },
    extraOf(own.candidate),
  );
  const all: ComparedAlternative[] = [];
  for (const [at, house] of houses.entries())
    all.push(await comparedHouse(house, at, advice, { certified, stock, costs }, runner, telling));
  return all;
}

interface AsItIs {
  readonly certified: Answer;
  readonly stock: readonly number[];
  readonly costs: Costs;
}

async function comparedHouse(
  house: Looked,
  at: number,
  { said, off, turnsAt, within }: Advice,
  asItIs: AsItIs,
  runner: Runner,
  { seed, perUnit, cheaper }: Telling,
): Promise<ComparedAlternative> {
  const { one, base, pair, tuned } = house;
  const { candidate, model, level } = one;
  const { scenario } = candidate;
  const frame = frameOf(scenario);
  const years = annuityFactor(frame.discount, frame.horizonYears);
  const isBase = pair === null;
  const stock = isBase ? asItIs.stock : likeCertified(one, base, asItIs.stock);
  const money = (of: (costs: Costs) => number): number =>
    (of(asItIs.costs) + (isBase ? 0 : of(one.costs) - of(base.costs))) / perUnit;
  const parts = <K extends string>(
    of: (costs: Costs) => Readonly<Record<K, number>>,
  ): Readonly<Record<K, number>> =>
    Object.fromEntries(
      Object.keys(of(one.costs)).map((part) => [part, money((costs) => of(costs)[part as K])]),
    ) as Record<K, number>;
  const fresh = await runner.run({
    model,
    seed,
    from: one.days,
    days: Math.min(one.days, FRESH_DAYS),
    stock: one.stock,
    listed: null,
    byDay: false,
  });
  const whole = mergeDays(one.parts);
  const facts = rushFacts(model, whole, level);
  const safe = exactBinomialInterval(fresh.sums.safeDays, fresh.days);
  return {
    id: candidate.id,
    name: candidate.name,
    note: candidate.note,
    changes: candidate.changes,
    said: said[at] ?? null,
    days: one.days,
    stock: Object.entries(scenario.ware).map(([ware, of], index) => ({
      ware,
      name: nameOf(ware, of),
      pieces: stock[index]!,
    })),
    pieces: stock.reduce((sum, pieces) => sum + pieces, 0),
    stockCost: asItIs.certified.cost + (pair?.stock.difference ?? 0) / perUnit,
    certified: isBase
      ? asItIs.certified.certified
      : { level: safe.share, low: safe.low, high: safe.high, confidence: safe.confidence },
    now: parts(({ now }) => now),
    nowTotal: money(({ nowTotal }) => nowTotal),
    year: parts(({ year }) => year),
    yearTotal: money(({ yearTotal }) => yearTotal),
    total: money(({ total }) => total),
    yearWorth: money(({ yearTotal }) => yearTotal) * years,
    failureSpares:
      isBase || candidate.planFor ? null : await failureSpares(house, runner, seed, perUnit),
    asItIsLasts: candidate.planFor ? await asItIsLasts(house, asItIs.stock, runner, seed) : null,
    machines: model.washing.machines?.length ?? null,
    staffAYear: money(({ staffAYear }) => staffAYear),
    stockAgainstBase: pair === null ? null : inUnits(pair.stock, perUnit),
    totalAgainstBase: pair === null ? null : inUnits(pair.total, perUnit),
    staffHourAtWhichItTurns: turnsAt[at] == null ? null : turnsAt[at]! / perUnit,
    atBest: tuned === null ? null : atBestOf(tuned, isBase, perUnit),
    withinHabits: within[at]!,
    habitsOff: off[at]!.map((other) => ({ ...other, difference: other.difference / perUnit })),
    chanceCheaper: cheaper.get(candidate.id) ?? null,
    minutesShort: await minutesShort(model, seed, one.days, one.stock, runner),
    drinksShort: fresh.sums.shortDrinks / fresh.days,
    staffMinutes: one.staffMinutes,
    shelfM2: shelfM2(scenario, stock),
    racks: racksOf(scenario, one.racksNeeded).racks,
    machinesBusy: facts.busy.machines,
    guests: {
      served: facts.guests.served,
      seated: facts.guests.seated,
      turnedAway: facts.guests.turnedAway,
    },
    breakEven: isBase || candidate.planFor ? [] : breakEvens(base, one, perUnit),
    warnings: rushWarnings(model, whole, facts, null),
  };
}

/** Pieces of an alternative beside the certified ones of the house as it is: what both have, by the difference. */
function likeCertified(one: Evaluated, base: Evaluated, certified: readonly number[]): number[] {
  const known = Object.keys(base.candidate.scenario.ware);
  return Object.keys(one.candidate.scenario.ware).map((ware, at) => {
    const there = known.indexOf(ware);
    return there < 0
      ? one.stock[at]!
      : Math.max(0, certified[there]! + one.stock[at]! - base.stock[there]!);
  });
}

const atBestOf = (
  { habits, one, pair }: NonNullable<Looked['tuned']>,
  isBase: boolean,
  perUnit: number,
): AtBest => ({
  waitMinutes: habits?.waitMinutes ?? null,
  from: habits?.from ?? null,
  total: one.costs.total / perUnit,
  againstBase: isBase ? null : inUnits(pair.total, perUnit),
});

export const inUnits = (
  { difference, low, high, alone, ...rest }: Difference,
  perUnit: number,
): Difference => ({
  difference: difference / perUnit,
  low: low / perUnit,
  high: high / perUnit,
  alone: { low: alone.low / perUnit, high: alone.high / perUnit },
  ...rest,
});

/** What better habits change in the house as it is. */
export function changesAtBest({ tuned }: Looked, perUnit: number): Changes {
  const { one, against, pair } = tuned!;
  const pieces = ({ stock }: Evaluated): number => stock.reduce((sum, count) => sum + count, 0);
  const other = ({ costs }: Evaluated): number => costs.nowTotal - costs.now.ware;
  return {
    pieces: pieces(one) - pieces(against),
    ware: pair.stock.difference / perUnit,
    staff: one.staffMinutes - against.staffMinutes,
    now: (other(one) - other(against)) / perUnit,
    year: (one.costs.yearTotal - against.costs.yearTotal) / perUnit,
  };
}

/** How often the stock of the house as it is lasts on days that are to be planned for; null where the ware is other. */
async function asItIsLasts(
  { one: { model, days } }: Looked,
  stock: readonly number[],
  runner: Runner,
  seed: string,
): Promise<Share | null> {
  if (model.ware.length !== stock.length) return null;
  const task = { model, seed, from: days, days: Math.min(days, FRESH_DAYS), stock, listed: null };
  const { sums, days: ran } = await runner.run({ ...task, byDay: false });
  const { share, ...rest } = exactBinomialInterval(sums.safeDays, ran);
  return { level: share, ...rest };
}

/** What a day without one machine costs less than in the house as it is: the drinks for which the wanted ware is missing. */
async function failureSpares(
  { one, base }: Looked,
  runner: Runner,
  seed: string,
  perUnit: number,
): Promise<number | null> {
  const machines = ({ model }: Evaluated): number => model.washing.machines?.length ?? 0;
  if (machines(one) <= machines(base)) return null;
  const short: number[] = [];
  for (const house of [base, one]) {
    const raw = withOneOut(house.candidate);
    const read =
      raw === null
        ? null
        : checkTree(raw, () => ({ line: 1, column: 1 }), house.candidate.name, {
            piecesPerRack: piecesPerRackOf,
          });
    if (read === null || !read.ok) return null;
    const { sums, days } = await runner.run({
      model: compile(read.scenario, piecesPerRackOf),
      seed,
      from: house.days,
      days: DAYS_OUT,
      stock: house.stock,
      listed: null,
      byDay: false,
    });
    short.push(sums.shortDrinks / days);
  }
  const { scenario } = one.candidate;
  const each = shortDrinkCost(shortDrinkOf(scenario), frameOf(scenario).staffHour);
  return ((short[0]! - short[1]!) * each) / perUnit;
}

const MINUTE = 60_000;

/** Minutes of a rush in which the shelf of some ware is empty, looked at once a minute over days that no stock was chosen on. */
async function minutesShort(
  model: CafeModel,
  seed: string,
  from: number,
  stock: readonly number[],
  runner: Runner,
): Promise<number> {
  const days = Math.min(from, DAYS_WATCHED);
  const floor = new Floor(model, seed);
  const demand = new Demand(model, seed);
  const day = new Day();
  const turns = new Turns(async () => runner.pause?.());
  let minutes = 0;
  const watcher = new EveryStep(MINUTE, model.closingMs, (_, seen) => {
    for (let ware = 0; ware < stock.length; ware += 1) {
      if (stock[ware]! > 0 && seen.ledger.counts[ware * PLACE_COUNT + SHELF] === 0) {
        minutes += 1;
        return;
      }
    }
  });
  for (let number = from; number < from + days; number += 1) {
    demand.draw(number, day);
    watcher.rewind();
    await turns.run(floor, day, number, stock, watcher);
  }
  return minutes / days;
}
