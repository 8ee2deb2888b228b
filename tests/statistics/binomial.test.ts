import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import stdlibBetaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import stdlibBinomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import { betaQuantile } from '../../src/statistics/beta-quantile.js';
import { binomialAtMost } from '../../src/statistics/binomial-at-most.js';
import { binomialProbability } from '../../src/statistics/binomial-probability.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { exactBinomialTest } from '../../src/statistics/exact-binomial-test.js';
import { regularisedIncompleteBeta } from '../../src/statistics/regularised-incomplete-beta.js';
import { shareInterval } from '../../src/statistics/share-interval.js';

const FIXED = { seed: 20, numRuns: 200 };
const shape = fc.double({ min: 0.5, max: 5000, noNaN: true });
const chance = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });

describe('against @stdlib (general-purpose statistics library)', () => {
  it('beta quantiles agree', () => {
    fc.assert(
      fc.property(chance, shape, shape, (p, a, b) => {
        expect(betaQuantile(p, a, b)).toBeCloseTo(stdlibBetaQuantile(p, a, b), 9);
      }),
      FIXED,
    );
  });

  it('binomial probabilities agree', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5000 }),
        chance,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (n, p, share) => {
          const k = Math.floor(share * n);
          expect(binomialAtMost(k, n, p)).toBeCloseTo(stdlibBinomialCdf(k, n, p), 9);
        },
      ),
      FIXED,
    );
  });

  it('agrees at a million days too', () => {
    for (const k of [949_000, 949_800, 950_000, 950_321]) {
      expect(binomialAtMost(k, 1e6, 0.95)).toBeCloseTo(stdlibBinomialCdf(k, 1e6, 0.95), 7);
    }
    const interval = exactBinomialInterval(950_000, 1e6);
    expect(interval.low).toBeCloseTo(stdlibBetaQuantile(0.025, 950_000, 50_001), 9);
    expect(interval.high).toBeCloseTo(stdlibBetaQuantile(0.975, 950_001, 50_000), 9);
  });
});

describe('the interval of a share seen on so many days', () => {
  it('is the exact one of whole days, and lies between those of the whole numbers around it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.nat(400), (days, some) => {
        const safe = some % (days + 1);
        const { low, high } = exactBinomialInterval(safe, days);
        const found = shareInterval(safe / days, days);
        expect(found.low).toBeCloseTo(low, 9);
        expect(found.high).toBeCloseTo(high, 9);
        const more = shareInterval(safe / days, days + 0.5);
        const most = shareInterval(safe / days, days + 1);
        for (const [one, other] of [
          [found, more],
          [more, most],
        ] as const) {
          expect(other.low).toBeGreaterThanOrEqual(one.low - 1e-12);
          expect(other.high).toBeLessThanOrEqual(one.high + 1e-12);
        }
      }),
      { ...FIXED, numRuns: 60 },
    );
  });
});

describe('binomial probabilities', () => {
  it('add up to what is summed through the incomplete beta function', () => {
    for (const p of [0.003, 0.2, 0.5, 0.95]) {
      let sum = 0;
      for (let k = 0; k <= 60; k++) {
        sum += binomialProbability(k, 60, p);
        expect(binomialAtMost(k, 60, p)).toBeCloseTo(sum, 12);
      }
    }
  });

  it('are certain where p is 0 or 1', () => {
    expect([
      binomialProbability(0, 5, 0),
      binomialProbability(1, 5, 0),
      binomialProbability(5, 5, 1),
      binomialProbability(6, 5, 1),
    ]).toEqual([1, 0, 1, 0]);
  });

  it('are exact at both ends', () => {
    for (const [a, b] of [
      [0.5, 3],
      [1, 1],
      [40, 0.2],
      [1e-3, 1e4],
    ] as const)
      for (const end of [0, 1]) {
        expect(regularisedIncompleteBeta(end, a, b)).toBe(end);
        expect(betaQuantile(end, a, b)).toBe(end);
      }
  });

  it('refuse what has no probability', () => {
    expect(() => binomialProbability(0.5, 2, 0.5)).toThrow(RangeError);
    expect(() => binomialAtMost(1, 2, Number.NaN)).toThrow(RangeError);
    expect(() => regularisedIncompleteBeta(1.1, 1, 1)).toThrow(RangeError);
  });
});

describe('the exact binomial interval', () => {
  // Closed form: with none of n seen the upper end is 1 − (tail)^(1/n).
  it('has its closed form where none or all were seen', () => {
    for (const n of [1, 5, 59, 1000]) {
      const none = exactBinomialInterval(0, n);
      expect(none.low).toBe(0);
      expect(none.high).toBeCloseTo(1 - 0.025 ** (1 / n), 12);
      const all = exactBinomialInterval(n, n);
      expect(all.high).toBe(1);
      expect(all.low).toBeCloseTo(0.025 ** (1 / n), 12);
    }
  });

  // NIST/SEMATECH e-Handbook 7.2.4.1: 4 defectives in 20, two-sided 90 %; figures from memory.
  it('gives the published interval for 4 of 20', () => {
    const { low, high } = exactBinomialInterval(4, 20, 0.9);
    expect(low).toBeCloseTo(0.071354, 5);
    expect(high).toBeCloseTo(0.401029, 5);
  });

  // Its definition (Clopper & Pearson 1934), with the binomial of @stdlib.
  it('has tails of just (1 − confidence)/2 at its ends', () => {
    for (const [k, n, confidence] of [
      [3, 10, 0.95],
      [949, 1000, 0.95],
      [17, 400, 0.99],
    ] as const) {
      const { low, high } = exactBinomialInterval(k, n, confidence);
      const tail = (1 - confidence) / 2;
      expect(1 - stdlibBinomialCdf(k - 1, n, low)).toBeCloseTo(tail, 9);
      expect(stdlibBinomialCdf(k, n, high)).toBeCloseTo(tail, 9);
    }
  });

  it('mirrors successes and failures', () => {
    const seen = exactBinomialInterval(7, 90);
    const missed = exactBinomialInterval(83, 90);
    expect(seen.low).toBeCloseTo(1 - missed.high, 12);
    expect(seen.high).toBeCloseTo(1 - missed.low, 12);
  });

  it('refuses impossible counts', () => {
    expect(() => exactBinomialInterval(3, 2)).toThrow(RangeError);
    expect(() => exactBinomialInterval(0, 0)).toThrow(RangeError);
  });
});

describe('the exact binomial test', () => {
  // Definition by full enumeration, every result no likelier than the one seen.
  it('equals the sum over all results that are no likelier', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (n, p, share) => {
          const k = Math.floor(share * n);
          const limit = binomialProbability(k, n, p) * (1 + 1e-7);
          let sum = 0;
          for (let other = 0; other <= n; other++) {
            const probability = binomialProbability(other, n, p);
            if (probability <= limit) sum += probability;
          }
          expect(exactBinomialTest(k, n, p)).toBeCloseTo(Math.min(1, sum), 9);
        },
      ),
      FIXED,
    );
  });

  // Worked example in the documentation of R's binom.test (Conover, Mendel's peas: 682 of 925 at 3/4): p = 0.3825, quoted from memory.
  it('gives the published p-value for 682 of 925 at 3/4', () => {
    expect(exactBinomialTest(682, 925, 0.75)).toBeCloseTo(0.3825, 4);
  });

  // The sum of both tails is the sum of all chances here, and passes 1 by rounding.
  it('is just 1 where no result is likelier than the one seen', () => {
    for (const trials of [23, 33])
      for (const successes of [(trials - 1) / 2, (trials + 1) / 2])
        expect(exactBinomialTest(successes, trials, 0.5)).toBe(1);
  });

  // As R's binom.test has it: relErr = 1 + 1e-7, from memory. At p, 7 of 10 is likelier than 3 of 10 by 5 parts in 10⁸.
  it('takes two results for equally likely whose chances differ by less than one part in 10⁷', () => {
    for (const sign of [1, -1])
      expect(exactBinomialTest(5 - 2 * sign, 10, 0.5 + (sign * 5e-8) / 16)).toBeCloseTo(0.34375, 6);
    expect(exactBinomialTest(3, 10, 0.5 + 2e-6)).toBeCloseTo(0.2265625, 4);
  });

  it('stays right in far tails', () => {
    expect(exactBinomialTest(0, 1000, 0.05)).toBeGreaterThan(0);
    expect(exactBinomialTest(0, 1000, 0.05)).toBeLessThan(1e-20);
    expect(exactBinomialTest(1000, 1000, 0.95)).toBeCloseTo(exactBinomialTest(0, 1000, 0.05), 25);
    expect(exactBinomialTest(50, 1000, 0.05)).toBe(1);
  });
});
