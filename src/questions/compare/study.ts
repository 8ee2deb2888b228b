/**
 * The comparison: alternatives → looks under the same days → what may be said → money and the rush of each.
 *
 * The house as it is has one stock, the certified answer of `size`; alternatives are reported as differences to it, read
 * on days that all have in common.
 */
import { minorPerUnit } from '../../quantities/money.js';
import { advise, type Advice } from './advice.js';
import type { Candidate } from './alternatives.js';
import type { Answer } from '../size/answer.js';
import type { Comparison } from './answer.js';
import { frameOf } from './costs.js';
import { daysAhead, daysFrom, type Planned } from './days-ahead.js';
import { CONFIDENCE } from './differences.js';
import { changesAtBest, inUnits, comparedHouses } from './houses.js';
import { levelToBuy } from './level.js';
import { takeLooks } from './looks.js';
import { mapDays, mapPoints, tradeOffMap } from './map.js';
import { QuickReader } from './quick.js';
import { screened } from './screen.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import { edited } from '../../scenario/edited.js';
import { withRawValue } from '../../scenario/raw-paths.js';
import type { Runner } from '../../cafe/runner.js';
import { drawInputs, whatMoves } from './sensitivity.js';
import { rowsSoFar, type RowSoFar } from './so-far.js';
import { daysOfSizing } from '../../sizing/size-stock.js';
import { MOST_DAYS, study } from '../size/study.js';

export interface CompareOptions {
  readonly level?: number;
  readonly seed?: string;
  /** One look at so many days, in place of up to three. */
  readonly days?: number;
  readonly map?: boolean;
  readonly moves?: boolean;
  /** Draws of the assumed inputs; 0: none. */
  readonly draws?: number;
  /** Seat every guest in every alternative, so that all serve the same ones. */
  readonly equalGuests?: boolean;
  /** Leave out the question which level to buy. */
  readonly noLevel?: boolean;
  /** Of a house alone: try the questions that owners usually ask. */
  readonly usual?: boolean;
  readonly piecesPerRack?: PiecesPerRack;
  /** What `size` says of the house on the same level, seed and days, where that is known already. */
  readonly certified?: Answer | undefined;
  /** Called as houses become known. */
  readonly soFar?: (rows: readonly RowSoFar[]) => Promise<void>;
}

/** Days at each look: doubling, so that the last look is not much more than was needed. */
export const LOOKS = [1000, 2000, 4000];
export const HABIT_DAYS = 200;
const SCREEN_DAYS = 300;
const QUICK_DAYS = 500;
/** For the sign of a difference with a habit off. */
export const SIGN_DAYS = 300;
export const DRAW_DAYS = 200;

export async function compareStudy(
  given: readonly Candidate[],
  runner: Runner,
  options: CompareOptions = {},
): Promise<Comparison> {
  const { piecesPerRack } = options;
  const reading = piecesPerRack === undefined ? {} : { piecesPerRack };
  const { scenario } = given[0]!;
  const seed = options.seed ?? scenario.seed;
  const level = options.level ?? scenario.level;
  const looks = options.days === undefined ? LOOKS : [options.days];
  const days = looks[0]!;
  const quick = { level, seed, days: Math.min(days, QUICK_DAYS), piecesPerRack };
  const signDays = Math.min(days, SIGN_DAYS);
  const draws = options.draws ?? 0;
  const habitDays = Math.min(days, HABIT_DAYS);
  const planned = (all: readonly Candidate[]): Planned => ({
    candidates: all,
    looks,
    habitDays: all.length > 1 ? habitDays : 0,
    signDays,
    sized: options.certified === undefined ? sizedOn(options.days) : 0,
    drawn: draws * DRAW_DAYS,
    withLevel: options.noLevel !== true,
    further: furtherDays(all[0]!, options, quick.days),
  });
  const { kept, left } =
    options.usual === true && given.length === 1
      ? await screened(
          given[0]!,
          runner,
          { ...quick, days: Math.min(days, SCREEN_DAYS) },
          reading,
          (all) => daysFrom(planned([given[0]!, ...all])),
        )
      : { kept: given, left: [] };
  const candidates =
    options.equalGuests === true ? kept.map((one) => seatingAll(one, reading)) : kept;
  const base = candidates[0]!;
  const begin = daysAhead(runner, planned(candidates));
  begin('size');
  const answer =
    options.certified ??
    (
      await study(scenario, runner, {
        level,
        seed,
        ...reading,
        ...(options.days === undefined ? {} : { days: options.days }),
      })
    ).answer;
  begin('looks');
  const perUnit = minorPerUnit(scenario.currency);
  const { soFar } = options;
  const found = await takeLooks(candidates, runner, {
    level,
    seed,
    looks,
    habitDays: candidates.length > 1 ? habitDays : 0,
    piecesPerRack,
    soFar: soFar && ((seen) => soFar(rowsSoFar(seen, answer, perUnit))),
  });
  begin('advice');
  const reader = new QuickReader(runner, { ...quick, days: signDays });
  const advice = await advise(candidates, found, reader, reading);
  begin('draws');
  const choices = candidates.filter(({ planFor }) => !planFor);
  const drawn =
    draws === 0
      ? null
      : await drawInputs(choices, draws, runner, { ...quick, days: DRAW_DAYS }, reading);
  const frame = frameOf(scenario);
  const id = (at: number): string => candidates[at]!.id;
  const own = found.houses[0]!;
  begin('houses');
  const alternatives = await comparedHouses(found, advice, answer, runner, {
    seed,
    perUnit,
    cheaper: drawn?.cheaper ?? new Map(),
  });
  begin('level');
  const worth = options.noLevel === true ? null : await levelToBuy(own.one, answer, runner, level);
  begin('further');
  return {
    scenario: scenario.name,
    seed,
    currency: scenario.currency,
    level,
    days,
    mostDays: Math.max(...found.houses.map(({ one }) => one.days)),
    equalGuests: options.equalGuests === true,
    hardlyMatter: left,
    horizonYears: frame.horizonYears,
    discount: frame.discount,
    daysAYear: frame.daysAYear,
    kinds:
      (scenario.kinds?.length ?? 0) < 2
        ? null
        : scenario.kinds!.map(({ name, daysAYear }) => ({ name, daysAYear })),
    staffCounted: frame.staffCounted,
    alternatives,
    ranking: {
      ...rankingOf(advice, candidates),
      indifference: found.indifference / perUnit,
      confidence: CONFIDENCE,
      differences: found.differences,
    },
    habits:
      own.tuned === null
        ? null
        : {
            difference: inUnits(own.tuned.pair.total, perUnit),
            said: advice.habit!,
            ...changesAtBest(own, perUnit),
          },
    worth,
    map:
      options.map === true
        ? await tradeOffMap(
            base,
            runner,
            options.days === undefined ? { ...quick, days: mapDays(base) } : quick,
            reading,
          )
        : null,
    moves: options.moves === true ? await whatMoves(base, runner, quick, reading, drawn) : null,
  };

  function rankingOf(
    { order, best, asGood }: Advice,
    all: readonly Candidate[],
  ): Pick<Comparison['ranking'], 'order' | 'best' | 'asGood' | 'notRanked'> {
    return {
      order: order.map(id),
      best: id(best),
      asGood: asGood.map(id),
      notRanked: all.filter(({ planFor }) => planFor).map((one) => one.id),
    };
  }
}

/** Most days that a size is chosen and certified on. */
const sizedOn = (days: number | undefined): number =>
  days === undefined ? 2 * MOST_DAYS : daysOfSizing(days);

function furtherDays(base: Candidate, options: CompareOptions, quickDays: number): number {
  const { days, map, moves } = options;
  const ranged = base.inputs.filter(({ range, at }) => range !== null && at[0] !== 'costs').length;
  return (
    (map === true ? (mapPoints(base) + 1) * (days === undefined ? mapDays(base) : quickDays) : 0) +
    (moves === true ? (2 * ranged + 1) * quickDays : 0)
  );
}

function seatingAll(
  candidate: Candidate,
  reading: { readonly piecesPerRack?: PiecesPerRack },
): Candidate {
  const read = edited(
    candidate,
    ({ raw }) => withRawValue(raw, ['seats', 'count'], 'unlimited'),
    candidate.name,
    reading,
  )!;
  if (!read.ok)
    throw new Error(
      `a house without a limit of seats is no valid scenario: ${read.problems[0]!.message}`,
    );
  return { ...candidate, raw: read.raw, scenario: read.scenario, inputs: read.inputs };
}
