/** Losses: exact sums, against Poisson and binomial of @stdlib, and the gamma–Poisson closed form. */
import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import poissonCdf from '@stdlib/stats-base-dists-poisson-cdf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atMost, meanOf, quantileOf, varianceOf } from '../../src/ordering/counts-of-pieces.js';
import {
  expectedLosses,
  lossDistribution,
  lossesAtMost,
  lossQuantile,
  shareFromRate,
  type LossRates,
} from '../../src/ordering/losses.js';

const none: LossRates = {
  usesADay: 0,
  perThousandUses: 0,
  walkOffPerYear: 0,
  retirementPerYear: 0,
};

describe('exact distribution of losses', () => {
  test('breakage alone is Poisson in the uses (@stdlib)', () => {
    const rates = { ...none, usesADay: 400, perThousandUses: 0.3 };
    const counts = lossDistribution(rates, 80, 90);
    for (let n = 0; n < 30; n++)
      expect(atMost(counts, n)).toBeCloseTo(poissonCdf(n, (400 * 90 * 0.3) / 1000), 11);
  });

  test('walk-off alone is binomial in the pieces held (@stdlib)', () => {
    const counts = lossDistribution({ ...none, walkOffPerYear: 0.45 }, 60, 365);
    for (let n = 0; n <= 60; n += 5)
      expect(atMost(counts, n)).toBeCloseTo(binomialCdf(n, 60, 0.45), 11);
  });

  test('over half a year a share of 45 % a year takes 1 − √0.55 of the pieces', () => {
    expect(meanOf(lossDistribution({ ...none, walkOffPerYear: 0.45 }, 100, 182.5))).toBeCloseTo(
      100 * (1 - Math.sqrt(0.55)),
      9,
    );
  });

  test('all three together: convolution by hand of @stdlib distribution functions', () => {
    const rates = {
      usesADay: 300,
      perThousandUses: 0.4,
      walkOffPerYear: 0.2,
      retirementPerYear: 0.1,
    };
    const counts = lossDistribution(rates, 50, 120);
    const mean = (300 * 120 * 0.4) / 1000;
    const leaving = 1 - (0.8 * 0.9) ** (120 / 365);
    const pmf = (n: number): number =>
      binomialCdf(n, 50, leaving) - (n === 0 ? 0 : binomialCdf(n - 1, 50, leaving));
    for (const n of [5, 14, 20, 25, 40]) {
      let sum = 0;
      for (let gone = 0; gone <= Math.min(n, 50); gone++)
        sum += pmf(gone) * poissonCdf(n - gone, mean);
      expect(atMost(counts, n)).toBeCloseTo(sum, 10);
    }
    expect(quantileOf(counts, 0.95)).toBe(lossQuantile(rates, 50, 120, 0.95));
  });

  test('the short way to "at most" agrees with the whole distribution', () => {
    fc.assert(
      fc.property(
        fc.record({
          usesADay: fc.nat(900),
          perThousandUses: fc.double({ min: 0, max: 2, noNaN: true }),
          walkOffPerYear: fc.double({ min: 0, max: 0.9, noNaN: true }),
          retirementPerYear: fc.double({ min: 0, max: 0.5, noNaN: true }),
          dispersion: fc.double({ min: 1, max: 4, noNaN: true }),
        }),
        fc.nat(120),
        fc.nat(400),
        fc.nat(90),
        (rates, held, days, most) => {
          expect(lossesAtMost(rates, held, days, most)).toBeCloseTo(
            atMost(lossDistribution(rates, held, days), most),
            10,
          );
        },
      ),
      { seed: 20, numRuns: 200 },
    );
  });

  test('expected losses by cause sum to the mean of the distribution', () => {
    const rates = {
      usesADay: 300,
      perThousandUses: 0.4,
      walkOffPerYear: 0.2,
      retirementPerYear: 0.1,
    };
    const expected = expectedLosses(rates, 50, 120);
    expect(expected.breakage + expected.walkOff + expected.retirement).toBeCloseTo(
      expected.total,
      10,
    );
    expect(meanOf(lossDistribution(rates, 50, 120))).toBeCloseTo(expected.total, 9);
  });

  test('bursts: the variance is the dispersion times the mean', () => {
    const counts = lossDistribution(
      { ...none, usesADay: 500, perThousandUses: 0.5, dispersion: 2.5 },
      0,
      60,
    );
    expect(varianceOf(counts) / meanOf(counts)).toBeCloseTo(2.5, 8);
  });

  test('a rate known from stocktakes gives the gamma–Poisson predictive: mean and variance by the closed form', () => {
    // Gelman et al., Bayesian Data Analysis: negative binomial with mean a·x/b and variance a·x/b · (1 + x/b).
    const [shape, thousandUses, ahead] = [7.5, 21, 36];
    const counts = lossDistribution(
      { ...none, usesADay: 400, perThousandUses: 99, evidence: { shape, thousandUses } },
      0,
      90,
    );
    expect(meanOf(counts)).toBeCloseTo((shape * ahead) / thousandUses, 8);
    expect(varianceOf(counts)).toBeCloseTo(
      ((shape * ahead) / thousandUses) * (1 + ahead / thousandUses),
      6,
    );
  });

  test('the workplace study of 2005 (361 losses a 100 spoon-years) leaves hardly a spoon after a year', () => {
    // Lim, Hellard & Aitken, BMJ 2005;331:1498.
    expect(shareFromRate(3.61)).toBeCloseTo(0.973, 3);
  });
});
