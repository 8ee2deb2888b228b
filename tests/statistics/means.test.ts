import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { sampleVariance } from 'simple-statistics';
import { bootstrapStandardError } from '../../src/statistics/bootstrap-standard-error.js';
import { integerSums, meanOfSums, mergeSums, NO_SUMS } from '../../src/statistics/integer-sums.js';
import { meanWithInterval } from '../../src/statistics/mean-with-interval.js';
import { pairedDifference } from '../../src/statistics/paired-difference.js';
import { allowedMisses, quantileOfCounts } from '../../src/statistics/quantile-of-counts.js';
import { rankCorrelation } from '../../src/statistics/rank-correlation.js';
import { uniforms } from './uniforms.js';

const FIXED = { seed: 20 };

describe('a mean with its interval', () => {
  // By hand, with t = 2.306 for 8 degrees of freedom from the table of NIST/SEMATECH e-Handbook 1.3.6.7.2.
  it('is mean ± t·s/√n', () => {
    const values = [4, 7, 5, 6, 3, 8, 5, 6, 10];
    const { mean, standardError, low, high } = meanWithInterval(values);
    expect(mean).toBe(6);
    expect(standardError).toBeCloseTo(Math.sqrt(36 / 8 / 9), 12);
    expect(low).toBeCloseTo(6 - 2.306 * Math.sqrt(0.5), 3);
    expect(high).toBeCloseTo(6 + 2.306 * Math.sqrt(0.5), 3);
  });

  it('has no ends for one value and refuses none', () => {
    expect(meanWithInterval([5])).toMatchObject({ mean: 5, low: null, high: null });
    expect(() => meanWithInterval([])).toThrow(RangeError);
  });
});

describe('exact sums', () => {
  const whole = fc.integer({ min: -2_000_000_000, max: 2_000_000_000 });

  it('of any parts, merged in any order, are the sums of the whole', () => {
    fc.assert(
      fc.property(fc.array(fc.array(whole)), fc.integer(), (parts, turn) => {
        const together = integerSums(parts.flat());
        const turned =
          parts.length === 0
            ? parts
            : [
                ...parts.slice(Math.abs(turn) % parts.length),
                ...parts.slice(0, Math.abs(turn) % parts.length),
              ];
        expect(turned.map((part) => integerSums(part)).reduce(mergeSums, NO_SUMS)).toEqual(
          together,
        );
      }),
      FIXED,
    );
  });

  it('give the mean and interval of the values', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -9999, max: 9999 }), { minLength: 2, maxLength: 50 }),
        (values) => {
          const exact = meanOfSums(integerSums(values));
          const plain = meanWithInterval(values);
          expect(exact.mean).toBeCloseTo(plain.mean, 8);
          expect(exact.low).toBeCloseTo(plain.low ?? Number.NaN, 6);
        },
      ),
      FIXED,
    );
  });

  it('keep a small variance beside a huge mean', () => {
    const values = [9e14 + 1, 9e14 + 2, 9e14 + 3];
    expect(meanOfSums(integerSums(values)).standardError).toBeCloseTo(Math.sqrt(1 / 3), 12);
  });

  it('refuse fractions', () => {
    expect(() => integerSums([0.5])).toThrow(RangeError);
  });
});

describe('paired days', () => {
  const u = uniforms(20);
  const days = Array.from({ length: 400 }, () => 100 * u());
  const other = days.map((value) => value + 2 + u());

  it('find a small difference that unpaired days would drown', () => {
    const found = pairedDifference(days, other);
    expect(found.low).toBeGreaterThan(2.4);
    expect(found.high).toBeLessThan(2.6);
    const apart = sampleVariance(days) + sampleVariance(other);
    expect(found.varianceReduction).toBeCloseTo(
      apart / sampleVariance(other.map((value, i) => value - (days[i] ?? 0))),
      6,
    );
    expect(found.varianceReduction).toBeGreaterThan(1000);
  });

  it('gain nothing when the days are independent', () => {
    const free = Array.from({ length: 4000 }, () => u());
    const unrelated = Array.from({ length: 4000 }, () => u());
    expect(pairedDifference(free, unrelated).varianceReduction).toBeCloseTo(1, 1);
  });

  it('have no factor where nothing differs, and refuse unequal days', () => {
    expect(pairedDifference([1, 2], [2, 3])).toMatchObject({
      mean: 1,
      low: 1,
      high: 1,
      varianceReduction: null,
    });
    expect(() => pairedDifference([1], [1, 2])).toThrow(RangeError);
  });
});

describe('rank correlation', () => {
  // Kendall & Gibbons, Rank Correlation Methods: rho = 1 − 6Σd²/(n³ − n) without ties.
  it('is the textbook formula without ties', () => {
    const y = [2, 1, 4, 3, 7, 5, 6, 8, 10, 9];
    const squares = y.reduce((sum, value, i) => sum + (value - i - 1) ** 2, 0);
    expect(
      rankCorrelation(
        y.map((_, i) => i),
        y,
      ).correlation,
    ).toBeCloseTo(1 - (6 * squares) / 990, 12);
  });

  it('covers the true correlation of normal pairs about as often as it says', () => {
    // Bivariate normal with correlation ρ has Spearman's (6/π)·asin(ρ/2) (Pearson 1907).
    const rho = 0.6;
    const truth = (6 / Math.PI) * Math.asin(rho / 2);
    const u = uniforms(7);
    const normal = () => Math.sqrt(-2 * Math.log(1 - u())) * Math.cos(2 * Math.PI * u());
    let covered = 0;
    for (let trial = 0; trial < 1000; trial++) {
      const x = Array.from({ length: 40 }, normal);
      const y = x.map((value) => rho * value + Math.sqrt(1 - rho * rho) * normal());
      const { low, high } = rankCorrelation(x, y);
      if ((low ?? 1) <= truth && truth <= (high ?? 0)) covered++;
    }
    // 950 expected; 4 standard errors are 28.
    expect(covered).toBeGreaterThan(922);
    expect(covered).toBeLessThan(978);
  });

  it('of values in one order, or in the opposite one, is 1 or -1 and no more, with ends around it, for any number of them', () => {
    for (let n = 4; n <= 60; n++) {
      const values = Array.from({ length: n }, (_, i) => i * i);
      for (const way of [1, -1]) {
        const found = rankCorrelation(
          values,
          values.map((value) => way * value),
        );
        const ends = [found.low!, way, found.high!].map((value) => way * value);
        expect(found.correlation).toBeCloseTo(way, 12);
        expect(Math.abs(found.correlation!)).toBeLessThanOrEqual(1);
        expect(Math.min(...ends)).toBeGreaterThan(0.9);
        expect(Math.max(...ends)).toBeLessThanOrEqual(1);
      }
    }
  });

  it('turns round with a side, stays when sides are swapped or stretched, and is wider for more confidence', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(9), fc.nat(9)), { minLength: 4, maxLength: 30 }),
        (pairs) => {
          const [x, y] = [0, 1].map((side) => pairs.map((pair) => pair[side]!));
          const found = rankCorrelation(x!, y!);
          if (found.correlation === null || Math.abs(found.correlation) > 0.999) return;
          const turned = rankCorrelation(
            x!.map((value) => -value),
            y!,
          );
          const stretched = rankCorrelation(
            y!.map((value) => value ** 3),
            x!,
          );
          expect(turned.correlation).toBeCloseTo(-found.correlation, 12);
          expect([turned.low, turned.high].map((end) => -end!)).toEqual([
            expect.closeTo(found.high!, 9),
            expect.closeTo(found.low!, 9),
          ]);
          expect(stretched.correlation).toBeCloseTo(found.correlation, 12);
          const wider = rankCorrelation(x!, y!, 0.99);
          expect(wider.low).toBeLessThan(found.low!);
          expect(wider.high).toBeGreaterThan(found.high!);
          expect(wider.low).toBeGreaterThanOrEqual(-1);
        },
      ),
      FIXED,
    );
  });

  it('is null where a side never varies', () => {
    expect(rankCorrelation([1, 1, 1, 1], [1, 2, 3, 4]).correlation).toBeNull();
    expect(rankCorrelation([], []).correlation).toBeNull();
    expect(rankCorrelation([1, 2, 3], [1, 2, 3])).toMatchObject({ correlation: 1, low: null });
  });
});

describe('quantiles of counts', () => {
  it('leave exactly the allowed number above, never more', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(40), { minLength: 1, maxLength: 200 }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (counts, level) => {
          const histogram = Array.from(
            { length: 41 },
            (_, value) => counts.filter((count) => count === value).length,
          );
          const value = quantileOfCounts(histogram, level);
          const k = allowedMisses(counts.length, level);
          expect(counts.filter((count) => count > value).length).toBeLessThanOrEqual(k);
          if (value > 0)
            expect(counts.filter((count) => count > value - 1).length).toBeGreaterThan(k);
        },
      ),
      FIXED,
    );
  });

  it('allow 1 in 20 at 0.95 in spite of floating point', () => {
    expect([20, 19, 40, 1000, 100].map((n) => allowedMisses(n, 0.95))).toEqual([1, 0, 2, 50, 5]);
    expect(allowedMisses(10, 0.9)).toBe(1);
    expect(allowedMisses(10, 0)).toBe(10);
    expect(() => allowedMisses(10, 1.2)).toThrow(RangeError);
  });
});

describe('the bootstrap', () => {
  // The mean of n values has standard error s·√((n−1)/n)/√n under resampling (Efron & Tibshirani, An Introduction to the Bootstrap, 5).
  it('finds the standard error of a mean', () => {
    const u = uniforms(3);
    const values = Array.from({ length: 300 }, u);
    const mean = (days: Int32Array) =>
      days.reduce((sum, day) => sum + (values[day] ?? 0), 0) / days.length;
    const exact = Math.sqrt((sampleVariance(values) * 299) / 300 / 300);
    const found = bootstrapStandardError(300, mean, 2000, u);
    // The relative error of 2,000 replicates is about 1/√4000 = 1.6 %.
    expect(Math.abs(found / exact - 1)).toBeLessThan(4 * 0.016);
  });

  it('refuses a single sample', () => {
    expect(() =>
      bootstrapStandardError(
        10,
        () => 0,
        1,
        () => 0,
      ),
    ).toThrow(RangeError);
  });
});
