/**
 * Differences under the same days, with errors from a bootstrap of whole days.
 *
 * The cost of a stock is an optimum over the sample, no mean of days, and running costs come from the same days. So
 * whole days are drawn again (in small parts, the same parts for every house), in each draw the stock is chosen
 * anew with as many misses as the choice really had, racks too, and running costs added from the very same days; the
 * standard error is the spread of the difference over draws (B. Efron, Annals of Statistics 7, 1979; B. Efron and R. J.
 * Tibshirani, "An Introduction to the Bootstrap", 1993, chapter 6). It is known the worse the fewer days decide the
 * stock, so Student's t has as many degrees of freedom as days that may be missed; fewer where the draws or
 * parts are fewer. That is our choice, held by the study of equal houses (tests/studies).
 */
import { mergeDays } from '../../cafe/rush.js';
import { sampleStandardDeviation, sampleVariance } from 'simple-statistics';
import { square } from '../../elementary/powers.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { meanOverKinds } from '../../scenario/kinds.js';
import { leastCostBeyond } from '../../sizing/least-cost-beyond.js';
import { selectDays } from '../../sizing/peaks.js';
import { allowedMisses, exceededByAtMost } from '../../statistics/quantile-of-counts.js';
import { studentTQuantile } from '../../statistics/student-t-quantile.js';
import type { Difference } from './answer.js';
import { runningWorth, standingWorth, type Evaluated } from './evaluate.js';

export const SAMPLES = 60;
/** Parts that the bound of the search is worked out on: coarse is enough for an error. */
const PARTS = 50;
export const CONFIDENCE = 0.95;

interface Resampled {
  readonly total: readonly number[];
  readonly stock: readonly number[];
}

export interface Pair {
  /** The ware alone, and all money over the horizon; minor units, second − first. */
  readonly stock: Difference;
  readonly total: Difference;
  readonly error: number;
  readonly freedom: number;
}

/** Compares any two houses seen on as many days, each draw of days being made once for all of them. */
export class Pairs {
  private readonly known = new WeakMap<Evaluated, Resampled>();

  constructor(
    private readonly seed: string,
    /** Standard errors that an interval of the total reaches, by degrees of freedom. */
    private readonly reach: (freedom: number) => number,
  ) {}

  /** @throws RangeError for houses seen on different days */
  compare(first: Evaluated, second: Evaluated): Pair {
    if (first.days !== second.days)
      throw new RangeError(`pairs need the same days; given ${first.days} and ${second.days}`);
    const [one, other] = [this.drawn(first), this.drawn(second)];
    const freedom = Math.max(
      1,
      Math.min(
        SAMPLES - 1,
        first.kinds[0]!.parts.length - 1,
        allowedMisses(first.days, first.level),
      ),
    );
    const single = studentTQuantile((1 + CONFIDENCE) / 2, freedom);
    const between = (
      a: readonly number[],
      b: readonly number[],
      difference: number,
      wide: number,
    ): Difference & { error: number } => {
      const differences = a.map((value, draw) => b[draw]! - value);
      const error = sampleStandardDeviation(differences);
      const shared = square(error);
      return {
        difference,
        low: difference - wide * error,
        high: difference + wide * error,
        alone: { low: difference - single * error, high: difference + single * error },
        confidence: CONFIDENCE,
        varianceCut:
          shared === 0 ? null : (sampleVariance([...a]) + sampleVariance([...b])) / shared,
        error,
      };
    };
    const stock = costOf(second) - costOf(first);
    const money = second.costs.total - first.costs.total;
    const { error, ...total } = between(one.total, other.total, money, this.reach(freedom));
    const { error: _, ...ofStock } = between(one.stock, other.stock, stock, single);
    return { stock: ofStock, total, error, freedom };
  }

  private drawn(one: Evaluated): Resampled {
    const known = this.known.get(one);
    if (known !== undefined) return known;
    const { kinds, unitCost, owned, model, level } = one;
    const stream = new Stream(streamKey(this.seed, `paired-days/${one.days}`));
    const runs = kinds.map((kind) => ({
      ...kind,
      running: kind.parts.map((part) => runningWorth(one, kind, part)),
      rackPeaks: mergeDays(kind.parts).rackPeaks,
      // Parts have equally many days, but perhaps the last.
      drawn: new Int32Array(kind.parts.length * kind.parts[0]!.days),
    }));
    const rackKinds = model.rackKinds.length;
    const found = Array.from({ length: SAMPLES }, () => {
      const chosen = runs.map(({ parts, running, drawn }) => {
        let [days, run] = [0, 0];
        for (let draw = 0; draw < parts.length; draw += 1) {
          const at = Math.floor(stream.uniform() * parts.length);
          const part = parts[at]!;
          run += running[at]! * part.days;
          for (let day = 0; day < part.days; day += 1) drawn[days++] = part.from + day;
        }
        return { days: drawn.subarray(0, days), run: run / days };
      });
      const again = leastCostBeyond(
        runs.map(({ peaks, misses }, at) => ({
          peaks: selectDays(peaks, chosen[at]!.days),
          misses,
        })),
        unitCost,
        owned,
        { parts: PARTS },
      );
      const racks = model.rackKinds.map(({ id }, rack) => ({
        kind: id,
        racks: Math.max(
          ...runs.map(({ rackPeaks }, at) => {
            const { days } = chosen[at]!;
            return enoughOn(rackPeaks, days, rackKinds, rack, allowedMisses(days.length, level));
          }),
        ),
      }));
      return {
        stock: again.cost,
        total:
          standingWorth(one, again.stock, racks) + meanOverKinds(kinds, (at) => chosen[at]!.run),
      };
    });
    const resampled = {
      total: found.map(({ total }) => total),
      stock: found.map(({ stock }) => stock),
    };
    this.known.set(one, resampled);
    return resampled;
  }
}

/** Racks of a kind that are enough on all but `above` of the days. */
function enoughOn(
  peaks: Uint16Array,
  days: Int32Array,
  kinds: number,
  kind: number,
  above: number,
): number {
  const counts: number[] = [];
  for (const day of days) {
    const racks = peaks[day * kinds + kind]!;
    while (counts.length <= racks) counts.push(0);
    counts[racks] = counts[racks]! + 1;
  }
  return exceededByAtMost(counts, above);
}

/** What of the stock is still to be paid, minor units. */
export const costOf = ({
  stock,
  owned,
  unitCost,
}: Pick<Evaluated, 'stock' | 'owned' | 'unitCost'>): number =>
  stock.reduce((sum, pieces, ware) => sum + (pieces - owned[ware]!) * unitCost[ware]!, 0);
