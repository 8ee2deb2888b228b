/** Laws fitted to times, held against @stdlib's distributions and against times whose law is known. */
import exponentialCdf from '@stdlib/stats-base-dists-exponential-cdf';
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import lognormalCdf from '@stdlib/stats-base-dists-lognormal-cdf';
import { describe, expect, it } from 'vitest';
import { Duration } from '../../src/engine/durations.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import {
  durationLawOf,
  fitLaw,
  lawCdf,
  LAWS,
  likeliest,
  logDensity,
  type Law,
} from '../../src/measuring/fit-law.js';

const laws: readonly Law[] = [
  { law: 'lognormal', mean: 22, cv: 0.45 },
  { law: 'gamma', mean: 9, cv: 0.3 },
  { law: 'exponential', mean: 40, cv: 1 },
];
/** By the library's own parameters. */
const oracle = ({ law, mean, cv }: Law, x: number): number => {
  const spread = Math.log1p(cv ** 2);
  return law === 'exponential'
    ? exponentialCdf(x, 1 / mean)
    : law === 'gamma'
      ? gammaCdf(x, 1 / cv ** 2, 1 / (mean * cv ** 2))
      : lognormalCdf(x, Math.log(mean) - spread / 2, Math.sqrt(spread));
};
const timesOf = (law: Law, n: number, seed: string): number[] => {
  const draw = new Duration(durationLawOf(law, 60_000));
  const stream = new Stream(streamKey(seed, 'times'));
  return Array.from({ length: n }, () => Math.max(1, draw.draw(stream)) / 60_000);
};

describe('a law of times', () => {
  it('has the distribution and the density of @stdlib', () => {
    for (const law of laws)
      for (const x of [0.5, 3, 8, 15, 22, 40, 90]) {
        expect(lawCdf(law, x)).toBeCloseTo(oracle(law, x), 10);
        const h = x * 1e-4;
        const slope = (oracle(law, x + h) - oracle(law, x - h)) / (2 * h);
        if (slope > 1e-9) expect(Math.exp(logDensity(law, x)) / slope).toBeCloseTo(1, 5);
      }
  });

  it('is found again from many times, its mean, its spread and mostly its name', () => {
    for (const law of laws) {
      const { chosen, tried } = fitLaw(timesOf(law, 2000, 'many'), null);
      expect(chosen.law).toBe(law.law);
      expect(chosen.mean / law.mean).toBeCloseTo(1, 1);
      expect(chosen.cv / law.cv).toBeCloseTo(1, 1);
      expect(tried.map(({ law: name }) => name).toSorted()).toEqual([...LAWS].toSorted());
    }
  });

  it('is the likeliest: no law a little off does better', () => {
    const whole = timesOf(laws[0]!, 40, 'likely');
    for (const name of ['lognormal', 'gamma'] as const) {
      const best = likeliest(name, whole);
      const of = (law: Law): number => whole.reduce((sum, x) => sum + logDensity(law, x), 0);
      for (const [mean, cv] of [
        [1.01, 1],
        [0.99, 1],
        [1, 1.01],
        [1, 0.99],
      ] as const)
        expect(of({ law: name, mean: best.mean * mean, cv: best.cv * cv })).toBeLessThan(of(best));
    }
  });

  it('is doubted where times follow none of the three, and seldom where they do', () => {
    const two = [
      ...timesOf({ law: 'gamma', mean: 5, cv: 0.05 }, 20, 'a'),
      ...timesOf({ law: 'gamma', mean: 60, cv: 0.05 }, 20, 'b'),
    ];
    expect(fitLaw(two, 'test').fit!.p).toBeLessThan(0.02);
    const doubted = Array.from({ length: 8 }, (_, at) =>
      fitLaw(timesOf(laws[0]!, 15, `s${at}`), `t${at}`),
    ).filter(({ fit }) => fit!.p < 0.05);
    // 5 % of 8: four or more have a chance of 0.04 %.
    expect(doubted.length).toBeLessThan(4);
  });

  it('is refused where times say nothing', () => {
    expect(() => fitLaw([3, 4], null)).toThrow(RangeError);
    expect(() => fitLaw([3, 0, 4], null)).toThrow(RangeError);
    expect(() => fitLaw([3, 3, 3], null)).toThrow(RangeError);
  });
});
