import { describe, expect, it } from 'vitest';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { crossValidatedMisses } from '../../src/sizing/cross-validated-misses.js';
import { costError } from '../../src/sizing/cost-error.js';
import { leastCostStock } from '../../src/sizing/least-cost-stock.js';
import {
  drawDays,
  EIGHT_COSTS,
  EIGHT_WARE,
  exactLevel,
  ONE_KIND,
  THREE_KINDS,
  uniforms,
} from './days.js';
import type { KnownDays } from './days.js';

const BUSY: KnownDays = { means: EIGHT_WARE, kinds: THREE_KINDS };
const PATIENCE = 60_000;

/** Exact levels, of the joint distribution the days were drawn from, of stocks chosen on many samples. */
function levels(
  of: KnownDays,
  costs: readonly number[],
  level: number,
  days: number,
  samples: number,
): { plain: number[]; corrected: number[] } {
  const plain: number[] = [];
  const corrected: number[] = [];
  for (let sample = 0; sample < samples; sample++) {
    const peaks = drawDays(of, days, `fresh ${sample}`);
    plain.push(
      exactLevel(of, leastCostStock(peaks, costs, Math.floor(days * (1 - level) + 1e-9)).stock),
    );
    corrected.push(
      exactLevel(of, leastCostStock(peaks, costs, crossValidatedMisses(peaks, costs, level)).stock),
    );
  }
  return { plain, corrected };
}

const standardError = (values: number[]) =>
  sampleStandardDeviation(values) / Math.sqrt(values.length);

// The exact level of a stock comes from the Poisson distribution of @stdlib, not from further days.
describe('the level that fresh days keep', () => {
  it(
    'meets the service level on average with the correction and falls well short without: 8 ware, 1,000 days',
    () => {
      const { plain, corrected } = levels(BUSY, EIGHT_COSTS, 0.95, 1000, 24);
      expect(mean(plain)).toBeLessThan(0.945);
      expect(mean(corrected)).toBeGreaterThan(0.95 - 3 * standardError(corrected));
      // Nor does it buy safety that nobody asked for.
      expect(mean(corrected)).toBeLessThan(0.957);
      expect(Math.abs(mean(corrected) - 0.95)).toBeLessThan(Math.abs(mean(plain) - 0.95) / 2);
    },
    PATIENCE,
  );

  it(
    'does so for independent ware, and at 90 %',
    () => {
      const free = levels({ means: EIGHT_WARE, kinds: ONE_KIND }, EIGHT_COSTS, 0.95, 1000, 8);
      expect(mean(free.corrected)).toBeGreaterThan(0.95 - 3 * standardError(free.corrected));
      expect(mean(free.corrected)).toBeGreaterThan(mean(free.plain) + 0.005);
      const lower = levels(BUSY, EIGHT_COSTS, 0.9, 600, 8);
      expect(mean(lower.corrected)).toBeGreaterThan(0.9 - 3 * standardError(lower.corrected));
      expect(mean(lower.corrected)).toBeGreaterThan(mean(lower.plain) + 0.005);
    },
    PATIENCE,
  );

  it('needs hardly any correction for a single ware, whose quantile fits nothing', () => {
    for (let sample = 0; sample < 10; sample++) {
      const peaks = drawDays({ means: [60], kinds: THREE_KINDS }, 1000, `single ${sample}`);
      expect(crossValidatedMisses(peaks, [100], 0.95)).toBeGreaterThanOrEqual(40);
    }
  });
});

describe('the corrected number of misses', () => {
  it('never passes the plain one and is none where none may be missed', () => {
    for (const days of [1, 19, 20, 73, 300]) {
      const k = crossValidatedMisses(drawDays(BUSY, days, `few ${days}`), EIGHT_COSTS, 0.95);
      expect(k).toBeGreaterThanOrEqual(0);
      expect(k).toBeLessThanOrEqual(Math.floor(days / 20 + 1e-9));
    }
  });

  it('is the same every time', () => {
    const peaks = drawDays(BUSY, 400, 'again');
    expect(crossValidatedMisses(peaks, EIGHT_COSTS, 0.95)).toBe(
      crossValidatedMisses(peaks, EIGHT_COSTS, 0.95),
    );
  });
});

describe('the standard error of the cost', () => {
  it('is about the spread of the cost over samples', () => {
    const few: KnownDays = { means: EIGHT_WARE.slice(0, 4), kinds: THREE_KINDS };
    const costs = EIGHT_COSTS.slice(0, 4);
    const drawn = Array.from(
      { length: 60 },
      (_, sample) => leastCostStock(drawDays(few, 500, `spread ${sample}`), costs, 25).cost,
    );
    const spread = sampleStandardDeviation(drawn) / mean(drawn);
    const told = Array.from({ length: 8 }, (_, sample) =>
      costError(
        drawDays(few, 500, `spread ${sample}`),
        costs,
        0.95,
        uniforms(`resample ${sample}`),
      ),
    );
    // 60 samples know the spread to about 9 %; 25 resamples of 8 samples add a little.
    expect(mean(told) / spread).toBeGreaterThan(0.7);
    expect(mean(told) / spread).toBeLessThan(1.4);
  });

  it('is nothing where nothing varies or costs anything', () => {
    const still = { days: 50, ware: 1, data: new Uint16Array(50).fill(7) };
    expect(costError(still, [100], 0.95, uniforms('still'))).toBe(0);
    expect(costError(still, [0], 0.95, uniforms('still'))).toBe(0);
  });
});
