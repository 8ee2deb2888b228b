/** Trends and kinds of day: exact cases from textbooks' formulas, and how often chance alone is taken for a trend. */
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, it } from 'vitest';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { normalQuantile } from '../../src/engine/normal.js';
import { differ, trendOf, widerSpread } from '../../src/till/trend.js';

const days = (parties: readonly number[]) =>
  parties.map((one, at) => ({ day: 7 * at, parties: one }));

describe('a trend', () => {
  it('is the least-squares line, and its chance that of Student t as @stdlib has it', () => {
    const { aWeek, shareAWeek, p } = trendOf(days([10, 12, 11, 14, 13]))!;
    expect(aWeek).toBeCloseTo(0.8, 12);
    expect(shareAWeek).toBeCloseTo(0.8 / 12, 12);
    // Slope 0.8, residual sum 3.6, error √(3.6/3/10): t = 2.3094 with 3 degrees.
    expect(tQuantile(1 - p / 2, 3)).toBeCloseTo(0.8 / Math.sqrt(3.6 / 3 / 10), 6);
  });

  it('is taken for one by chance in about one of twenty', () => {
    const stream = new Stream(streamKey('chance', 'trend'));
    const repeats = 2000;
    let found = 0;
    for (let at = 0; at < repeats; at += 1) {
      const totals = Array.from({ length: 20 }, () => 50 + 10 * normalQuantile(stream.uniform()));
      if (trendOf(days(totals))!.p < 0.05) found += 1;
    }
    // Three standard errors of 5 % on 2,000.
    expect(Math.abs(found / repeats - 0.05)).toBeLessThan(0.015);
  });

  it('needs four days that are not all one', () => {
    expect(trendOf(days([1, 2, 3]))).toBeNull();
    expect(trendOf([1, 2, 3, 4].map((parties) => ({ day: 5, parties })))).toBeNull();
  });
});

describe('kinds of day', () => {
  it('with two groups differ as Student t says', () => {
    const [a, b] = [
      [10, 12, 11, 13],
      [15, 14, 17, 16],
    ];
    const { p, means } = differ([a, b])!;
    expect(means).toEqual([11.5, 15.5]);
    // t² = F: difference 4, pooled variance 5/3.
    expect(tQuantile(1 - p / 2, 6)).toBeCloseTo(4 / Math.sqrt((5 / 3) * (2 / 4)), 6);
  });

  it('leave out groups of one, and are silent with a single group', () => {
    expect(differ([[1, 2, 3], [9]])).toBeNull();
    expect(
      differ([
        [3, 3],
        [3, 3],
      ])!.p,
    ).toBe(1);
  });
});

describe('a wider spread', () => {
  it('of a normal sample is found by chance in about one of twenty', () => {
    const stream = new Stream(streamKey('chance', 'spread'));
    const draw = (n: number, sd: number) =>
      Array.from({ length: n }, () => 50 + sd * normalQuantile(stream.uniform()));
    const share = (sd: number): number =>
      Array.from({ length: 2000 }, () => widerSpread(draw(12, 10), draw(10, sd))!).filter(
        (p) => p < 0.05,
      ).length / 2000;
    expect(Math.abs(share(10) - 0.05)).toBeLessThan(0.015);
    expect(share(30)).toBeGreaterThan(0.8);
  });
});
