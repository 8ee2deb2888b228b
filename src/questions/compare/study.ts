/**
 * The comparison: alternatives → each sized and certified under the same days → money, differences, ranking.
 *
 * Days have the same numbers and seed in every alternative, so the same guests meet all of them. The leaders that
 * cannot be told apart are given twice the days until they can, or the cap is reached.
 */
import { rank, type Ranking } from '../../comparing/ranking.js';
import { minorPerUnit } from '../../quantities/money.js';
import type { Candidate } from './alternatives.js';
import type { ComparedAlternative, Comparison, Difference } from './answer.js';
import { beatsOf } from './beats.js';
import { breakEvens } from './break-even.js';
import { frameOf, indifferenceOf, racksOf, shelfM2 } from './costs.js';
import { costOf, Pairs } from './differences.js';
import { evaluate, staffMinutesOf, type EvaluateOptions, type Evaluated } from './evaluate.js';
import { levelToBuy } from './level.js';
import { mapDays, tradeOffMap } from './map.js';
import { planningTable } from './seats.js';
import { nameOf } from '../../quantities/name.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import { checkTree } from '../../scenario/read-scenario.js';
import { withRawValue } from '../../scenario/raw-paths.js';
import type { Runner } from '../../cafe/runner.js';
import { drawInputs, whatMoves } from './sensitivity.js';

export interface CompareOptions {
  readonly level?: number;
  readonly seed?: string;
  /** Days every alternative is chosen on at first; doubled for leaders that cannot be told apart. */
  readonly days?: number;
  readonly mostDays?: number;
  readonly map?: boolean;
  readonly moves?: boolean;
  /** Draws of the assumed inputs; 0: none. */
  readonly draws?: number;
  /** Seats for the planning table. */
  readonly seats?: readonly number[];
  /** Seat every guest in every alternative, so that all serve the same ones. */
  readonly equalGuests?: boolean;
  /** Leave out the question which level to buy. */
  readonly noLevel?: boolean;
  readonly piecesPerRack?: PiecesPerRack;
}

const FIRST_DAYS = 1000;
const MOST_DAYS = 4000;
const QUICK_DAYS = 500;
const DRAW_DAYS = 200;
/** Chance of naming the wrong one best that is allowed. */
const ALLOWED = 0.05;

export async function compareStudy(
  given: readonly Candidate[],
  runner: Runner,
  options: CompareOptions = {},
): Promise<Comparison> {
  const reading =
    options.piecesPerRack === undefined ? {} : { piecesPerRack: options.piecesPerRack };
  const candidates =
    options.equalGuests === true ? given.map((one) => seatingAll(one, reading)) : given;
  const base = candidates[0]!;
  const { scenario } = base;
  const seed = options.seed ?? scenario.seed;
  const level = options.level ?? scenario.level;
  const first = options.days ?? FIRST_DAYS;
  const cap = Math.max(first, options.mostDays ?? (options.days === undefined ? MOST_DAYS : first));
  const asked: EvaluateOptions = { level, seed, days: first, piecesPerRack: options.piecesPerRack };
  const quick = {
    level,
    seed,
    days: Math.min(first, QUICK_DAYS),
    piecesPerRack: options.piecesPerRack,
  };

  let evaluated: Evaluated[] = [];
  for (const candidate of candidates) evaluated.push(await evaluate(candidate, runner, asked));
  const pairs = new Pairs(seed, level);
  const indifference = indifferenceOf(scenario);
  let ranking = rankOf(evaluated, pairs, indifference);
  let days = first;
  while (!ranking.separated && days < cap) {
    days = Math.min(cap, days * 2);
    const again = new Set([ranking.best, ...ranking.level, 'base']);
    const next: Evaluated[] = [];
    for (const one of evaluated)
      next.push(
        again.has(one.candidate.id)
          ? await evaluate(one.candidate, runner, { ...asked, days })
          : one,
      );
    evaluated = next;
    ranking = rankOf(evaluated, pairs, indifference);
  }

  const draws =
    options.draws === undefined || options.draws === 0
      ? null
      : await drawInputs(candidates, options.draws, runner, { ...quick, days: DRAW_DAYS }, reading);
  const perUnit = minorPerUnit(scenario.currency);
  const beats = await beatsOf(
    base,
    candidates.find(({ id }) => id === ranking.best)!,
    runner,
    quick,
    reading,
  );
  const frame = frameOf(scenario);
  const notRanked = candidates.filter(({ otherGuests }) => otherGuests).map(({ id }) => id);
  return {
    scenario: scenario.name,
    seed,
    currency: scenario.currency,
    level,
    days: first,
    mostDays: days,
    equalGuests: options.equalGuests === true,
    horizonYears: frame.horizonYears,
    discount: frame.discount,
    daysAYear: frame.daysAYear,
    alternatives: evaluated.map((one) =>
      told(one, evaluated[0]!, pairs, perUnit, draws?.cheaper.get(one.candidate.id) ?? null),
    ),
    ranking: {
      order: [...ranking.order, ...notRanked],
      best: ranking.best,
      errorProbability: ranking.errorProbability,
      indifference: indifference / perUnit,
      separated: ranking.separated,
      notToldApart: ranking.level,
      notRanked,
    },
    beats: beats.map((beat) => ({ ...beat, difference: beat.difference / perUnit })),
    worth: options.noLevel === true ? null : await levelToBuy(evaluated[0]!, runner, seed, level),
    map:
      options.map === true
        ? await tradeOffMap(
            base,
            runner,
            options.days === undefined ? { ...quick, days: mapDays(base) } : quick,
            reading,
          )
        : null,
    moves: options.moves === true ? await whatMoves(base, runner, quick, reading, draws) : null,
    planning:
      options.seats === undefined
        ? null
        : await planningTable(base, options.seats, runner, asked, reading),
  };
}

function seatingAll(
  candidate: Candidate,
  reading: { readonly piecesPerRack?: PiecesPerRack },
): Candidate {
  const raw = withRawValue(candidate.raw, ['seats', 'count'], 'unlimited');
  const read = checkTree(raw, () => ({ line: 1, column: 1 }), candidate.name, reading);
  if (!read.ok)
    throw new Error(
      `a house without a limit of seats is no valid scenario: ${read.problems[0]!.message}`,
    );
  return { ...candidate, raw, scenario: read.scenario, inputs: read.inputs };
}

/** Ranks what the house can choose; alternatives with other guests serve others, so their money is no reason. */
function rankOf(all: readonly Evaluated[], pairs: Pairs, indifference: number): Ranking {
  const evaluated = all.filter(({ candidate }) => !candidate.otherGuests);
  const best = evaluated.reduce((least, one) =>
    one.costs.total < least.costs.total ? one : least,
  );
  return rank(
    evaluated.map((one) => ({
      id: one.candidate.id,
      total: one.costs.total,
      errorAgainstBest: one === best ? 0 : pairs.compare(best, one).totalError,
    })),
    indifference,
    ALLOWED,
  );
}

function told(
  one: Evaluated,
  base: Evaluated,
  pairs: Pairs,
  perUnit: number,
  chanceCheaper: ComparedAlternative['chanceCheaper'],
): ComparedAlternative {
  const { candidate, answer, stock, costs, atStock } = one;
  const { scenario } = candidate;
  const pair = one === base ? null : pairs.compare(base, one);
  const units = <K extends string>(parts: Readonly<Record<K, number>>): Record<K, number> =>
    Object.fromEntries(
      Object.entries<number>(parts).map(([part, minor]) => [part, minor / perUnit]),
    ) as Record<K, number>;
  return {
    id: candidate.id,
    name: candidate.name,
    note: candidate.note,
    changes: candidate.changes,
    stock: answer.stock.map(({ ware, pieces }) => ({
      ware,
      name: nameOf(ware, scenario.ware[ware]!),
      pieces,
    })),
    pieces: stock.reduce((sum, pieces) => sum + pieces, 0),
    stockCost: costOf(one) / perUnit,
    certified: answer.certified,
    now: units(costs.now),
    nowTotal: costs.nowTotal / perUnit,
    year: units(costs.year),
    yearTotal: costs.yearTotal / perUnit,
    total: costs.total / perUnit,
    stockAgainstBase: pair === null ? null : inUnits(pair.stock, perUnit),
    totalAgainstBase: pair === null ? null : inUnits(pair.total, perUnit),
    chanceCheaper,
    minutesShort: one.minutesShort,
    drinksShort: atStock.sums.shortDrinks / atStock.days,
    staffMinutes: staffMinutesOf(atStock, one.model),
    shelfM2: shelfM2(scenario, stock),
    racks: racksOf(scenario, answer.loads.racksNeeded).racks,
    machinesBusy: answer.busy.machines,
    guests: {
      served: answer.guests.served,
      seated: answer.guests.seated,
      turnedAway: answer.guests.turnedAway,
    },
    breakEven: one === base ? [] : breakEvens(base, one, perUnit),
    warnings: answer.warnings,
  };
}

const inUnits = ({ difference, low, high, ...rest }: Difference, perUnit: number): Difference => ({
  difference: difference / perUnit,
  low: low / perUnit,
  high: high / perUnit,
  ...rest,
});
