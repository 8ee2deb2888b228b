import chiSquare from '@stdlib/stats-base-dists-chisquare-cdf';
import exponentialCdf from '@stdlib/stats-base-dists-exponential-cdf';
import { describe, expect, it } from 'vitest';
import { Stream, streamKey } from '../../src/engine/streams.js';

/** p-value of a chi-square statistic, from a general library. */
const pValue = (statistic: number, freedom: number): number => 1 - chiSquare(statistic, freedom);

/** Smallest p we accept: with fixed seeds a test either always passes or always fails. */
const LEAST = 1e-4;

function chiSquareOf(counts: readonly number[], expected: number): number {
  return counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
}

describe('the generator', () => {
  it('gives the published values of xoshiro128++', () => {
    // Ten outputs from the state 1, 2, 3, 4 of the authors' C code (prng.di.unimi.it/xoshiro128plusplus.c),
    // as carried by the tests of the rand_xoshiro crate.
    const stream = new Stream().setState(1, 2, 3, 4);
    const outputs = Array.from({ length: 10 }, () => stream.bits() >>> 0);
    expect(outputs).toEqual([
      641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295,
      495546011, 621204420,
    ]);
  });

  it('is uniform in single values and in pairs', () => {
    const stream = new Stream(streamKey('chi', 'singles'));
    const draws = 200_000;
    const single = Array.from({ length: 256 }, () => 0);
    const pairs = Array.from({ length: 256 }, () => 0);
    for (let draw = 0; draw < draws; draw += 1) {
      const a = stream.uniform();
      const b = stream.uniform();
      single[Math.floor(a * 256)]! += 1;
      pairs[Math.floor(a * 16) * 16 + Math.floor(b * 16)]! += 1;
    }
    expect(pValue(chiSquareOf(single, draws / 256), 255)).toBeGreaterThan(LEAST);
    expect(pValue(chiSquareOf(pairs, draws / 256), 255)).toBeGreaterThan(LEAST);
  });

  it('is uniform across the first draws of neighbouring days and of related seeds', () => {
    for (const firsts of [
      Array.from({ length: 40_000 }, (_, day) =>
        new Stream(streamKey('s', 'p')).toDay(day).uniform(),
      ),
      Array.from({ length: 20_000 }, (_, seed) =>
        new Stream(streamKey(String(seed), 'p')).uniform(),
      ),
    ]) {
      const counts = Array.from({ length: 100 }, () => 0);
      for (const first of firsts) counts[Math.floor(first * 100)]! += 1;
      expect(pValue(chiSquareOf(counts, firsts.length / 100), 99)).toBeGreaterThan(LEAST);
      // Serial: neighbours make pairs that fill the square evenly.
      const pairs = Array.from({ length: 100 }, () => 0);
      for (let i = 0; i + 1 < firsts.length; i += 2)
        pairs[Math.floor(firsts[i]! * 10) * 10 + Math.floor(firsts[i + 1]! * 10)]! += 1;
      expect(pValue(chiSquareOf(pairs, firsts.length / 200), 99)).toBeGreaterThan(LEAST);
    }
  });

  it('gives unrelated streams to different purposes, and the same to the same', () => {
    const draws = (seed: string, purpose: string, day: number): number[] => {
      const stream = new Stream(streamKey(seed, purpose)).toDay(day);
      return Array.from({ length: 4 }, () => stream.bits());
    };
    expect(draws('1', 'a', 7)).toEqual(draws('1', 'a', 7));
    const others = [
      draws('1', 'b', 7),
      draws('2', 'a', 7),
      draws('1', 'a', 8),
      draws('1', 'a', 7 + 2 ** 32),
    ];
    for (const other of others) expect(other).not.toEqual(draws('1', 'a', 7));
  });

  it('never gives 0 or 1', () => {
    const stream = new Stream().setState(0, 0, 0, 0);
    expect(stream.uniform()).toBeGreaterThan(0);
    stream.setState(-1, 0, 0, 0);
    expect(stream.uniform()).toBeLessThan(1);
  });
});

describe('exponential draws against @stdlib', () => {
  it.each(['exponential', 'quickExponential'] as const)(
    '%s: Kolmogorov distance and the tail',
    (how) => {
      const draws = 400_000;
      const stream = new Stream(streamKey('exponential', how));
      const sorted = Float64Array.from({ length: draws }, () => stream[how]()).sort();
      let distance = 0;
      sorted.forEach((value, index) => {
        const f = exponentialCdf(value, 1);
        distance = Math.max(
          distance,
          Math.abs(f - index / draws),
          Math.abs(f - (index + 1) / draws),
        );
      });
      // Exceeded by a true sample with probability 0.0001 (asymptotic).
      expect(distance).toBeLessThan(2.23 / Math.sqrt(draws));
      // Beyond the ziggurat's edge, where a draw takes another path.
      const beyond = sorted.filter((value) => value > 7.7).length;
      const expected = draws * Math.exp(-7.7);
      expect(Math.abs(beyond - expected)).toBeLessThan(4.5 * Math.sqrt(expected));
    },
  );
});
