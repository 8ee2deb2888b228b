import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { marginalStock } from '../../src/sizing/marginal-stock.js';
import { DayStore } from '../../src/sizing/day-store.js';
import {
  countMisses,
  mergePeaks,
  peakCounts,
  selectDays,
  sliceDays,
} from '../../src/sizing/peaks.js';
import { drawDays, peaksOf, rowsOf, THREE_KINDS } from './days.js';

const FIXED = { seed: 20 };
const DAYS = { means: [12, 5, 30], kinds: THREE_KINDS };

describe('peaks', () => {
  const whole = drawDays(DAYS, 200, 'merging');

  it('split anywhere and merged are the bytes of one run', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 199 })), (cuts) => {
        const ends = [0, ...cuts.sort((a, b) => a - b), 200];
        const parts = ends
          .slice(1)
          .map((end, i) => sliceDays(whole, ends[i] ?? 0, end - (ends[i] ?? 0)));
        expect(mergePeaks(parts)).toEqual(whole);
      }),
      FIXED,
    );
  });

  it('can be selected day by day, some twice', () => {
    expect(
      rowsOf(
        selectDays(
          peaksOf([
            [1, 2],
            [3, 4],
            [5, 6],
          ]),
          [2, 0, 2],
        ),
      ),
    ).toEqual([
      [5, 6],
      [1, 2],
      [5, 6],
    ]);
  });

  it('count a day once however many ware run out', () => {
    const peaks = peaksOf([
      [5, 5],
      [4, 6],
      [6, 4],
      [9, 9],
    ]);
    expect(countMisses(peaks, [5, 5])).toBe(3);
    expect(countMisses(peaks, [9, 9])).toBe(0);
    expect(countMisses(peaks, [8, 9])).toBe(1);
    expect(countMisses(peaks, [0, 0])).toBe(4);
  });

  it('of a ware are counted from none up to the largest', () => {
    const peaks = peaksOf([
      [5, 0],
      [2, 0],
      [5, 0],
    ]);
    expect([...peakCounts(peaks, 0)]).toEqual([0, 0, 1, 0, 0, 2]);
    expect([...peakCounts(peaks, 1)]).toEqual([3]);
  });

  it('refuse parts that do not fit together', () => {
    expect(() => mergePeaks([])).toThrow(RangeError);
    expect(() => mergePeaks([peaksOf([[1]]), peaksOf([[1, 2]])])).toThrow(RangeError);
  });
});

describe('a ware alone', () => {
  // The published ranks for 100 days at 95 % (Hahn & Meeker, Statistical Intervals, 5.2): 90th and 100th smallest.
  it('has the peaks of the published ranks as its interval', () => {
    const peaks = peaksOf(Array.from({ length: 100 }, (_, i) => [((i * 37) % 100) + 1]));
    expect(marginalStock(peaks, 0.95)).toEqual([{ pieces: 95, low: 90, high: 100 }]);
  });

  it('has no end where the days are too few for one', () => {
    // Even the largest of three is below the 95 % quantile with chance 0.95³; all three with chance 0.05³.
    expect(marginalStock(peaksOf([[3], [4], [5]]), 0.95)).toEqual([
      { pieces: 5, low: 4, high: null },
    ]);
    expect(marginalStock(peaksOf([[3], [4], [5]]), 0.2)).toEqual([
      { pieces: 3, low: null, high: 5 },
    ]);
  });

  it('is the least stock that misses no more days than allowed', () => {
    const peaks = drawDays(DAYS, 500, 'alone');
    marginalStock(peaks, 0.9).forEach(({ pieces }, w) => {
      const ample = [999, 999, 999];
      expect(countMisses(peaks, ample.with(w, pieces))).toBeLessThanOrEqual(50);
      expect(countMisses(peaks, ample.with(w, pieces - 1))).toBeGreaterThan(50);
    });
  });
});

describe('the store of days', () => {
  it('runs each day once and gives the same days again', async () => {
    const whole = drawDays(DAYS, 100, 'store');
    const asked: [number, number][] = [];
    const store = new DayStore({
      peaks: (from, count) => {
        asked.push([from, count]);
        return sliceDays(whole, from, count);
      },
    });
    expect(await store.days(0, 10)).toEqual(sliceDays(whole, 0, 10));
    expect(await store.days(5, 15)).toEqual(sliceDays(whole, 5, 15));
    expect(await store.days(3, 4)).toEqual(sliceDays(whole, 3, 4));
    expect(await store.days(30, 5)).toEqual(sliceDays(whole, 30, 5));
    expect(asked).toEqual([
      [0, 10],
      [10, 10],
      [20, 15],
    ]);
  });

  it('runs a single day more where only that is wanted, and says what is sure to follow', async () => {
    const whole = drawDays(DAYS, 100, 'store');
    const following: number[] = [];
    const store = new DayStore({
      peaks: (from, count, after) => {
        following.push(after);
        return sliceDays(whole, from, count);
      },
    });
    await store.days(0, 10);
    expect(await store.days(0, 11, 7)).toEqual(sliceDays(whole, 0, 11));
    expect(following).toEqual([0, 7]);
  });

  it('notices a provider that hands back another number of days', async () => {
    const store = new DayStore({ peaks: () => peaksOf([[1]]) });
    await expect(store.days(0, 2)).rejects.toThrow(RangeError);
  });
});
