/**
 * What a morning's sheet is worth: how far each input moves the stock over its range (read on few days that all
 * readings share), how much of that range a morning leaves, and so how far the stock's own range shrinks. Inputs count as
 * independent and their effect as straight over the range, so squares of swings add; the study of the sheets holds
 * that against mornings that were simulated.
 */
import type { Runner } from '../../cafe/runner.js';
import { square } from '../../elementary/powers.js';
import { PARTS, ROWS, type PartId } from '../../measuring/sheet.js';
import { meanSize } from '../../measuring/tilted-sizes.js';
import { minorPerUnit } from '../../quantities/money.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';
import { valueAt } from '../../scenario/tree.js';
import { valueSize } from '../../scenario/value-size.js';
import type { Input } from '../../scenario/inputs.js';
import { QuickReader, type Quick, type QuickOptions } from '../compare/quick.js';
import type { Opened } from '../question.js';
import type { MeasurePlan, PartWorth, StockRange, Swing } from './answer.js';
import { endsOf, withInput } from './ends.js';
import { halfWidths, type HalfWidths } from './foretold.js';
import { habitReaders, type HabitReaders } from './inputs.js';

const reading = { piecesPerRack: piecesPerRackOf };
/** A part that narrows the stock's range by less is not worth a morning. */
const WORTH = 0.01;

type House = Pick<Opened, 'scenario' | 'inputs' | 'raw'>;

export interface Swings {
  readonly now: { readonly cost: number; readonly pieces: number };
  readonly swings: readonly Swing[];
}

/** Every input that has a range, or could be measured, at both its ends. */
export async function swingsOf(
  { scenario, inputs, raw }: House,
  runner: Runner,
  options: QuickOptions,
  readers: HabitReaders = habitReaders(scenario, options.seed),
): Promise<Swings> {
  const reader = new QuickReader(runner, options);
  const perUnit = minorPerUnit(scenario.currency);
  const model = compile(scenario, piecesPerRackOf);
  const told = (quick: Quick): { cost: number; pieces: number } => ({
    cost: quick.stockCost / perUnit,
    pieces: quick.stock.reduce((sum, pieces) => sum + pieces, 0),
  });
  runner.expect?.(2 * options.days * inputs.filter(({ range }) => range !== null).length);
  const now = told(await reader.read(scenario));
  const swings: Swing[] = [];
  for (const input of inputs) {
    const size = sizeOf(scenario, input);
    const [halves, halvesTwo] = [1, 2].map((mornings): HalfWidths =>
      size === null ? {} : halfWidths(input.path, size, model, readers, mornings),
    ) as [HalfWidths, HalfWidths];
    const found = endsOf(input, scenario, Object.keys(halves).length > 0);
    if (found === null) continue;
    const at: { cost: number; pieces: number; size: number | null }[] = [];
    for (const end of found.ends) {
      const house = withInput(raw, input, end, scenario.name, reading);
      at.push(
        house === null
          ? { ...now, size: null }
          : { ...told(await reader.read(house)), size: sizeOf(house, input) },
      );
    }
    const [low, high] = at as [(typeof at)[0], (typeof at)[0]];
    if (low.cost === now.cost && high.cost === now.cost && low.pieces === high.pieces) continue;
    const width = low.size === null || high.size === null ? null : Math.abs(high.size - low.size);
    const measured = input.basis === 'measured';
    swings.push({
      path: input.path,
      basis: input.basis,
      fifthOff: found.fifthOff,
      cost: [low.cost, high.cost],
      pieces: [low.pieces, high.pieces],
      leaves: measured ? {} : leavesOf(halves, width),
      leavesTwo: measured ? {} : leavesOf(halvesTwo, width),
    });
  }
  return { now, swings };
}

/** By part, the share of a range of this width that stays; parts that leave all of it are left out. */
const leavesOf = (halves: HalfWidths, width: number | null): Swing['leaves'] =>
  width === null || width === 0
    ? {}
    : Object.fromEntries(
        Object.entries(halves)
          .map(
            ([part, { half, kept }]) =>
              [
                part,
                Math.sqrt((1 - kept) * square(Math.min(1, (2 * half) / width)) + kept),
              ] as const,
          )
          .filter(([, leaves]) => leaves < 1),
      );

/** The size of an input's value, larger or smaller than others of its place: of party sizes and of laws their mean. */
function sizeOf(scenario: Scenario, { at, path }: Input): number | null {
  const { partySize, dwell } = scenario.guests;
  if (path === 'guests.partySize') return meanSize(partySize);
  if (path.startsWith('guests.dwell.bySize.')) return valueSize(dwell[Number(at.at(-1)) - 1]);
  return valueSize(valueAt(scenario, at));
}

/** Share of an input's range that stays once these parts of the sheet are filled in. */
const leavesWith =
  (parts: readonly PartId[], of: 'leaves' | 'leavesTwo') =>
  (swing: Swing): number =>
    Math.min(1, ...parts.map((part) => swing[of][part] ?? 1));

/** The stock's range with these parts filled in, on one morning or on two. */
export const rangeWith = (
  found: Swings,
  parts: readonly PartId[],
  mornings: 1 | 2 = 1,
): StockRange => rangeOf(found, leavesWith(parts, mornings === 1 ? 'leaves' : 'leavesTwo'));

/** The stock's range as the inputs leave it. @param leaves share of an input's range that stays */
export function rangeOf({ now, swings }: Swings, leaves: (swing: Swing) => number): StockRange {
  const side = (of: 'cost' | 'pieces', down: boolean): number =>
    Math.sqrt(
      swings.reduce((sum, swing) => {
        const moves = swing[of].map((end) => end - now[of]);
        const far = down ? -Math.min(0, ...moves) : Math.max(0, ...moves);
        return sum + square(far * leaves(swing));
      }, 0),
    );
  return {
    cost: now.cost,
    costLow: now.cost - side('cost', true),
    costHigh: now.cost + side('cost', false),
    pieces: now.pieces,
    piecesLow: now.pieces - side('pieces', true),
    piecesHigh: now.pieces + side('pieces', false),
  };
}

export const widthOf = ({ costLow, costHigh }: StockRange): number => costHigh - costLow;

/** Minutes of attention by part, beside the morning itself that somebody stands and tallies. Our own estimate. */
const attention = (part: PartId, scenario: Scenario, ware: number): number => {
  switch (part) {
    case 'tally':
      return Math.round(compile(scenario).closingMs / 60_000);
    case 'stays':
      return ROWS.stays;
    case 'rounds':
      return ROWS.rounds;
    case 'loads':
      return 2 * ROWS.loads;
    case 'dirty':
      return 2 * ROWS.dirty;
    case 'ware':
      return 2 * ware;
  }
};

export async function measurePlan(
  house: House,
  runner: Runner,
  options: QuickOptions,
): Promise<MeasurePlan> {
  const { scenario } = house;
  const found = await swingsOf(house, runner, options);
  const now = rangeWith(found, []);
  const worth = PARTS.map((part): PartWorth => {
    const inputs = found.swings.filter(({ leaves }) => leaves[part] !== undefined);
    return {
      part,
      narrows: widthOf(now) === 0 ? 0 : 1 - widthOf(rangeWith(found, [part])) / widthOf(now),
      inputs: inputs.map(({ path }) => path),
      minutes: attention(part, scenario, Object.keys(scenario.ware).length),
    };
  });
  const kept = worth
    .filter(({ narrows }) => narrows >= WORTH)
    .toSorted((a, b) => b.narrows - a.narrows);
  const parts = kept.map(({ part }) => part);
  const [foretold, foretoldTwo] = [rangeWith(found, parts), rangeWith(found, parts, 2)];
  const factorOf = (range: StockRange): number =>
    widthOf(now) === 0 ? 1 : widthOf(range) / widthOf(now);
  return {
    scenario: scenario.name,
    seed: options.seed,
    currency: scenario.currency,
    level: options.level,
    days: options.days,
    now,
    foretold,
    factor: factorOf(foretold),
    foretoldTwo,
    factorTwo: factorOf(foretoldTwo),
    parts: kept,
    left: PARTS.filter((part) => !parts.includes(part) && part !== 'dirty'),
    swings: found.swings.toSorted(
      (a, b) => Math.abs(b.cost[1] - b.cost[0]) - Math.abs(a.cost[1] - a.cost[0]),
    ),
  };
}
