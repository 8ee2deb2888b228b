/** The three laws against @stdlib's distribution functions, which work by incomplete gamma and beta integrals. */
import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import poissonCdf from '@stdlib/stats-base-dists-poisson-cdf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  atMost,
  binomialCounts,
  meanOf,
  mixtureOf,
  negativeBinomialCounts,
  poissonCounts,
  quantileOf,
  sumOf,
  varianceOf,
} from '../../src/ordering/counts-of-pieces.js';

describe('against @stdlib', () => {
  test.each([0.01, 0.7, 1, 4.2, 30, 70, 900])('Poisson with mean %d', (mean) => {
    const counts = poissonCounts(mean);
    for (let n = 0; n < counts.length; n += Math.ceil(counts.length / 40))
      expect(atMost(counts, n)).toBeCloseTo(poissonCdf(n, mean), 11);
  });

  test('Poisson with mean 4000, deep in the tail, against 60-digit decimal arithmetic', () => {
    // @stdlib's own value there (1.5431e-7) is off in the third figure, so it is no judge of this one.
    expect(atMost(poissonCounts(4000), 3680) / 1.5385656296702882e-7).toBeCloseTo(1, 9);
  });

  test.each([
    [1, 0.4],
    [12, 0.03],
    [60, 0.45],
    [60, 0.97],
    [300, 0.001],
    [2000, 0.5],
  ])('binomial of %d with %d', (trials, probability) => {
    const counts = binomialCounts(trials, probability);
    for (let n = 0; n <= trials; n += Math.ceil(trials / 40))
      expect(atMost(counts, n)).toBeCloseTo(binomialCdf(n, trials, probability), 11);
  });

  // P(X ≤ k) of a negative binomial is the beta integral I_p(r, k + 1), so its quantile must give p back.
  test.each([
    [0.3, 0.5],
    [3, 2.9],
    [40, 12],
    [40, 0.8],
    [500, 25],
  ])('negative binomial with mean %d and shape %d', (mean, shape) => {
    const counts = negativeBinomialCounts(mean, shape);
    const succeeding = shape / (shape + mean);
    for (const n of [0, 1, Math.floor(mean / 2), Math.floor(mean), Math.ceil(mean * 1.5)])
      if (atMost(counts, n) > 1e-12)
        expect(betaQuantile(atMost(counts, n), shape, n + 1)).toBeCloseTo(succeeding, 8);
  });

  test('quantiles are the smallest number that @stdlib says is enough', () => {
    for (const mean of [0.2, 3, 17, 250]) {
      for (const share of [0.5, 0.9, 0.95, 0.99, 0.999]) {
        const n = quantileOf(poissonCounts(mean), share);
        expect(poissonCdf(n, mean)).toBeGreaterThanOrEqual(share);
        expect(n === 0 ? 0 : poissonCdf(n - 1, mean)).toBeLessThan(share);
      }
    }
  });
});

describe('laws', () => {
  const means = fc.double({ min: 0, max: 300, noNaN: true });

  test('probabilities sum to 1, with the mean and variance of the law', () => {
    fc.assert(
      fc.property(
        means,
        fc.double({ min: 0.3, max: 60, noNaN: true }),
        fc.nat(200),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (mean, shape, trials, probability) => {
          const laws = [
            { counts: poissonCounts(mean), mean, variance: mean },
            {
              counts: negativeBinomialCounts(mean, shape),
              mean,
              variance: mean + mean ** 2 / shape,
            },
            {
              counts: binomialCounts(trials, probability),
              mean: trials * probability,
              variance: trials * probability * (1 - probability),
            },
          ];
          for (const law of laws) {
            expect(law.counts.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 10);
            expect(Math.abs(meanOf(law.counts) - law.mean)).toBeLessThan(1e-7 * (1 + law.mean));
            expect(Math.abs(varianceOf(law.counts) - law.variance)).toBeLessThan(
              1e-6 * (1 + law.variance),
            );
          }
        },
      ),
      { seed: 20, numRuns: 200 },
    );
  });

  test('two Poisson numbers sum to a Poisson number', () => {
    fc.assert(
      fc.property(means, means, (a, b) => {
        const [sum, direct] = [sumOf(poissonCounts(a), poissonCounts(b)), poissonCounts(a + b)];
        for (let n = 0; n < direct.length; n += 7) expect(sum[n]).toBeCloseTo(direct[n]!, 11);
      }),
      { seed: 20, numRuns: 50 },
    );
  });

  test('a mixture has the mixed mean', () => {
    const mixed = mixtureOf([
      { weight: 0.25, counts: poissonCounts(2) },
      { weight: 0.75, counts: binomialCounts(40, 0.3) },
    ]);
    expect(meanOf(mixed)).toBeCloseTo(0.25 * 2 + 0.75 * 12, 10);
  });

  test('nonsense is refused', () => {
    expect(() => poissonCounts(-1)).toThrow(RangeError);
    expect(() => poissonCounts(Number.NaN)).toThrow(RangeError);
    expect(() => negativeBinomialCounts(3, 0)).toThrow(RangeError);
  });
});
