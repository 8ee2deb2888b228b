import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { betaQuantile } from '../../src/statistics/beta-quantile.js';
import { binomialAtMost } from '../../src/statistics/binomial-at-most.js';
import { binomialProbability } from '../../src/statistics/binomial-probability.js';
import { bootstrapStandardError } from '../../src/statistics/bootstrap-standard-error.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { exactBinomialTest } from '../../src/statistics/exact-binomial-test.js';
import { holm } from '../../src/statistics/holm.js';
import { integerSums, meanOfSums, mergeSums } from '../../src/statistics/integer-sums.js';
import { leastSampleForBound } from '../../src/statistics/least-sample-for-bound.js';
import { logGamma } from '../../src/statistics/log-gamma.js';
import { meanWithInterval } from '../../src/statistics/mean-with-interval.js';
import { pairedDifference } from '../../src/statistics/paired-difference.js';
import { quantileIntervalRanks } from '../../src/statistics/quantile-interval-ranks.js';
import { allowedMisses, quantileOfCounts } from '../../src/statistics/quantile-of-counts.js';
import { rankCorrelation } from '../../src/statistics/rank-correlation.js';
import { regularisedIncompleteBeta } from '../../src/statistics/regularised-incomplete-beta.js';
import { shareInterval } from '../../src/statistics/share-interval.js';
import { studentTQuantile } from '../../src/statistics/student-t-quantile.js';
import known from './known-values.json' with { type: 'json' };
import { uniforms } from '../sizing/days.js';

const SHARES = [0, 1e-12, 0.02, 0.3, 0.5, 0.81, 0.975, 1];
const INSIDE = SHARES.slice(1, -1);
const SHAPES = [0.5, 1, 3.2, 40, 900];
const FIRST = [3, 1, 4, 1, 5, 9, 2, 6, 5, 3];
const SECOND = [2, 7, 1, 8, 2, 8, 1, 8, 2, 8];
const counted = [0, 1, 2, 7, 19, 20].map((successes) => ({ successes, trials: 20 }));
const each = <One>(of: readonly One[], value: (one: One) => unknown): unknown[] => of.map(value);

const VALUES: Record<string, () => unknown> = {
  // So many, as the last terms of the series show in one argument of hundreds, and the very last in one of a thousand just above 16.
  'the gamma function': () => [
    each([1e-9, 0.5, 1, 2, 7.5, 15.9, 1e6], logGamma),
    Array.from({ length: 4000 }, (_, i) => logGamma(16 + i / 1000)),
    Array.from({ length: 4000 }, (_, i) => logGamma(16 + i / 40_000)),
  ],
  'the incomplete beta function': () =>
    each(SHARES, (x) =>
      each(SHAPES, (a) => each(SHAPES, (b) => regularisedIncompleteBeta(x, a, b))),
    ),
  'its quantile': () =>
    each([0, 0.02, 0.81, 1], (p) => each(SHAPES, (a) => betaQuantile(p, a, SHAPES[1]! + a / 3))),
  'binomial chances': () =>
    each(SHARES, (p) =>
      each([-1, 0, 3, 19, 20, 21], (count) => [
        binomialAtMost(count, 20, p),
        binomialProbability(count, 20, p),
        binomialProbability(count * 40, 800, p),
      ]),
    ),
  'intervals of a share': () =>
    each(counted, ({ successes, trials }) => [
      exactBinomialInterval(successes, trials),
      exactBinomialInterval(successes, trials, 0.8),
      shareInterval(successes / trials, trials * 1.3),
    ]),
  'tests of a share': () =>
    each(counted, ({ successes, trials }) =>
      each([0.05, 0.35, 0.5, 0.93], (p) => exactBinomialTest(successes, trials, p)),
    ),
  'several tests at once': () =>
    each([0.05, 0.2], (alpha) => holm([0.02, 0.0125, 0.2, 0.016, 0.0166, 0.05], alpha)),
  'sample sizes': () =>
    each(INSIDE.slice(1), (p) => each([0.5, 0.95], (c) => leastSampleForBound(p, c))),
  'ranks of a quantile': () =>
    each([1, 10, 59, 1000], (n) =>
      each([0.3, 0.5, 0.95], (p) => each([0.5, 0.95], (c) => quantileIntervalRanks(n, p, c))),
    ),
  'quantiles of counts': () =>
    each([0, 0.3, 0.5, 0.9, 0.95, 1], (p) => [
      quantileOfCounts([3, 0, 1, 8, 8, 0, 20], p),
      allowedMisses(20, p),
      allowedMisses(0, p),
    ]),
  'quantiles of Student': () =>
    each(INSIDE, (p) => each([0.7, 1, 2, 30, 1e5], (degrees) => studentTQuantile(p, degrees))),
  means: () => {
    const sums = mergeSums(integerSums(FIRST), integerSums(SECOND.slice(2)));
    return [
      { ...sums, squares: `${sums.squares}`, sum: `${sums.sum}` },
      meanOfSums(sums),
      meanOfSums(integerSums([4])),
      meanOfSums(integerSums([4, 9]), 0.8),
      meanWithInterval(FIRST),
      meanWithInterval([3]),
      meanWithInterval([3, 5], 0.99),
      pairedDifference(FIRST, SECOND),
      pairedDifference([1], [2]),
      pairedDifference([1, 2], [2, 3]),
    ];
  },
  'correlations of ranks': () => [
    rankCorrelation(FIRST, SECOND),
    rankCorrelation(FIRST, FIRST, 0.8),
    rankCorrelation([1, 2, 3], [3, 1, 2]),
    rankCorrelation([1], [2]),
    rankCorrelation([1, 1], [1, 2]),
    rankCorrelation([1, 2, 3, 4], [1, 3, 2, 4]),
  ],
  'errors of the bootstrap': () =>
    bootstrapStandardError(
      10,
      (days) => days.reduce((sum, day) => sum + FIRST[day]!, 0),
      20,
      uniforms('known'),
    ),
};

// Not a proof that a value is right, which the published tables and libraries beside them are for: the same bytes everywhere are part of
// what is promised, and this sees a change of the last digit. Whoever means to make one writes the digests that this prints into known-values.json.
it.each(Object.keys(VALUES))('%s: as it was', (name) => {
  const digest = createHash('sha256').update(JSON.stringify(VALUES[name]!())).digest('hex');
  expect(digest.slice(0, 16)).toBe((known as Record<string, string>)[name]);
});

it('has a digest for each', () => {
  expect(Object.keys(known)).toEqual(Object.keys(VALUES));
});
