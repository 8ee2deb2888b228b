import { describe, expect, it } from 'vitest';
import { riskCurve, scaledPathOf } from '../../src/sizing/risk-curve.js';
import { countMisses } from '../../src/sizing/peaks.js';
import { drawDays, exactLevel, peaksOf, THREE_KINDS } from './days.js';

const CAFE = { means: [20, 30, 8], kinds: THREE_KINDS };
const STOCK = [32, 46, 15];

describe('the chance of running out against stock', () => {
  const peaks = drawDays(CAFE, 2000, 'risk');

  // Exact levels from the Poisson distribution of @stdlib.
  it('has the true chance within its interval nearly everywhere along the path', () => {
    const curve = riskCurve(peaks, scaledPathOf(peaks, STOCK), 0.999);
    expect(curve.length).toBeGreaterThan(20);
    for (const { stock, risk } of curve) {
      const truth = 1 - exactLevel(CAFE, stock);
      expect(risk.low).toBeLessThanOrEqual(truth);
      expect(risk.high).toBeGreaterThanOrEqual(truth);
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
    // A day that takes three of which there is one: from there on in steps that round to whole pieces.
    expect(scaledPathOf(peaksOf([[3]]), [1])).toEqual([[1], [2], [3]]);
  });
});
