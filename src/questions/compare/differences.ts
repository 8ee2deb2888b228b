/**
 * Differences under the same days. The cost of a stock is a function of the whole sample, so its error is
 * bootstrapped: the same days are drawn for every alternative. Running costs are means a day, so theirs comes
 * from batches of days, the same in every alternative. The two are added as if independent.
 */
import { sampleVariance } from 'simple-statistics';
import { square } from '../../elementary/powers.js';
import { annuityFactor } from '../../comparing/annuity.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { normalQuantile } from '../../engine/normal.js';
import { leastCostStock } from '../../sizing/least-cost-stock.js';
import { selectDays, sliceDays } from '../../sizing/peaks.js';
import { allowedMisses } from '../../statistics/quantile-of-counts.js';
import { studentTQuantile } from '../../statistics/student-t-quantile.js';
import { frameOf } from './costs.js';
import type { Difference } from './answer.js';
import type { Evaluated } from './evaluate.js';

const SAMPLES = 30;
/** Parts that the bound of the search is worked out on: coarse is enough for an error. */
const PARTS = 50;
const CONFIDENCE = 0.95;

export interface Pair {
  readonly stock: Difference;
  readonly total: Difference;
  readonly totalError: number;
}

/** Compares any two of the alternatives, each sample of days being drawn once for all of them. */
export class Pairs {
  private readonly samples = new Map<string, readonly number[]>();

  constructor(
    private readonly seed: string,
    private readonly level: number,
  ) {}

  /** Minor units throughout: second − first. */
  compare(first: Evaluated, second: Evaluated): Pair {
    const days = Math.min(first.peaks.days, second.peaks.days);
    const [one, other] = [this.stockCosts(first, days), this.stockCosts(second, days)];
    const stockShared = sampleVariance(one.map((cost, i) => other[i]! - cost));
    const stockApart = sampleVariance([...one]) + sampleVariance([...other]);
    const stockDifference = costOf(second) - costOf(first);
    const frame = frameOf(first.candidate.scenario);
    const years = annuityFactor(frame.discount, frame.horizonYears);
    const count = Math.min(first.yearByBatch.length, second.yearByBatch.length);
    const [oneYear, otherYear] = [
      first.yearByBatch.slice(0, count),
      second.yearByBatch.slice(0, count),
    ];
    const runShared =
      count < 2
        ? 0
        : (sampleVariance(oneYear.map((cost, i) => otherYear[i]! - cost)) / count) * square(years);
    const runApart =
      count < 2
        ? 0
        : ((sampleVariance(oneYear) + sampleVariance(otherYear)) / count) * square(years);
    const reach = normalQuantile((1 + CONFIDENCE) / 2);
    const wide = count < 2 ? reach : studentTQuantile((1 + CONFIDENCE) / 2, count - 1);
    const shared = stockShared + runShared;
    return {
      stock: interval(stockDifference, Math.sqrt(stockShared), reach, stockApart, stockShared),
      total: interval(
        second.costs.total - first.costs.total,
        Math.sqrt(shared),
        wide,
        stockApart + runApart,
        shared,
      ),
      totalError: Math.sqrt(shared),
    };
  }

  /** Cost of the cheapest stock on each sample of the first `days` days. */
  private stockCosts({ candidate, peaks, unitCost }: Evaluated, days: number): readonly number[] {
    const key = `${candidate.id}\u0000${days}`;
    const known = this.samples.get(key);
    if (known !== undefined) return known;
    const seen = sliceDays(peaks, 0, days);
    const stream = new Stream(streamKey(this.seed, 'paired-days'));
    const k = allowedMisses(days, this.level);
    const costs = Array.from({ length: SAMPLES }, () => {
      const drawn = Int32Array.from({ length: days }, () => Math.floor(stream.uniform() * days));
      return leastCostStock(selectDays(seen, drawn), unitCost, k, { parts: PARTS }).cost;
    });
    this.samples.set(key, costs);
    return costs;
  }
}

export const costOf = ({ stock, unitCost }: Pick<Evaluated, 'stock' | 'unitCost'>): number =>
  stock.reduce((sum, pieces, ware) => sum + pieces * unitCost[ware]!, 0);

const interval = (
  difference: number,
  error: number,
  reach: number,
  apart: number,
  shared: number,
): Difference => ({
  difference,
  low: difference - reach * error,
  high: difference + reach * error,
  confidence: CONFIDENCE,
  varianceCut: shared === 0 ? null : apart / shared,
});
