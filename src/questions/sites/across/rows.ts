/** What one unit of a study over sites keeps: small rows, from which all that is said of the sites together is worked out. */
import type { Runner } from '../../../cafe/runner.js';
import { Stream, streamKey } from '../../../engine/streams.js';
import { minorPerUnit } from '../../../quantities/money.js';
import { piecesPerRackOf } from '../../../scenario/rack-geometry.js';
import { advise } from '../../compare/advice.js';
import type { Candidate } from '../../compare/alternatives.js';
import type { Difference, Said } from '../../compare/answer.js';
import { costOf } from '../../compare/differences.js';
import { takeLooks } from '../../compare/looks.js';
import { QuickReader } from '../../compare/quick.js';
import { readAt } from '../../compare/sensitivity.js';
import { DRAW_DAYS, HABIT_DAYS, LOOKS, SIGN_DAYS } from '../../compare/study.js';
import type { StockRange } from '../../measure/answer.js';
import { measurePlan } from '../../measure/worth.js';
import type { Opened } from '../../question.js';
import { orFailed, short, type FailedRow } from '../row.js';
import type { Base } from '../site.js';
import type { Work } from '../units.js';
import { housesOf, type SiteHouses } from './houses.js';

/** A difference to the house as it is, whole currency units. */
export interface Span {
  readonly difference: number;
  readonly low: number;
  readonly high: number;
}

export interface ComparedRow {
  readonly unit: string;
  /** Of the site as it is, on the days of the comparison. */
  readonly stockCost: number;
  /** Differences that hold together at this site. */
  readonly held: number;
  /** What is recommended here; `base`: nothing. */
  readonly best: string;
  readonly alternatives: readonly {
    readonly id: string;
    /** Null: something to plan for, which has no verdict of money. */
    readonly said: Said | null;
    readonly days: number;
    readonly total: Span;
    readonly stock: Span;
  }[];
  readonly not: SiteHouses['not'];
}

export interface DrawnRow {
  readonly unit: string;
  readonly houses: readonly string[];
  /** By draw and house: cost of the stock, and all money over the horizon; null: the inputs drawn make no valid house. */
  readonly stock: readonly (readonly (number | null)[])[];
  readonly total: readonly (readonly (number | null)[])[];
}

export interface MeasureRow {
  readonly unit: string;
  readonly now: StockRange;
  /** After a morning of measuring. */
  readonly foretold: StockRange;
  readonly parts: readonly string[];
}

export type AcrossRow = ComparedRow | DrawnRow | MeasureRow | FailedRow;

export interface AcrossOptions {
  readonly level: number | undefined;
  readonly days: number | undefined;
  /** Whether draws are met by the alternatives too. */
  readonly compare: boolean;
  /** Sites whose intervals must hold together. */
  readonly sites: number;
}

const READING_DAYS = 200;

/** Days on which a draw is read. */
export const drawDaysOf = (days: number | undefined): number =>
  Math.min(days ?? DRAW_DAYS, DRAW_DAYS);

/** Runs one unit of one site; what asks too much of a site is said in its row and stops no other. */
export function acrossRow(
  unit: string,
  work: Exclude<Work, { readonly what: 'size' }>,
  opened: Opened,
  base: Base,
  runner: Runner,
  options: AcrossOptions,
): Promise<AcrossRow> {
  return orFailed<AcrossRow>(unit, () =>
    work.what === 'draws'
      ? drawnRow(unit, work, opened, base, runner, options)
      : work.what === 'compare'
        ? comparedRow(unit, housesOf(opened, base), runner, options)
        : measureRow(unit, opened, runner, options),
  );
}

async function comparedRow(
  unit: string,
  { candidates, not }: SiteHouses,
  runner: Runner,
  { level: given, days, sites }: AcrossOptions,
): Promise<ComparedRow> {
  const { scenario } = candidates[0]!;
  const [seed, level] = [scenario.seed, given ?? scenario.level];
  const looks = days === undefined ? LOOKS : [days];
  const reading = { piecesPerRack: piecesPerRackOf };
  const found = await takeLooks(candidates, runner, {
    level,
    seed,
    looks,
    habitDays: Math.min(looks[0]!, HABIT_DAYS),
    among: sites,
    ...reading,
  });
  const quick = { level, seed, days: Math.min(looks[0]!, SIGN_DAYS), ...reading };
  const advice = await advise(candidates, found, new QuickReader(runner, quick), reading);
  const perUnit = minorPerUnit(scenario.currency);
  const span = ({ difference, low, high }: Difference): Span => ({
    difference: short(difference / perUnit),
    low: short(low / perUnit),
    high: short(high / perUnit),
  });
  return {
    unit,
    stockCost: short(costOf(found.houses[0]!.one) / perUnit),
    held: found.differences,
    best: candidates[advice.best]!.id,
    alternatives: found.houses.slice(1).map(({ one, pair }, at) => ({
      id: one.candidate.id,
      said: advice.said[at + 1] ?? null,
      days: one.days,
      total: span(pair!.total),
      stock: span(pair!.stock),
    })),
    not,
  };
}

/**
 * The rank of an input in a draw: the same at all sites, so that sums over sites can be had for errors that are alike
 * everywhere, and for others by dealing the draws of each site anew.
 */
const rankOf =
  (seed: string, draw: number) =>
  (path: string): number =>
    new Stream(streamKey(seed, `draw ${draw} of ${path}`)).uniform();

async function drawnRow(
  unit: string,
  { from, to }: { readonly from: number; readonly to: number },
  opened: Opened,
  base: Base,
  runner: Runner,
  { level, days, compare }: AcrossOptions,
): Promise<DrawnRow> {
  const { scenario } = opened;
  const houses: readonly Candidate[] = compare
    ? housesOf(opened, base).candidates.filter(({ planFor }) => !planFor)
    : housesOf(opened, { opened }).candidates;
  const perUnit = minorPerUnit(scenario.currency);
  const [stock, total]: [(number | null)[][], (number | null)[][]] = [[], []];
  for (let draw = from; draw <= to; draw += 1) {
    // Days of their own for each draw, the same for all houses of the site.
    const reader = new QuickReader(runner, {
      level: level ?? scenario.level,
      seed: `${scenario.seed}/${draw}`,
      days: drawDaysOf(days),
      piecesPerRack: piecesPerRackOf,
    });
    const found = await readAt(houses, rankOf(base.seed, draw), reader, {
      piecesPerRack: piecesPerRackOf,
    });
    stock.push(found.map((quick) => (quick === null ? null : short(quick.stockCost / perUnit))));
    total.push(found.map((quick) => (quick === null ? null : short(quick.costs.total / perUnit))));
  }
  return { unit, houses: houses.map(({ id }) => id), stock, total };
}

async function measureRow(
  unit: string,
  opened: Opened,
  runner: Runner,
  { level, days }: AcrossOptions,
): Promise<MeasureRow> {
  const { scenario } = opened;
  const { now, foretold, parts } = await measurePlan(opened, runner, {
    level: level ?? scenario.level,
    seed: scenario.seed,
    days: Math.min(days ?? READING_DAYS, READING_DAYS),
    piecesPerRack: piecesPerRackOf,
  });
  return {
    unit,
    now: shortened(now),
    foretold: shortened(foretold),
    parts: parts.map(({ part }) => part),
  };
}

const shortened = (range: StockRange): StockRange => ({
  cost: short(range.cost),
  costLow: short(range.costLow),
  costHigh: short(range.costHigh),
  pieces: short(range.pieces),
  piecesLow: short(range.piecesLow),
  piecesHigh: short(range.piecesHigh),
});
