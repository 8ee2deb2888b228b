import exponentialCdf from '@stdlib/stats-base-dists-exponential-cdf';
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import { describe, expect, it } from 'vitest';
import {
  Duration,
  meanMs,
  standardGamma,
  wholeMs,
  type DurationLaw,
} from '../../src/engine/durations.js';
import { Stream, streamKey } from '../../src/engine/streams.js';

const DRAWS = 100_000;
/** Kolmogorov distance that a true sample exceeds with probability 0.0001: √(½ ln(2/0.0001) / n), asymptotic. */
const FAR = 2.23 / Math.sqrt(DRAWS);

function sample(law: DurationLaw): number[] {
  const duration = new Duration(law);
  const stream = new Stream(streamKey('durations', law.law));
  return Array.from({ length: DRAWS }, () => duration.draw(stream)).sort((a, b) => a - b);
}

function distance(sorted: readonly number[], cdf: (x: number) => number): number {
  return sorted.reduce((worst, value, index) => {
    const f = cdf(value);
    return Math.max(worst, Math.abs(f - index / DRAWS), Math.abs(f - (index + 1) / DRAWS));
  }, 0);
}

describe('drawn durations against @stdlib distributions', () => {
  it('exponential', () => {
    const meanOf = 3_600_000;
    expect(
      distance(sample({ law: 'exponential', meanMs: meanOf }), (x) =>
        exponentialCdf(x, 1 / meanOf),
      ),
    ).toBeLessThan(FAR);
  });

  it('lognormal by mean and standard deviation', () => {
    const [mean, sd] = [2_520_000, 1_080_000];
    const s2 = Math.log(1 + (sd / mean) ** 2);
    expect(
      distance(sample({ law: 'lognormal', meanMs: mean, sdMs: sd }), (x) =>
        lognormalCdf(x, Math.log(mean) - s2 / 2, Math.sqrt(s2)),
      ),
    ).toBeLessThan(FAR);
  });

  it.each([
    [2_520_000, 1_080_000],
    [2_520_000, 4_000_000],
  ])('gamma by mean %d and standard deviation %d', (mean, sd) => {
    expect(
      distance(sample({ law: 'gamma', meanMs: mean, sdMs: sd }), (x) =>
        gammaCdf(x, (mean / sd) ** 2, mean / sd ** 2),
      ),
    ).toBeLessThan(FAR);
  });

  it('measured values come in equal shares', () => {
    const values = sample({ law: 'measured', valuesMs: [10, 20, 20, 50] });
    const share = (value: number): number =>
      values.filter((drawn) => drawn === value).length / DRAWS;
    for (const [value, expected] of [
      [10, 0.25],
      [20, 0.5],
      [50, 0.25],
    ] as const)
      expect(Math.abs(share(value) - expected)).toBeLessThan(4 * Math.sqrt(0.25 / DRAWS));
  });

  it('a gamma of mean 1 has the spread asked for', () => {
    const cv = 0.2;
    const shape = 1 / cv ** 2;
    const stream = new Stream(streamKey('gamma', 'spread'));
    const draws = Array.from({ length: DRAWS }, () => standardGamma(shape, stream) / shape);
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / DRAWS;
    const variance = draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / DRAWS;
    expect(Math.abs(mean - 1)).toBeLessThan((4 * cv) / Math.sqrt(DRAWS));
    expect(Math.abs(Math.sqrt(variance) - cv)).toBeLessThan(0.003);
  });
});

describe('whole milliseconds', () => {
  it('rounds half up', () => {
    expect([0.5, 1.5, 2.4999, 2.5].map(wholeMs)).toEqual([1, 2, 2, 3]);
  });

  it('a law without spread is a constant and uses no random number', () => {
    for (const law of [
      { law: 'constant', ms: 90_000 },
      { law: 'lognormal', meanMs: 90_000, sdMs: 0 },
      { law: 'gamma', meanMs: 90_000, sdMs: 0 },
    ] as const) {
      const duration = new Duration(law);
      expect([duration.constant, duration.draw(new Stream()), meanMs(law)]).toEqual([
        true,
        90_000,
        90_000,
      ]);
    }
  });

  it('is all that is left of a spread whose square is too small to be held', () => {
    for (const law of ['lognormal', 'gamma'] as const)
      for (const sdMs of [1e-8, 1e-160, 5e-324]) {
        const duration = new Duration({ law, meanMs: 90_000, sdMs });
        expect([duration.constant, duration.draw(new Stream())]).toEqual([true, 90_000]);
      }
  });

  it('a mean of nothing takes no time', () => {
    for (const law of [
      { law: 'exponential', meanMs: 0 },
      { law: 'lognormal', meanMs: 0, sdMs: 0 },
    ] as const)
      expect(new Duration(law).draw(new Stream())).toBe(0);
  });
});
