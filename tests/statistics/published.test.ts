import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import stdlibTQuantile from '@stdlib/stats-base-dists-t-quantile';
import { leastSampleForBound } from '../../src/statistics/least-sample-for-bound.js';
import { quantileIntervalRanks } from '../../src/statistics/quantile-interval-ranks.js';
import { studentTQuantile } from '../../src/statistics/student-t-quantile.js';

interface Check {
  readonly id: string;
  readonly topic: string;
  readonly inputs: {
    readonly n?: number;
    readonly p: number | readonly number[];
    readonly conf?: number;
    readonly df?: number;
  };
  readonly expected:
    | number
    | readonly number[]
    | { readonly lower: number; readonly upper: number; readonly coverage: number };
  readonly tolerance: number;
}

const checks = JSON.parse(
  readFileSync(new URL('../../shared/checks/published.json', import.meta.url), 'utf8'),
) as readonly Check[];
const ranks = checks.filter(
  (check) => check.topic === 'quantile-ci' && check.inputs.n !== undefined,
);
const bounds = checks.filter(
  (check) => check.topic === 'quantile-ci' && check.inputs.n === undefined,
);
const students = checks.filter((check) => check.topic === 'student-t');

// Conover, Practical Nonparametric Statistics, 3.2; Hahn & Meeker, Statistical Intervals, 5.2.
describe('ranks of the distribution-free interval of a quantile', () => {
  it('has its checks', () => {
    expect([ranks.length, bounds.length, students.length]).toEqual([8, 3, 6]);
  });

  it.each(ranks)('$id', ({ inputs, expected, tolerance }) => {
    const found = quantileIntervalRanks(inputs.n ?? 0, inputs.p as number, inputs.conf);
    const { lower, upper, coverage } = expected as {
      lower: number;
      upper: number;
      coverage: number;
    };
    expect(found.lower).toBe(lower);
    expect(found.upper).toBe(upper);
    expect(Math.abs(found.coverage - coverage)).toBeLessThanOrEqual(tolerance);
  });

  it('has no upper end until the largest value can be one, and no lower end below', () => {
    // 0.95ⁿ ≤ 0.025 first at n = 72: the largest value then bounds the 95 % quantile from above.
    expect(quantileIntervalRanks(71, 0.95).upper).toBeNull();
    expect(quantileIntervalRanks(72, 0.95).upper).toBe(72);
    expect(quantileIntervalRanks(10, 0.05)).toMatchObject({ lower: null });
  });
});

// Wilks, Annals of Mathematical Statistics 12 (1941).
describe('values needed for the largest to be a bound', () => {
  it.each(bounds)('$id', ({ inputs, expected }) => {
    const n = leastSampleForBound(inputs.p as number, inputs.conf);
    expect(n).toBe(expected);
  });

  it('is one where one is enough', () => {
    expect(leastSampleForBound(0.5, 0.5)).toBe(1);
    expect(leastSampleForBound(0.1, 0.5)).toBe(1);
  });

  it.each([
    [0, 0.5],
    [1, 0.5],
    [0.5, 0],
    [0.5, 1],
    [NaN, 0.5],
  ])('there is none for p = %s with confidence %s', (p, confidence) => {
    expect(() => leastSampleForBound(p, confidence)).toThrow(RangeError);
  });
});

// NIST/SEMATECH e-Handbook of Statistical Methods 1.3.6.7.2, to more digits.
describe("Student's t", () => {
  it.each(students)('$id', ({ inputs, expected, tolerance }) => {
    (inputs.p as readonly number[]).forEach((p, i) => {
      const value = (expected as readonly number[])[i] ?? Number.NaN;
      expect(Math.abs(studentTQuantile(p, inputs.df ?? 0) - value)).toBeLessThanOrEqual(
        tolerance * Math.max(1, value),
      );
    });
  });

  it('agrees with @stdlib on both sides, near the middle and at many degrees of freedom', () => {
    for (const p of [0.001, 0.3, 0.4999, 0.5, 0.50001, 0.6, 0.999999]) {
      for (const df of [1, 2.5, 30, 1e4, 1e6]) {
        const value = stdlibTQuantile(p, df);
        expect(Math.abs(studentTQuantile(p, df) - value)).toBeLessThanOrEqual(
          1e-8 * Math.max(1, Math.abs(value)),
        );
      }
    }
  });
});
