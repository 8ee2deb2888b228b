import { expect, it } from 'vitest';
import { betaQuantile } from '../../src/statistics/beta-quantile.js';
import { binomialAtMost } from '../../src/statistics/binomial-at-most.js';
import { binomialProbability } from '../../src/statistics/binomial-probability.js';
import { bootstrapStandardError } from '../../src/statistics/bootstrap-standard-error.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { leastSampleForBound } from '../../src/statistics/least-sample-for-bound.js';
import { logGamma } from '../../src/statistics/log-gamma.js';
import { quantileIntervalRanks } from '../../src/statistics/quantile-interval-ranks.js';
import { allowedMisses } from '../../src/statistics/quantile-of-counts.js';
import { regularisedIncompleteBeta } from '../../src/statistics/regularised-incomplete-beta.js';
import { studentTQuantile } from '../../src/statistics/student-t-quantile.js';

const bootstrap = (days: number, samples: number) =>
  bootstrapStandardError(
    days,
    (drawn) => drawn[0]!,
    samples,
    () => 0,
  );

type Call = () => unknown;

/** What each function takes, at the very ends of what it says that it takes. */
const TAKEN: readonly (readonly [Call, number | null])[] = [
  [() => binomialProbability(0, 0, 0.5), 1],
  [() => binomialProbability(1, 1, 1), 1],
  [() => binomialAtMost(0, 0, 1), 1],
  [() => bootstrap(1, 2), 0],
  [() => exactBinomialInterval(1, 1).high, 1],
  [() => quantileIntervalRanks(1, 0.5).lower, null],
  [() => allowedMisses(0, 0), 0],
  [() => allowedMisses(3, 0), 3],
  [() => allowedMisses(3, 1), 0],
  // Where every digit of b is lost beside a.
  [() => regularisedIncompleteBeta(1, 1e17, 0.5), 1],
  [() => regularisedIncompleteBeta(0, 0.5, 1e17), 0],
];

/** What lies just outside, or well. */
const OUTSIDE = [0, 1, -0.5, 1.5, Number.NaN];
const REFUSED: readonly Call[] = [
  ...[-0.5, 1.5, 2, Number.NaN].flatMap((p): Call[] => [
    () => betaQuantile(p, 1, 1),
    () => binomialAtMost(1, 2, p),
    () => binomialProbability(1, 2, p),
    () => regularisedIncompleteBeta(p, 1, 1),
    () => allowedMisses(2, p),
  ]),
  ...OUTSIDE.flatMap((p): Call[] => [
    () => exactBinomialInterval(1, 2, p),
    () => leastSampleForBound(p, 0.5),
    () => leastSampleForBound(0.5, p),
    () => quantileIntervalRanks(5, p, 0.5),
    () => quantileIntervalRanks(5, 0.5, p),
    () => studentTQuantile(p, 3),
  ]),
  ...[0, -1, Number.NaN].flatMap((shape): Call[] => [
    () => regularisedIncompleteBeta(0.5, shape, 1),
    () => regularisedIncompleteBeta(0.5, 1, shape),
    () => studentTQuantile(0.7, shape),
    () => logGamma(shape),
    () => quantileIntervalRanks(shape, 0.5),
    () => bootstrap(shape, 5),
  ]),
  ...[-1, 0.5].flatMap((count): Call[] => [
    () => binomialAtMost(0, count, 0.5),
    () => binomialProbability(0, count, 0.5),
    () => allowedMisses(count, 0.5),
    () => bootstrap(2, count),
  ]),
  () => regularisedIncompleteBeta(0, 0, 1),
  () => regularisedIncompleteBeta(1, 1, 0),
  () => exactBinomialInterval(3, 2),
  () => exactBinomialInterval(-1, 2),
  () => exactBinomialInterval(0.5, 2),
  () => bootstrap(2, 1),
];

it('takes numbers up to the ends of what is described', () => {
  for (const [call, value] of TAKEN)
    if (value === null) expect(call(), `${call}`).toBeNull();
    else expect(call(), `${call}`).toBeCloseTo(value, 12);
});

it('refuses all beyond', () => {
  for (const call of REFUSED) expect(call, `${call}`).toThrow(RangeError);
});

it('names the number that was given', () => {
  for (const p of OUTSIDE)
    expect(() => studentTQuantile(p, 3)).toThrow(`given p = ${p}, 3 degrees`);
});
