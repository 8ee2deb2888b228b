import { describe, expect, it } from 'vitest';
import { assuredStock } from '../../src/sizing/assured-stock.js';
import { countMisses, sliceDays, type Peaks } from '../../src/sizing/peaks.js';
import type { SizingProvider } from '../../src/sizing/sizing-request.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { drawDays, exactLevel, THREE_KINDS, uniforms } from './days.js';

const CAFE = { means: [20, 12], kinds: THREE_KINDS };
const COSTS = [500, 300];
const CONFIDENCE = 0.975;

const handing = (whole: Peaks): SizingProvider => ({
  peaks: (from, count) => sliceDays(whole, from, count),
});
const assure = (whole: Peaks, days: number, level = 0.95) =>
  assuredStock(
    {
      level,
      unitCostMinor: COSTS,
      provider: handing(whole),
      uniform: uniforms('bootstrap'),
      days,
    },
    CONFIDENCE,
  );

describe('a stock with an assured level', () => {
  it('is met with days that played no part in its choice, its low end by the exact interval of its try', async () => {
    const whole = drawDays(CAFE, 8000, 'assured');
    const { stock, chosenOn, certifiedOn, certified, assured, warnings } = await assure(
      whole,
      1000,
    );
    expect([assured.held, assured.tries, chosenOn, certifiedOn]).toEqual([true, 1, 1000, 1000]);
    const safe = certifiedOn - countMisses(sliceDays(whole, 1000, 1000), stock);
    // Half of 2.5 % is spent on the first try.
    const { low } = exactBinomialInterval(safe, 1000, 1 - 2 * 0.0125);
    expect(certified!.low).toBe(low);
    expect(low).toBeGreaterThanOrEqual(0.95);
    expect(certified!.confidence).toBeCloseTo(0.95, 12);
    expect(warnings.map(({ code }) => code)).not.toContain('promise-missed');
  });

  it('truly holds the level but for 2.5 % of repeats, tries that failed counted in', async () => {
    const repeats = 300;
    let [below, again, held] = [0, 0, 0];
    for (let number = 0; number < repeats; number += 1) {
      const found = await assure(drawDays(CAFE, 4500, `repeat ${number}`), 300, 0.9);
      if (found.assured.tries > 1) again += 1;
      if (!found.assured.held) continue;
      held += 1;
      if (exactLevel(CAFE, found.stock) < 0.9) below += 1;
    }
    expect(held).toBeGreaterThan(0.95 * repeats);
    // Some stocks fail their test, or the tries would not be looked at.
    expect(again).toBeGreaterThan(5);
    // A true 2.5 % would be so far exceeded in less than one run of a thousand.
    expect(exactBinomialInterval(below, repeats, 0.998).low).toBeLessThanOrEqual(1 - CONFIDENCE);
  });

  it('gives up after four tries and says so, where later days need ever more than those before', async () => {
    const days = 20_000;
    const data = Uint16Array.from({ length: 2 * days }, (_, cell) => 10 + Math.floor(cell / 400));
    const found = await assure({ days, ware: 2, data }, 500);
    expect(found.assured).toEqual({ confidence: CONFIDENCE, tries: 4, held: false });
    expect(found.certified!.low).toBeLessThan(0.95);
    expect(found.warnings[0]).toMatchObject({ code: 'promise-missed' });
    expect(found.warnings[0]!.message).toMatch(/97\.5 %/);
  });

  it('refuses a confidence that is no better than a guess', async () => {
    const whole = drawDays(CAFE, 10, 'few');
    const request = {
      level: 0.9,
      unitCostMinor: COSTS,
      provider: handing(whole),
      uniform: uniforms('bootstrap'),
    };
    for (const confidence of [0, 0.5, 1])
      await expect(assuredStock(request, confidence)).rejects.toThrow(RangeError);
  });
});
