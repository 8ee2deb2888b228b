/**
 * The comparison proper: all houses under the same days, looked at up to three times at doubling sizes, and what may be
 * said of each against the house as it is. Intervals hold together over looks and houses
 * (comparing/repeated-looks.ts), so when to stop is free: a house is left alone once something can be said of it.
 */
import { reachOfMany } from '../../comparing/repeated-looks.js';
import { verdictOf, type Verdict } from '../../comparing/verdict.js';
import { crossValidatedMisses } from '../../sizing/cross-validated-misses.js';
import { peaksBeyond } from '../../sizing/least-cost-beyond.js';
import type { Candidate } from './alternatives.js';
import { indifferenceOf } from './costs.js';
import { CONFIDENCE, Pairs, type Pair } from './differences.js';
import { House, type Evaluated } from './evaluate.js';
import { habitGrid, quickTotal, withHabits, type Habits } from './habits.js';
import { QuickReader } from './quick.js';
import type { ReadOptions } from '../../scenario/read-scenario.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import type { Runner } from '../../cafe/runner.js';

export interface LookOptions {
  readonly level: number;
  readonly seed: string;
  /** Days at each look that may be taken, each twice the one before. */
  readonly looks: readonly number[];
  /** Days on which the habits are chosen; 0: no habits are tried. */
  readonly habitDays: number;
  readonly piecesPerRack?: PiecesPerRack | undefined;
  /** Comparisons like this one whose intervals must hold together, such as those of all sites; 1 unless said. */
  readonly among?: number;
  /** Called as houses become known, the base first; the last time all are as they stay. */
  readonly soFar?: ((houses: readonly Seen[]) => Promise<void>) | undefined;
}

/** A house at its best habits, judged on the days of the first look. */
export interface Tuned {
  readonly habits: Habits | null;
  readonly one: Evaluated;
  /** The base at its best habits; for the base, itself at the present ones. */
  readonly against: Evaluated;
  readonly pair: Pair;
  readonly verdict: Verdict;
}

/** A house and the base on the same days. */
export interface Seen {
  readonly one: Evaluated;
  readonly base: Evaluated;
}

export interface Looked extends Seen {
  /** Null for the base. */
  readonly pair: Pair | null;
  /** The same at each look taken. */
  readonly byLook: readonly Pair[];
  /** Null for the base, and for what is to be planned for. */
  readonly verdict: Verdict | null;
  readonly tuned: Tuned | null;
}

export interface Looks {
  readonly houses: readonly Looked[];
  /** Differences that hold together. */
  readonly differences: number;
  readonly indifference: number;
  readonly pairs: Pairs;
  /** What can be said of two houses on the days that both were seen on. */
  between(first: number, second: number): Promise<Pair>;
}

/** Parts that the days of the first look make. */
const PARTS = 100;

/** @param candidates the base first */
export async function takeLooks(
  candidates: readonly Candidate[],
  runner: Runner,
  { level, seed, looks, habitDays, piecesPerRack, among = 1, soFar }: LookOptions,
): Promise<Looks> {
  const [base] = candidates;
  const first = looks[0];
  if (base === undefined || first === undefined)
    throw new RangeError('a comparison needs a house and at least one look');
  const options = { level, seed, piecesPerRack, partDays: Math.max(1, Math.floor(first / PARTS)) };
  const grid = habitDays > 0 ? habitGrid(base) : [];
  const choices = candidates.slice(1).filter(({ planFor }) => !planFor).length;
  const differences = among * (grid.length === 0 ? Math.max(1, choices) : 2 * choices + 1);
  const reaches = new Map<number, number>();
  const pairs = new Pairs(seed, (freedom) => {
    const reach = reaches.get(freedom) ?? reachOfMany(CONFIDENCE, differences, looks, freedom);
    reaches.set(freedom, reach);
    return reach;
  });
  const indifference = indifferenceOf(base.scenario);
  const houses = candidates.map((candidate) => new House(candidate, runner, options));
  const allowed = new Map<number, readonly number[]>();
  const look = (house: House, days: number): Promise<Evaluated> =>
    house.look(days, allowed.get(days)!);

  const seen = new Map<House, Seen>();
  const show = async (house: House, one: Evaluated): Promise<void> => {
    const base = house === houses[0] ? one : seen.get(houses[0]!)?.one;
    if (soFar === undefined || base === undefined) return;
    seen.set(house, { one, base });
    await soFar([...seen.values()]);
  };
  /** Before the others have run these days, a house is seen with the misses that it may have by itself. */
  const showEarly = async (
    house: House,
    days: number,
    misses: readonly number[],
  ): Promise<void> => {
    if (soFar !== undefined && !house.atStock)
      await show(house, await house.look(days, misses, false));
  };

  const found: Looked[] = [];
  for (const days of looks) {
    const open = houses.filter(
      (_, at) => days === first || at === 0 || found[at]!.verdict === 'open',
    );
    if (days !== first && open.length === 1) break;
    allowed.set(days, await missesOfAll(open, days, level, showEarly));
    const seenBase = await look(houses[0]!, days);
    for (const house of open) {
      const at = houses.indexOf(house);
      const one = await look(house, days);
      await show(house, one);
      const pair = at === 0 ? null : pairs.compare(seenBase, one);
      const verdict =
        pair === null || house.candidate.planFor ? null : verdictOf(pair.total, indifference);
      const byLook = [...(found[at]?.byLook ?? []), ...(pair === null ? [] : [pair])];
      found[at] = { one, base: seenBase, pair, byLook, verdict, tuned: null };
    }
  }

  const between = async (one: number, other: number): Promise<Pair> => {
    const days = Math.min(found[one]!.one.days, found[other]!.one.days);
    return pairs.compare(await look(houses[one]!, days), await look(houses[other]!, days));
  };
  if (grid.length === 0) return { houses: found, differences, indifference, pairs, between };

  // Habits are chosen on days of their own, and judged on those of the first look.
  const reading = piecesPerRack === undefined ? {} : { piecesPerRack };
  const reader = new QuickReader(runner, {
    level,
    seed: `${seed}/habits`,
    days: habitDays,
    piecesPerRack,
  });
  const tuned = new Map<number, Tuned>();
  const present = await look(houses[0]!, first);
  let ownBest = present;
  for (const [at, candidate] of candidates.entries()) {
    if (candidate.planFor) continue;
    const found = await bestHabits(candidate, grid, habitDays, reader, reading);
    const house = found === null ? houses[at]! : new House(found.candidate, runner, options);
    const one = await look(house, first);
    if (at === 0) ownBest = one;
    const against = at === 0 ? present : ownBest;
    const pair = pairs.compare(against, one);
    const verdict = verdictOf(pair.total, indifference);
    tuned.set(at, { habits: found?.habits ?? null, one, against, pair, verdict });
  }
  return {
    houses: found.map((house, at) => ({ ...house, tuned: tuned.get(at) ?? null })),
    differences,
    indifference,
    pairs,
    between,
  };
}

/** Share of the days on which all of a grid is tried, and how many of the best go on to the rest of them. */
const [FIRST_SHARE, GO_ON] = [0.4, 4];

/** Days that choosing the habits of one house takes at most. */
export const tuningDays = (points: number, days: number): number =>
  Math.ceil(points * FIRST_SHARE * days + (GO_ON + 1) * days);

/** The point of the grid at which the house costs least; null where none beats the house as it is. */
async function bestHabits(
  candidate: Candidate,
  grid: readonly Habits[],
  days: number,
  reader: QuickReader,
  reading: ReadOptions,
): Promise<{ readonly habits: Habits; readonly candidate: Candidate } | null> {
  const few = Math.max(1, Math.round(FIRST_SHARE * days));
  const tried: { habits: Habits; candidate: Candidate; total: number }[] = [];
  for (const habits of grid) {
    const there = withHabits(candidate, habits, reading);
    if (there !== null)
      tried.push({ habits, candidate: there, total: await quickTotal(there, reader, few) });
  }
  let best: { readonly habits: Habits; readonly candidate: Candidate } | null = null;
  let least = await quickTotal(candidate, reader, days);
  for (const one of tried.toSorted((a, b) => a.total - b.total).slice(0, GO_ON)) {
    const total = await quickTotal(one.candidate, reader, days);
    if (total < least) [best, least] = [one, total];
  }
  return best;
}

/**
 * As many misses in every house, by kind of day, the mean of what each may have by itself: how many that is, is known with an
 * error of its own, which so is the same on both sides of a difference. The base's own would favour a side.
 */
async function missesOfAll(
  houses: readonly House[],
  days: number,
  level: number,
  ofEach: (house: House, days: number, misses: readonly number[]) => Promise<void>,
): Promise<number[]> {
  const sums: number[] = [];
  for (const house of houses) {
    const own = (await house.peaks(days)).map((peaks) =>
      crossValidatedMisses(peaksBeyond(peaks, house.owned), house.unitCost, level),
    );
    for (const [kind, misses] of own.entries()) sums[kind] = (sums[kind] ?? 0) + misses;
    await ofEach(house, days, own.map(Math.floor));
  }
  return sums.map((sum) => Math.floor(sum / houses.length));
}
