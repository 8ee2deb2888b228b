import { describe, expect, it } from 'vitest';
import { onePathOf, riskCurve, scaledPathOf } from '../../src/sizing/risk-curve.js';
import { countMisses } from '../../src/sizing/peaks.js';
import { drawDays, exactLevel, peaksOf, THREE_KINDS } from './days.js';

const CAFE = { means: [20, 30, 8], kinds: THREE_KINDS };
const STOCK = [32, 46, 15];

describe('the chance of running out against stock', () => {
  const peaks = drawDays(CAFE, 2000, 'risk');

  it('falls as a ware grows, from what the others leave to what they cause', () => {
    const curve = riskCurve(peaks, onePathOf(peaks, STOCK, 0));
    const shares = curve.map(({ risk }) => risk.share);
    expect(shares.toSorted((a, b) => b - a)).toEqual(shares);
    expect(curve.every(({ stock }) => stock[1] === STOCK[1] && stock[2] === STOCK[2])).toBe(true);
    expect(shares.at(-1)).toBe(countMisses(peaks, [9999, 46, 15]) / 2000);
    expect(curve.some(({ stock }) => stock[0] === STOCK[0])).toBe(true);
  });

  // Exact levels from the Poisson distribution of @stdlib.
  it('has the true chance within its interval nearly everywhere on both paths', () => {
    for (const path of [onePathOf(peaks, STOCK, 1), scaledPathOf(peaks, STOCK)]) {
      const curve = riskCurve(peaks, path, 0.999);
      expect(curve.length).toBeGreaterThan(20);
      for (const { stock, risk } of curve) {
        const truth = 1 - exactLevel(CAFE, stock);
        expect(risk.low).toBeLessThanOrEqual(truth);
        expect(risk.high).toBeGreaterThanOrEqual(truth);
      }
    }
  });

  it('goes from certain to none when all ware is scaled, through the chosen stock', () => {
    const curve = riskCurve(peaks, scaledPathOf(peaks, STOCK));
    const shares = curve.map(({ risk }) => risk.share);
    expect(shares[0]).toBeGreaterThan(0.99);
    expect(shares.at(-1)).toBe(0);
    expect(shares.toSorted((a, b) => b - a)).toEqual(shares);
    const chosen = curve.find(({ stock }) => stock.join() === STOCK.join());
    expect(chosen?.risk.share).toBe(countMisses(peaks, STOCK) / 2000);
    expect(new Set(curve.map(({ stock }) => stock.join())).size).toBe(curve.length);
  });

  it('copes with ware that nobody uses and with a single day', () => {
    const one = peaksOf([[4, 0]]);
    expect(scaledPathOf(one, [4, 0])).toEqual([[4, 0]]);
    expect(onePathOf(one, [4, 0], 1)).toEqual([[4, 0]]);
    expect(onePathOf(one, [6, 0], 0)).toEqual([
      [4, 0],
      [5, 0],
      [6, 0],
    ]);
  });
});
