/**
 * The stock that holds the level although the inputs are not known exactly. Inputs are drawn together, each from its
 * range, and every draw has days of its own; the stock is the cheapest with which nothing runs out on the wanted
 * share of all these days, so the share counts both luck and what is not known. It is tested, like the plain stock, on
 * draws and days that played no part in the choice. Readings rest on peaks, as all quick readings do.
 */
import { square } from '../../elementary/powers.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { minorPerUnit } from '../../quantities/money.js';
import type { Runner } from '../../cafe/runner.js';
import { edited, type House } from '../../scenario/edited.js';
import { unitCosts } from '../../scenario/compile.js';
import { ownedPieces } from '../../scenario/have.js';
import type { Input } from '../../scenario/inputs.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { withRawValue } from '../../scenario/raw-paths.js';
import type { Scenario } from '../../scenario/scenario.js';
import { crossValidatedMisses } from '../../sizing/cross-validated-misses.js';
import { leastCostBeyond, peaksBeyond } from '../../sizing/least-cost-beyond.js';
import { mergePeaks, selectDays, sliceDays, type Peaks } from '../../sizing/peaks.js';
import { shareInterval } from '../../statistics/share-interval.js';
import { drawn } from '../compare/draw-inputs.js';
import { modelsOf } from '../compare/evaluate.js';
import { endsOf, SHEET_MEASURES } from '../measure/ends.js';
import type { Answer, InputsAnswer, Share } from './answer.js';

/** A multiple of 25, so that the draws are held out whole where days are dealt out in fifths. */
const DRAWS = 200;
const DAYS_EACH = 5;
/** Draws that a house cannot have are drawn again, so often at most. */
const MOST_TRIES = 20;
const reading = { piecesPerRack: piecesPerRackOf };

export interface DrawnDays {
  readonly draws?: number;
  readonly daysEach?: number;
}

/** Words such as never and atOnce are how a house is run, and in no doubt. */
const isAmount = (value: unknown): boolean => /\d/.test(JSON.stringify(value));

/** Inputs that are not known exactly, each with its ends: its range, that of its default, or a fifth off. */
export const uncertainInputs = ({ inputs, scenario }: House): Input[] =>
  inputs.flatMap((input) => {
    const measurable = SHEET_MEASURES.test(input.path) && isAmount(input.value);
    const ends = endsOf(input, scenario, measurable);
    return ends === null ? [] : [{ ...input, range: ends.ends }];
  });

/** @param answer the certified answer of this house */
export async function allowForInputs(
  house: House,
  answer: Pick<Answer, 'stock' | 'level' | 'seed' | 'spend' | 'currency'>,
  runner: Runner,
  { draws = DRAWS, daysEach = DAYS_EACH }: DrawnDays = {},
): Promise<InputsAnswer> {
  const { level, seed } = answer;
  const all = await drawnPeaks(house, runner, seed, 2 * draws, daysEach);
  const chosenOn = all.map((peaks) => sliceDays(peaks, 0, draws * daysEach));
  const fresh = all.map((peaks) => sliceDays(peaks, draws * daysEach, draws * daysEach));
  const costs = unitCosts(house.scenario);
  const owned = ownedPieces(house.scenario);
  const { stock, cost } = stockOver(chosenOn, costs, owned, level, daysEach);
  const plain = answer.stock.map(({ pieces }) => pieces);
  return {
    inputs: uncertainInputs(house).length,
    draws,
    daysEach,
    plain: heldOn(fresh, plain, daysEach),
    stock: answer.stock.map(({ ware }, at) => ({ ware, pieces: stock[at]! })),
    spend: cost / minorPerUnit(answer.currency),
    held: heldOn(fresh, stock, daysEach),
  };
}

/** Peaks with drawn inputs, by kind of day; the days of a draw stand together. */
export async function drawnPeaks(
  house: House,
  runner: Runner,
  seed: string,
  draws: number,
  daysEach: number,
): Promise<Peaks[]> {
  const stream = new Stream(streamKey(seed, 'plausible inputs'));
  const draw = houseDrawer(house);
  runner.expect?.(draws * daysEach);
  const kinds: Peaks[][] = [];
  for (let at = 0; at < draws; at += 1) {
    const models = modelsOf(draw(stream), seed, piecesPerRackOf);
    for (const [kind, { model, seed: own }] of models.entries()) {
      const task = { model, seed: own, from: at * daysEach, days: daysEach };
      const run = await runner.run({ ...task, stock: null, listed: null, byDay: false });
      (kinds[kind] ??= []).push({ days: daysEach, ware: model.ware.length, data: run.peaks });
    }
  }
  return kinds.map(mergePeaks);
}

/** Draws houses as they may be. @throws Error, when drawn, where no draw makes a house */
export function houseDrawer(house: House): (stream: Stream) => Scenario {
  const known = new Map<unknown, readonly Input[]>();
  const uncertainOf = (one: House): readonly Input[] => {
    const found = known.get(one.raw) ?? uncertainInputs(one);
    known.set(one.raw, found);
    return found;
  };
  const paths = uncertainInputs(house).map(({ path }) => path);
  return (stream) => {
    for (let tries = 0; tries < MOST_TRIES; tries += 1) {
      const ranks = new Map(paths.map((path) => [path, stream.uniform()]));
      const read = edited(
        house,
        (one) =>
          uncertainOf(one).reduce((tree, input) => {
            const rank = ranks.get(input.path);
            return rank === undefined ? tree : withRawValue(tree, input.at, drawn(input, rank));
          }, one.raw),
        house.scenario.name,
        reading,
      );
      if (read?.ok === true) return read.scenario;
    }
    throw new Error(`no house could be made from the ranges of its inputs in ${MOST_TRIES} draws`);
  };
}

/** The cheapest stock for these days of every kind, with the correction for fitting its own draws. */
export function stockOver(
  kinds: readonly Peaks[],
  costs: readonly number[],
  owned: readonly number[],
  level: number,
  daysEach: number,
): { stock: readonly number[]; cost: number } {
  const dealt = kinds.map((peaks) => byDayOfDraw(peaks, daysEach));
  return leastCostBeyond(
    dealt.map((peaks) => ({
      peaks,
      misses: crossValidatedMisses(peaksBeyond(peaks, owned), costs, level),
    })),
    costs,
    owned,
  );
}

/** The first days of all draws, then the second ones: what is held out by number is then whole draws. */
function byDayOfDraw(peaks: Peaks, daysEach: number): Peaks {
  const draws = peaks.days / daysEach;
  return selectDays(
    peaks,
    Array.from({ length: peaks.days }, (_, at) => (at % draws) * daysEach + Math.floor(at / draws)),
  );
}

/**
 * Share of days on which nothing runs out, of the kind carried least. Days of a draw are alike, so they count for
 * fewer: as many as independent days would give the same error (design effect), put into the exact interval
 * (E. Korn and B. Graubard, Survey Methodology 24, 1998).
 */
export function heldOn(kinds: readonly Peaks[], stock: readonly number[], daysEach: number): Share {
  const shares = kinds.map((peaks) => {
    const safe = Array.from({ length: peaks.days / daysEach }, (_, draw) =>
      safeDays(sliceDays(peaks, draw * daysEach, daysEach), stock),
    );
    const days = peaks.days;
    const level = safe.reduce((sum, one) => sum + one, 0) / days;
    const variance =
      safe.reduce((sum, one) => sum + square(one - level * daysEach), 0) / (safe.length - 1);
    const alone = daysEach * level * (1 - level);
    const worth = alone === 0 ? days : days / Math.max(1, variance / alone);
    const { low, high } = shareInterval(level, worth);
    return { level, low, high, confidence: 0.95 };
  });
  return shares.reduce((least, one) => (one.level < least.level ? one : least));
}

function safeDays({ days, ware, data }: Peaks, stock: readonly number[]): number {
  let safe = 0;
  for (let day = 0; day < days; day += 1)
    if (stock.every((pieces, at) => data[day * ware + at]! <= pieces)) safe += 1;
  return safe;
}
