/** Each house of a comparison as it is reported: its stock and money, the house as it is as certified, others by their difference to it. */
import { Day } from '../../cafe/day.js';
import { Demand } from '../../cafe/demand.js';
import { Floor } from '../../cafe/floor.js';
import { EveryStep } from '../../cafe/looking-on.js';
import { PLACE_COUNT, SHELF } from '../../cafe/places.js';
import { mergeDays } from '../../cafe/rush.js';
import { Turns } from '../../cafe/turns.js';
import { annuityFactor } from '../../comparing/annuity.js';
import type { Costs } from '../../comparing/costs.js';
import { nameOf } from '../../quantities/name.js';
import type { Answer, Share } from '../size/answer.js';
import type { Advice } from './advice.js';
import { asItIsOf, likeCertified, type AsItIs } from './as-it-is.js';
import type { AtBest, Changes, ComparedAlternative, Difference } from './answer.js';
import { breakEvens } from './break-even.js';
import { shortDrinkCost } from '../../comparing/level-worth.js';
import { edited } from '../../scenario/edited.js';
import { meanOverKinds } from '../../scenario/kinds.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { withOneOut } from './usual.js';
import { frameOf, racksOf, shelfM2, shortDrinkOf } from './costs.js';
import { lowestSafe, modelsOf, runKinds, type Evaluated, type EvaluatedKind } from './evaluate.js';
import { edgesOf } from './habits.js';
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
  const asItIs = asItIsOf(houses[0]!.one, certified);
  const all: ComparedAlternative[] = [];
  for (const [at, house] of houses.entries())
    all.push(await comparedHouse(house, at, advice, asItIs, runner, telling));
  return all;
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
  const { candidate, model, level, kinds } = one;
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
  const fresh = await runKinds(kinds, runner, {
    from: one.days,
    days: Math.min(one.days, FRESH_DAYS),
    stock: one.stock,
  });
  const onEach = kinds.map(({ model: own, parts }) => {
    const whole = mergeDays(parts);
    const facts = rushFacts(own, whole, level);
    return { facts, warnings: rushWarnings(own, whole, facts, null) };
  });
  const mean = (of: (at: number) => number): number => meanOverKinds(kinds, of);
  const guests = (of: (one: Answer['guests']) => number): number =>
    mean((at) => of(onEach[at]!.facts.guests));
  const busy = onEach.map(({ facts }) => facts.busy.machines);
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
    certified: isBase ? asItIs.certified.certified : lowestSafe(fresh),
    now: parts(({ now }) => now),
    nowTotal: money(({ nowTotal }) => nowTotal),
    year: parts(({ year }) => year),
    yearTotal: money(({ yearTotal }) => yearTotal),
    total: money(({ total }) => total),
    yearWorth: money(({ yearTotal }) => yearTotal) * years,
    failureSpares:
      isBase || candidate.planFor ? null : await failureSpares(house, runner, seed, perUnit),
    asItIsLasts: candidate.planFor ? await asItIsLasts(house, asItIs.stock, runner) : null,
    machines: model.washing.machines?.length ?? null,
    staffAYear: money(({ staffAYear }) => staffAYear),
    stockAgainstBase: pair === null ? null : inUnits(pair.stock, perUnit),
    totalAgainstBase: pair === null ? null : inUnits(pair.total, perUnit),
    staffHourAtWhichItTurns: turnsAt[at] == null ? null : turnsAt[at]! / perUnit,
    atBest: tuned === null ? null : atBestOf(tuned, base, isBase, perUnit),
    withinHabits: within[at]!,
    habitsOff: off[at]!.map((other) => ({ ...other, difference: other.difference / perUnit })),
    chanceCheaper: cheaper.get(candidate.id) ?? null,
    minutesShort: await meanMinutesShort(one, runner),
    drinksShort: mean((at) => fresh[at]!.sums.shortDrinks / fresh[at]!.days),
    staffMinutes: one.staffMinutes,
    shelfM2: shelfM2(scenario, stock),
    racks: racksOf(scenario, one.racksNeeded).racks,
    machinesBusy: busy.includes(null) ? null : Math.max(...busy.map((share) => share!)),
    guests: {
      served: guests(({ served }) => served),
      seated: guests(({ seated }) => seated),
      turnedAway: guests(({ turnedAway }) => turnedAway),
    },
    breakEven: isBase || candidate.planFor ? [] : breakEvens(base, one, perUnit),
    warnings: onEach.flatMap(({ warnings }) => warnings),
  };
}

const atBestOf = (
  { habits, one, pair }: NonNullable<Looked['tuned']>,
  base: Evaluated,
  isBase: boolean,
  perUnit: number,
): AtBest => ({
  waitMinutes: habits?.waitMinutes ?? null,
  from: habits?.from ?? null,
  edges: habits === null ? [] : edgesOf(base.candidate, habits),
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
    racks: (one.costs.now.racks - against.costs.now.racks) / perUnit,
    year: (one.costs.yearTotal - against.costs.yearTotal) / perUnit,
  };
}

/** How often the stock of the house as it is lasts on days that are to be planned for, on the kind of them where that is least; null where the ware is other. */
async function asItIsLasts(
  { one: { kinds, model, days } }: Looked,
  stock: readonly number[],
  runner: Runner,
): Promise<Share | null> {
  if (model.ware.length !== stock.length) return null;
  const task = { from: days, days: Math.min(days, FRESH_DAYS), stock };
  return lowestSafe(await runKinds(kinds, runner, task));
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
    const read = edited(house.candidate, withOneOut, house.candidate.name, {
      piecesPerRack: piecesPerRackOf,
    });
    if (read === null || !read.ok) return null;
    const kinds = modelsOf(read.scenario, seed, piecesPerRackOf);
    const runs = await runKinds(kinds, runner, {
      from: house.days,
      days: DAYS_OUT,
      stock: house.stock,
    });
    short.push(meanOverKinds(kinds, (at) => runs[at]!.sums.shortDrinks / DAYS_OUT));
  }
  const { scenario } = one.candidate;
  const each = shortDrinkCost(shortDrinkOf(scenario), frameOf(scenario).staffHour);
  return ((short[0]! - short[1]!) * each) / perUnit;
}

const MINUTE = 60_000;

/** Over the kinds of day of a year. */
async function meanMinutesShort(
  { kinds, days, stock }: Evaluated,
  runner: Runner,
): Promise<number> {
  const minutes: number[] = [];
  for (const kind of kinds) minutes.push(await minutesShort(kind, days, stock, runner));
  return meanOverKinds(kinds, (at) => minutes[at]!);
}

/** Minutes of a rush in which the shelf of some ware is empty, looked at once a minute over days that no stock was chosen on. */
async function minutesShort(
  { model, seed }: EvaluatedKind,
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
