/**
 * Which law measured times follow: lognormal, gamma and exponential by maximum likelihood, the one with the smallest
 * AICc taken (C. Hurvich and C.-L. Tsai, Biometrika 76, 1989), and a test of how well it fits.
 */
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import { exp } from '../elementary/exp.js';
import { log, log1p } from '../elementary/log.js';
import { square } from '../elementary/powers.js';
import { Duration, type DurationLaw } from '../engine/durations.js';
import { Stream, streamKey } from '../engine/streams.js';
import { logGamma } from '../statistics/log-gamma.js';
import { climb } from './climb.js';

export const LAWS = ['lognormal', 'gamma', 'exponential'] as const;
export type LawName = (typeof LAWS)[number];

export interface Law {
  readonly law: LawName;
  readonly mean: number;
  /** Standard deviation over mean. */
  readonly cv: number;
}

export interface FittedLaw extends Law {
  readonly aicc: number;
}

export interface LawFit {
  /** The law with the smallest AICc. */
  readonly chosen: FittedLaw;
  /** All three, the best first. */
  readonly tried: readonly FittedLaw[];
  /** Largest distance between the fitted and the observed distribution, and the chance of one as large; null where nobody asked. */
  readonly fit: { readonly distance: number; readonly p: number } | null;
}

const HALF_LOG_TWO_PI = 0.9189385332046728;
const SAMPLES = 199;
/** Drawn in whole milliseconds, so that a unit is fine enough. */
const FINE = 1e6;

/** Chance of a time of at most `x`. */
export function lawCdf({ law, mean, cv }: Law, x: number): number {
  if (x <= 0) return 0;
  if (law === 'exponential') return 1 - exp(-x / mean);
  if (law === 'gamma') return gammaCdf(x, 1 / square(cv), 1 / (mean * square(cv)));
  const spread = log1p(square(cv));
  return lognormalCdf(x, log(mean) - spread / 2, Math.sqrt(spread));
}

/** Logarithm of the density at `x` above 0. */
export function logDensity({ law, mean, cv }: Law, x: number): number {
  if (law === 'exponential') return -log(mean) - x / mean;
  if (law === 'gamma') {
    const shape = 1 / square(cv);
    const scale = mean * square(cv);
    return (shape - 1) * log(x) - x / scale - shape * log(scale) - logGamma(shape);
  }
  const spread = log1p(square(cv));
  const off = log(x) - log(mean) + spread / 2;
  return -log(x) - log(spread) / 2 - HALF_LOG_TWO_PI - square(off) / (2 * spread);
}

const logLikelihood = (law: Law, times: readonly number[]): number =>
  times.reduce((sum, x) => sum + logDensity(law, x), 0);

/** The law of this name that makes the times likeliest. */
export function likeliest(law: LawName, times: readonly number[]): FittedLaw {
  const n = times.length;
  const mean = times.reduce((sum, x) => sum + x, 0) / n;
  const aicc = (found: Law, parameters: number): number =>
    -2 * logLikelihood(found, times) +
    2 * parameters +
    (2 * parameters * (parameters + 1)) / Math.max(1, n - parameters - 1);
  if (law === 'exponential') {
    const found = { law, mean, cv: 1 };
    return { ...found, aicc: aicc(found, 1) };
  }
  const at = ([logMean, logCv]: readonly number[]): Law => ({
    law,
    mean: exp(logMean!),
    cv: exp(Math.max(log(0.01), Math.min(log(4), logCv!))),
  });
  const found = at(
    climb((point) => logLikelihood(at(point), times), [log(mean), log(spreadOf(times) ?? 0.5)]),
  );
  return { ...found, aicc: aicc(found, 2) };
}

/** Standard deviation over mean; null below two values or without a spread. */
export function spreadOf(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  const sd = Math.sqrt(values.reduce((sum, x) => sum + square(x - mean), 0) / (values.length - 1));
  return sd > 0 && mean > 0 ? sd / mean : null;
}

/**
 * @param seed of the samples that the test of the fit draws; null: the fit is not tested
 * @throws RangeError for fewer than three times, a time that is not above 0, or no spread
 */
export function fitLaw(times: readonly number[], seed: string | null): LawFit {
  if (times.length < 3 || times.some((x) => !(x > 0)))
    throw new RangeError('a law needs at least three times, all above 0');
  if (spreadOf(times) === null) throw new RangeError('all times are the same');
  const tried = LAWS.map((law) => likeliest(law, times)).toSorted((a, b) => a.aicc - b.aicc);
  const chosen = tried[0]!;
  return {
    chosen,
    tried,
    fit: seed === null ? null : fitTest(chosen, times, seed),
  };
}

/**
 * The Kolmogorov-Smirnov distance, and its chance by samples drawn from the fitted law and fitted alike, as the usual
 * tables do not hold where the law was fitted to the same times (H. Lilliefors, JASA 62, 1967).
 */
function fitTest(
  law: FittedLaw,
  values: readonly number[],
  seed: string,
): { distance: number; p: number } {
  const distance = distanceOf(law, values);
  const draw = new Duration(durationLawOf(law, FINE / law.mean));
  const stream = new Stream(streamKey(seed, 'fit of a law'));
  let asFar = 0;
  for (let sample = 0; sample < SAMPLES; sample += 1) {
    const drawn = values.map(() => (Math.max(1, draw.draw(stream)) * law.mean) / FINE);
    const own = likeliest(law.law, drawn);
    if (distanceOf(own, drawn) >= distance) asFar += 1;
  }
  return { distance, p: (asFar + 1) / (SAMPLES + 1) };
}

function distanceOf(law: Law, values: readonly number[]): number {
  const n = values.length;
  return Math.max(
    ...values
      .toSorted((a, b) => a - b)
      .map((x, at) => {
        const below = lawCdf(law, x);
        return Math.max((at + 1) / n - below, below - at / n);
      }),
  );
}

/** The law for drawing. @param msAUnit milliseconds in the unit of its mean */
export const durationLawOf = ({ law, mean, cv }: Law, msAUnit: number): DurationLaw =>
  law === 'exponential'
    ? { law, meanMs: mean * msAUnit }
    : { law, meanMs: mean * msAUnit, sdMs: cv * mean * msAUnit };
