/** What moves the order: each input over its range alone, and all together. */
import { measureFirst } from '../../comparing/moves.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { minorPerUnit } from '../../quantities/money.js';
import { exactBinomialInterval } from '../../statistics/exact-binomial-interval.js';
import { rankCorrelation } from '../../statistics/rank-correlation.js';
import type { Share } from '../size/answer.js';
import type { Candidate } from './alternatives.js';
import type { MovedBy, MovesAnswer } from './answer.js';
import { extraOf } from './evaluate.js';
import { QuickReader, type Quick, type QuickOptions } from './quick.js';
import type { Input } from '../../scenario/inputs.js';
import { edited } from '../../scenario/edited.js';
import type { ReadOptions } from '../../scenario/read-scenario.js';
import type { Runner } from '../../cafe/runner.js';
import type { Scenario } from '../../scenario/scenario.js';
import { atRanks } from './draw-inputs.js';
import { spreadOf } from './spread.js';
import { written } from '../../scenario/written.js';

const ranged = ({ range }: Input): boolean => range !== null;

/** Each kind of day at the ranks of its own ranges. */
function scenarioAt(
  candidate: Candidate,
  rankOf: (path: string) => number | undefined,
  reading: ReadOptions,
): Scenario | null {
  const read = edited(
    candidate,
    ({ raw, inputs }) => atRanks(raw, inputs, rankOf),
    candidate.name,
    reading,
  );
  return read?.ok === true ? read.scenario : null;
}

/** Houses with their inputs at the same ranks; null for one that cannot have them. */
export async function readAt(
  candidates: readonly Candidate[],
  rankOf: (path: string) => number | undefined,
  reader: QuickReader,
  reading: ReadOptions,
): Promise<(Quick | null)[]> {
  const found: (Quick | null)[] = [];
  for (const candidate of candidates) {
    const scenario = scenarioAt(candidate, rankOf, reading);
    found.push(
      scenario === null ? null : await reader.read(scenario, extraOf({ ...candidate, scenario })),
    );
  }
  return found;
}

export interface Draws {
  /** Cost of the base's stock by draw, and the ranks of its inputs: ranks[draw] by path. */
  readonly stockCost: readonly number[];
  readonly ranks: readonly ReadonlyMap<string, number>[];
  /** Share of draws in which each alternative's total is below the base's. */
  readonly cheaper: ReadonlyMap<string, Share>;
}

/** All inputs together: every draw is met by the base and all alternatives on the same days. */
export async function drawInputs(
  candidates: readonly Candidate[],
  draws: number,
  runner: Runner,
  options: QuickOptions,
  reading: ReadOptions,
): Promise<Draws> {
  const paths = [
    ...new Set(candidates.flatMap(({ inputs }) => inputs.filter(ranged).map(({ path }) => path))),
  ].toSorted();
  const stream = new Stream(streamKey(options.seed, 'inputs'));
  const [stockCost, ranks]: [number[], Map<string, number>[]] = [[], []];
  const wins = new Map<string, number>();
  for (let draw = 0; draw < draws; draw += 1) {
    const rank = new Map(paths.map((path) => [path, stream.uniform()]));
    // Each draw has days of its own, the same for all alternatives.
    const reader = new QuickReader(runner, { ...options, seed: `${options.seed}/${draw}` });
    const found = await readAt(candidates, (path) => rank.get(path), reader, reading);
    candidates.forEach(({ id }, at) => {
      if (id !== 'base' || found[at] == null) return;
      stockCost.push(found[at].stockCost);
      ranks.push(rank);
    });
    const totals = found.map((quick) => quick?.costs.total ?? null);
    candidates.forEach(({ id }, at) => {
      if (totals[at] !== null && totals[0] !== null && totals[at]! < totals[0]!)
        wins.set(id, (wins.get(id) ?? 0) + 1);
    });
  }
  const cheaper = new Map(
    candidates.slice(1).map(({ id }) => {
      const { share, low, high, confidence } = exactBinomialInterval(wins.get(id) ?? 0, draws);
      return [id, { level: share, low, high, confidence }] as const;
    }),
  );
  return { stockCost, ranks, cheaper };
}

/** Each input of the base at either end of its range, the rest as written, on the same days. */
export async function whatMoves(
  base: Candidate,
  runner: Runner,
  options: QuickOptions,
  reading: ReadOptions,
  draws: Draws | null,
): Promise<MovesAnswer> {
  const reader = new QuickReader(runner, options);
  const perUnit = minorPerUnit(base.scenario.currency);
  const middle = await reader.read(base.scenario);
  const inputs: MovedBy[] = [];
  // Prices of running move the total, never the ware.
  for (const input of base.inputs.filter((one) => ranged(one) && one.at[0] !== 'costs')) {
    const ends: number[] = [];
    for (const rank of [0, 1]) {
      const scenario = scenarioAt(
        base,
        (path) => (path === input.path ? rank : undefined),
        reading,
      );
      ends.push((scenario === null ? middle : await reader.read(scenario)).stockCost / perUnit);
    }
    const found =
      draws === null
        ? null
        : rankCorrelation(
            draws.ranks.map((rank) => rank.get(input.path)!),
            draws.stockCost,
          );
    inputs.push({
      path: input.path,
      basis: input.basis,
      lowValue: written(input.range![0]),
      highValue: written(input.range![1]),
      low: ends[0]!,
      high: ends[1]!,
      correlation:
        found === null ? null : { value: found.correlation, low: found.low, high: found.high },
    });
  }
  const assumed = new Set(
    inputs.filter(({ basis }) => basis !== 'measured').map(({ path }) => path),
  );
  // Assumed inputs first, the widest swing first.
  const width = ({ low, high }: MovedBy): number => Math.abs(high - low);
  const sorted = inputs.toSorted(
    (a, b) => Number(assumed.has(b.path)) - Number(assumed.has(a.path)) || width(b) - width(a),
  );
  const spread = spreadOf((draws?.stockCost ?? []).map((cost) => cost / perUnit));
  return {
    days: options.days,
    stockCost: middle.stockCost / perUnit,
    inputs: sorted,
    withoutRange: base.inputs
      .filter(
        ({ basis, range, at: path }) =>
          basis === 'assumed' &&
          range === null &&
          ['guests', 'clearing', 'counter', 'washing', 'seats', 'arrivals', 'menu'].includes(
            String(path[0]),
          ),
      )
      .map(({ path }) => path),
    measureFirst: measureFirst(sorted, (path) => assumed.has(path)),
    draws: draws?.stockCost.length ?? 0,
    spread,
  };
}
