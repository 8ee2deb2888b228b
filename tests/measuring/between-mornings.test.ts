/** Whether mornings differ: known points of the chi-square law, and how often equal mornings are called different. */
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/engine/normal.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { chanceOfDifference } from '../../src/measuring/between-mornings.js';

const says = (value: number, standardError: number) => ({ value, standardError });

describe('the chance that equal mornings lie as far apart', () => {
  it('is that of a normal distance for two, and of tables for three', () => {
    // Two estimates with errors 3 and 4 differ with an error of 5: 1.96 of it has a chance of 5 %.
    expect(chanceOfDifference([says(10, 3), says(10 + 5 * 1.959964, 4)])).toBeCloseTo(0.05, 6);
    // Chi-square with two degrees has its 95 % point at 5.9915 (tables): three of error 1, one off by x, make 2x²/3.
    const off = Math.sqrt((5.9915 * 3) / 2);
    expect(chanceOfDifference([says(0, 1), says(0, 1), says(off, 1)])).toBeCloseTo(0.05, 4);
    expect(chanceOfDifference([says(7, 2), says(7, 5)])).toBeCloseTo(1, 9);
  });

  it('is below 5 % in 5 % of equal mornings, whatever their errors', () => {
    const stream = new Stream(streamKey('between', 'mornings'));
    const repeats = 2000;
    let named = 0;
    for (let at = 0; at < repeats; at += 1) {
      const mornings = [0.2, 1, 3].map((error) =>
        says(error * normalQuantile(stream.uniform()), error),
      );
      if (chanceOfDifference(mornings) < 0.05) named += 1;
    }
    // Four standard errors of a share of 5 % among 2,000.
    expect(Math.abs(named / repeats - 0.05)).toBeLessThan(0.0195);
  });

  it('needs two mornings, each with an error', () => {
    expect(() => chanceOfDifference([says(1, 1)])).toThrow(RangeError);
    expect(() => chanceOfDifference([says(1, 1), says(2, 0)])).toThrow(RangeError);
  });
});
