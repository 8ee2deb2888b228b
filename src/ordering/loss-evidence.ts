/**
 * What a count says about a loss rate: the interval by itself, and the assumed rate brought up to date.
 *
 * Breakages in a known number of uses are Poisson. With a gamma law for the rate, the law after a count is
 * gamma again: shape grows by the pieces lost, evidence by the uses (A. Gelman et al., Bayesian Data
 * Analysis, chapter 2: the conjugate gamma–Poisson pair).
 */
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import { square } from '../elementary/powers.js';
import type { BreakageEvidence } from './losses.js';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * Rate per unit of exposure from a count, with the exact interval of F. Garwood (Biometrika 28, 1936):
 * each end leaves (1 − confidence) / 2 outside.
 */
export function countedRate(
  events: number,
  exposure: number,
  confidence = 0.95,
): Interval & { readonly rate: number } {
  const tail = (1 - confidence) / 2;
  return {
    rate: events / exposure,
    low: events === 0 ? 0 : gammaQuantile(tail, events, exposure),
    high: gammaQuantile(1 - tail, events + 1, exposure),
  };
}

/**
 * An assumed rate as a gamma law: the mean is the value, and its range is taken as four standard
 * deviations wide. Without a range it is held as if one breakage had been seen.
 */
export function priorOf(
  perThousandUses: number,
  range: readonly [number, number] | null,
): BreakageEvidence {
  if (!(perThousandUses > 0))
    throw new RangeError(
      `a rate of ${perThousandUses} cannot be brought up to date: give one above 0`,
    );
  const sd = range === null ? perThousandUses : (range[1] - range[0]) / 4;
  const shape = sd > 0 ? square(perThousandUses / sd) : 1;
  return { shape, thousandUses: shape / perThousandUses };
}

/** The law after `events` more pieces were lost in `thousandUses` more. */
export function updated(
  prior: BreakageEvidence,
  events: number,
  thousandUses: number,
): BreakageEvidence {
  return { shape: prior.shape + events, thousandUses: prior.thousandUses + thousandUses };
}

export interface RateBelief extends Interval {
  readonly mean: number;
  readonly sd: number;
}

/** Mean, standard deviation and central interval of the rate per 1000 uses. */
export function beliefOf({ shape, thousandUses }: BreakageEvidence, confidence = 0.95): RateBelief {
  const tail = (1 - confidence) / 2;
  return {
    mean: shape / thousandUses,
    sd: Math.sqrt(shape) / thousandUses,
    low: gammaQuantile(tail, shape, thousandUses),
    high: gammaQuantile(1 - tail, shape, thousandUses),
  };
}

/** The value below which a gamma variable with this shape and rate lies with probability `share`: by halving. */
export function gammaQuantile(share: number, shape: number, rate: number): number {
  const below = gammaCdf.factory(shape, rate);
  let [low, high] = [0, (shape + 1) / rate];
  while (below(high) < share) high *= 2;
  // Ends where the doubles do, not at a tolerance.
  for (let middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (below(middle) < share) low = middle;
    else high = middle;
  }
  return high;
}
