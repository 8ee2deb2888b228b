/**
 * Exact distributions of a number of pieces: probabilities of 0, 1, 2 ... in an array.
 *
 * All three laws are built outward from their most likely value by the ratio of neighbours and then
 * scaled to sum to 1, so nothing underflows at large means and no gamma function is needed. The upper
 * tail is cut where it is lighter than 1e-18 of the peak.
 */
import { square } from '../elementary/powers.js';

/** `probabilities[n]` is the probability of exactly n pieces; they sum to 1. */
export type PieceCounts = readonly number[];

const NEGLIGIBLE = 1e-18;
/** No café loses more pieces than this; it stops a nonsensical rate from filling memory. */
const MOST_PIECES = 2_000_000;

/** Poisson with the given mean (≥ 0). */
export function poissonCounts(mean: number): PieceCounts {
  requireFinite(mean, 'mean');
  return outward(Math.floor(mean), (n) => mean / n, MOST_PIECES);
}

/** Binomial: of `trials` pieces (a whole number) each is lost with the given probability. */
export function binomialCounts(trials: number, probability: number): PieceCounts {
  requireFinite(trials, 'trials');
  requireFinite(probability, 'probability');
  if (probability >= 1) return [...Array.from({ length: trials }, () => 0), 1];
  const odds = probability / (1 - probability);
  const mode = Math.min(trials, Math.floor((trials + 1) * probability));
  return outward(mode, (n) => ((trials - n + 1) / n) * odds, trials);
}

/**
 * Negative binomial by mean and shape: Poisson whose own mean is gamma with that shape, so the variance
 * is mean + mean² / shape. An infinite shape is Poisson.
 */
export function negativeBinomialCounts(mean: number, shape: number): PieceCounts {
  if (shape === Infinity) return poissonCounts(mean);
  requireFinite(mean, 'mean');
  if (!(shape > 0))
    throw new RangeError(`the shape of a negative binomial is above 0, not ${shape}`);
  const failing = mean / (mean + shape);
  const mode = shape > 1 ? Math.floor(((shape - 1) * failing) / (1 - failing)) : 0;
  return outward(mode, (n) => ((n + shape - 1) / n) * failing, MOST_PIECES);
}

/** Builds a law from its mode; `ratio(n)` is P(n) / P(n − 1). */
function outward(mode: number, ratio: (n: number) => number, most: number): PieceCounts {
  const below: number[] = [];
  for (let n = mode, weight = 1; n > 0; n--) {
    weight /= ratio(n);
    below.push(weight);
  }
  const weights = below.reverse();
  weights.push(1);
  for (let n = mode + 1, weight = 1; n <= most; n++) {
    weight *= ratio(n);
    if (!(weight > NEGLIGIBLE)) break;
    weights.push(weight);
  }
  return scaled(weights);
}

/** The sum of two independent numbers of pieces. */
export function sumOf(a: PieceCounts, b: PieceCounts): PieceCounts {
  const total = Array.from({ length: a.length + b.length - 1 }, () => 0);
  a.forEach((p, i) => {
    if (p === 0) return;
    for (let j = 0; j < b.length; j++) total[i + j]! += p * b[j]!;
  });
  return total;
}

/** One of several laws, chosen with the given weights (which sum to 1). */
export function mixtureOf(
  parts: readonly { readonly weight: number; readonly counts: PieceCounts }[],
): PieceCounts {
  const total = Array.from(
    { length: Math.max(...parts.map((part) => part.counts.length)) },
    () => 0,
  );
  for (const { weight, counts } of parts) counts.forEach((p, n) => (total[n]! += weight * p));
  return total;
}

/** Probability of at most n pieces. */
export function atMost(counts: PieceCounts, n: number): number {
  if (n < 0) return 0;
  if (n >= counts.length - 1) return 1;
  let sum = 0;
  for (let i = 0; i <= n; i++) sum += counts[i]!;
  return Math.min(1, sum);
}

/** Smallest n with P(at most n) ≥ share. The sum runs from the tail above a half, where little is left to lose. */
export function quantileOf(counts: PieceCounts, share: number): number {
  let above = 0;
  let n = counts.length - 1;
  while (n > 0 && above + counts[n]! <= 1 - share) above += counts[n--]!;
  return n;
}

/** Mean number of pieces. */
export function meanOf(counts: PieceCounts): number {
  return counts.reduce((sum, p, n) => sum + p * n, 0);
}

/** Variance of the number of pieces. */
export function varianceOf(counts: PieceCounts): number {
  const mean = meanOf(counts);
  return counts.reduce((sum, p, n) => sum + p * square(n - mean), 0);
}

function scaled(weights: readonly number[]): PieceCounts {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

function requireFinite(value: number, name: string): void {
  if (!(value >= 0 && value < MOST_PIECES))
    throw new RangeError(
      `the ${name} of a number of pieces is from 0 to ${MOST_PIECES}, not ${value}`,
    );
}
