/** A scenario sized on the same days every time, with how far its stock would vary on others. */
import type { Runner } from '../../cafe/runner.js';
import { looksAtTheShelf } from '../../cafe/washing/rules/in-order.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { compile, unitCosts } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';
import { resampledStocks } from '../../sizing/resampled-stocks.js';
import type { Answer } from '../size/answer.js';
import { study } from '../size/study.js';

/** Enough to know an error to about 15 %. */
const SAMPLES = 25;
/** Two-sided 95 % of a normal law. */
const WIDE = 1.96;

/** A scenario sized, and its stock on samples of its days; null where peaks do not tell the stock. */
export interface Sized {
  readonly answer: Answer;
  readonly samples: readonly (readonly number[])[] | null;
  /** Cost of a piece by ware, minor units. */
  readonly unitCosts: readonly number[];
}

export type Size = (scenario: Scenario, days: number, certifyOn?: number) => Promise<Sized>;

/** Sizes on the same days and samples every time, so that what is compared met the same guests. */
export const sizer =
  (
    runner: Runner,
    given: { readonly level: number | undefined; readonly seed: string | undefined },
  ): Size =>
  async (scenario, days, certifyOn) => {
    const { level = scenario.level, seed = scenario.seed } = given;
    const { answer } = await study(scenario, runner, {
      level,
      seed,
      days,
      ...(certifyOn === undefined ? {} : { certifyOn }),
      peaks: true,
      piecesPerRack: piecesPerRackOf,
    });
    const costs = unitCosts(scenario);
    const rows = answer.peaks!;
    if (looksAtTheShelf(compile(scenario, piecesPerRackOf)))
      return { answer, samples: null, unitCosts: costs };
    const stream = new Stream(streamKey(seed, 'guide'));
    const peaks = { days: rows.length, ware: costs.length, data: Uint16Array.from(rows.flat()) };
    return {
      answer,
      samples: resampledStocks(peaks, costs, level, SAMPLES, () => stream.uniform()),
      unitCosts: costs,
    };
  };

/** Half of the 95 % interval of a figure read off samples; null without any. */
export function halfWidth(values: readonly number[] | null): number | null {
  if (values === null) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  return WIDE * Math.sqrt(squares / (values.length - 1));
}

export const dotCost = (stock: readonly number[], costs: readonly number[]): number =>
  stock.reduce((sum, pieces, ware) => sum + pieces * costs[ware]!, 0);
