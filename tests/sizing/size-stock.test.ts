import { describe, expect, it } from 'vitest';
import { marginalStock } from '../../src/sizing/marginal-stock.js';
import { leastCostStock } from '../../src/sizing/least-cost-stock.js';
import { countMisses, sliceDays } from '../../src/sizing/peaks.js';
import type { Peaks } from '../../src/sizing/peaks.js';
import { daysOfSizing, sized, sizeStock } from '../../src/sizing/size-stock.js';
import type { SizingProvider } from '../../src/sizing/sizing-request.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import {
  drawDays,
  EIGHT_COSTS,
  exactLevel,
  ONE_KIND,
  peaksOf,
  THREE_KINDS,
  uniforms,
} from './days.js';

const CAFE = { means: [60, 40, 25, 90], kinds: THREE_KINDS };
const COSTS = EIGHT_COSTS.slice(0, 4);

/** Hands out days of a fixed sequence and notes what was asked for. */
function handing(
  whole: Peaks,
): SizingProvider & { readonly asked: [from: number, count: number, after: number][] } {
  const asked: [number, number, number][] = [];
  return {
    asked,
    peaks: (from, count, after) => {
      asked.push([from, count, after]);
      return sliceDays(whole, from, count);
    },
  };
}

const request = (provider: SizingProvider) => ({
  level: 0.95,
  unitCostMinor: COSTS,
  provider,
  uniform: uniforms('bootstrap'),
});

describe('sizing a stock', () => {
  const whole = drawDays(CAFE, 16_000, 'café');

  it('adds days until the cost is steady and certifies on as many fresh ones', async () => {
    const provider = handing(whole);
    const sized = await sizeStock(request(provider));
    expect(sized.chosenOn).toBeGreaterThan(1000);
    expect(sized.certifiedOn).toBe(sized.chosenOn);
    expect(sized.costError).toBeLessThan(0.005);
    expect(sized.warnings).toEqual([]);
    expect(sized.proven).toBe(true);

    const chosenOn = sliceDays(whole, 0, sized.chosenOn);
    const fresh = sliceDays(whole, sized.chosenOn, sized.certifiedOn);
    expect(sized.stock).toEqual(leastCostStock(chosenOn, COSTS, sized.k).stock);
    expect(sized.certified?.level).toBe(1 - countMisses(fresh, sized.stock) / sized.certifiedOn);
    expect(sized.cost).toBe(
      sized.stock.reduce((sum, pieces, w) => sum + pieces * (COSTS[w] ?? 0), 0),
    );
    expect(sized.alone).toEqual(marginalStock(chosenOn, 0.95).map(({ pieces }) => pieces));

    // The true level, known exactly, lies in the certified interval.
    const truth = exactLevel(CAFE, sized.stock);
    expect(sized.certified?.low).toBeLessThan(truth);
    expect(sized.certified?.high).toBeGreaterThan(truth);

    // Every day once, in order, without a gap.
    let next = 0;
    for (const [from, count] of provider.asked) {
      expect(from).toBe(next);
      next += count;
    }
    expect(next).toBe(sized.chosenOn + sized.certifiedOn);
  });

  it.each([
    ['days added', {}],
    ['a cap that cuts the doubling short', { cap: 1500 }],
    ['a fixed number of days', { days: 300 }],
    ['a provisional answer', { days: 200, certifyOn: 150 }],
    ['listed days', { days: 200, certify: false }],
  ])('asks next for the very days that it announced: %s', async (_, options) => {
    const { asked, ...provider } = handing(whole);
    await sizeStock({ ...request(provider), ...options });
    expect(asked.some(([, , after]) => after > 0)).toBe(!('certify' in options));
    asked.forEach(([from, count, after], at) => {
      if (after > 0) expect(asked[at + 1]?.slice(0, 2)).toEqual([from + count, after]);
    });
  });

  it('gives the same answer again', async () => {
    expect(await sizeStock(request(handing(whole)))).toEqual(
      await sizeStock(request(handing(whole))),
    );
  });

  it('keeps to a fixed number of days and says when the cost is not steady on them', async () => {
    const sized = await sizeStock({ ...request(handing(whole)), days: 300 });
    expect([sized.chosenOn, sized.certifiedOn]).toEqual([300, 1000]);
    expect(sized.warnings.map(({ code }) => code)).toEqual(['cost-unsteady']);
  });

  it('stops at the cap', async () => {
    const sized = await sizeStock({ ...request(handing(whole)), cap: 1500 });
    expect(sized.chosenOn).toBe(1500);
    expect(sized.warnings.map(({ code }) => code)).toEqual(['cost-unsteady']);
  });

  it.each([1, 20, 999, 1000, 1001, 1700])(
    'runs in all as many days as are counted on, to choose on %s of them',
    async (days) => {
      const { asked, ...provider } = handing(whole);
      await sizeStock({ ...request(provider), days });
      expect(asked.reduce((sum, [, count]) => sum + count, 0)).toBe(daysOfSizing(days));
    },
  );

  it('stops at 8,000 days where nothing else is said and the cost never settles', async () => {
    // Peaks with so long a tail that their 95 % quantile is known to 5 % only even then.
    const u = uniforms('tail');
    const data = Uint16Array.from({ length: 16_000 }, () => Math.min(2000, 10 / (1 - u())));
    const provider = handing({ days: data.length, ware: 1, data });
    const found = await sizeStock({ ...request(provider), unitCostMinor: [100] });
    expect([found.chosenOn, found.certifiedOn]).toEqual([8000, 8000]);
    expect(found.costError).toBeGreaterThan(0.02);
  });

  it('says by how much of its cost it might be dearer than the cheapest, where the search was given up', () => {
    const chosen = { stock: [60, 40, 25, 90], cost: 1000, proven: false, k: [5], missed: [4] };
    const some = [sliceDays(whole, 0, 100)];
    const words = (bound: number): string[] =>
      sized(request(handing(whole)), some, { ...chosen, bound }, null)
        .warnings.filter(({ code }) => code === 'not-cheapest')
        .map(({ message }) => message);
    expect(words(900)).toEqual([expect.stringContaining('up to 10.0 % less')]);
    expect(words(0)).toEqual([]);
  });

  it('certifies a provisional stock once, on the days it is told to, right after those chosen on', async () => {
    const provider = handing(whole);
    const sized = await sizeStock({ ...request(provider), days: 200, certifyOn: 150 });
    expect([sized.chosenOn, sized.certifiedOn]).toEqual([200, 150]);
    expect(provider.asked.map(([from, count]) => [from, count])).toEqual([
      [0, 200],
      [200, 150],
    ]);
    const missed = countMisses(sliceDays(whole, 200, 150), sized.stock);
    const { share, low, high } = exactBinomialInterval(150 - missed, 150);
    expect(sized.certified).toEqual({ level: share, low, high, confidence: 0.95 });
    expect(sized.stock).toEqual((await sizeStock({ ...request(handing(whole)), days: 200 })).stock);
  });

  it('takes listed days as they are: the plain number of misses, nothing certified', async () => {
    const listed = sliceDays(whole, 0, 200);
    const sized = await sizeStock({ ...request(handing(listed)), days: 200, certify: false });
    expect(sized).toMatchObject({
      chosenOn: 200,
      certifiedOn: 0,
      certified: null,
      costError: null,
      k: 10,
      warnings: [],
    });
    expect(countMisses(listed, sized.stock)).toBeLessThanOrEqual(10);
  });

  it('says that a few listed days prove little', async () => {
    const sized = await sizeStock({
      level: 0.95,
      unitCostMinor: [100],
      provider: handing(peaksOf([[3]])),
      days: 1,
      certify: false,
      uniform: uniforms('none'),
    });
    expect(sized).toMatchObject({ stock: [3], k: 0, low: [null], high: [null] });
    expect(sized.warnings).toHaveLength(1);
    expect(sized.warnings[0]?.code).toBe('few-days');
    expect(sized.warnings[0]?.message).toContain('59 days');
  });
});

describe('a service level that fresh days miss', () => {
  // 1,000 calm days come first, then busier ones for ever: what calm days say about a stock is wrong.
  const calm = drawDays({ means: [20, 30], kinds: ONE_KIND }, 1000, 'calm');
  const busy = drawDays({ means: [30, 45], kinds: ONE_KIND }, 31_000, 'busy');
  const turning = { days: 32_000, ware: 2, data: Uint16Array.from([...calm.data, ...busy.data]) };
  const costs = [100, 200];

  it('has more days added, chosen on again and certified on days not used before', async () => {
    const provider = handing(turning);
    const sized = await sizeStock({
      level: 0.95,
      unitCostMinor: costs,
      provider,
      uniform: uniforms('turning'),
      cap: 16_000,
    });
    expect(sized.chosenOn).toBeGreaterThan(1000);
    expect(sized.certified?.high).toBeGreaterThan(0.95 - 0.02);
    const asked = provider.asked.reduce((sum, [, count]) => sum + count, 0);
    expect(asked).toBe(sized.chosenOn + sized.certifiedOn);
  });

  it('is a warning at the cap, with the level that was found', async () => {
    const sized = await sizeStock({
      level: 0.95,
      unitCostMinor: costs,
      provider: handing(turning),
      uniform: uniforms('turning'),
      days: 1000,
    });
    expect(sized.certified?.high).toBeLessThan(0.95);
    const missed = sized.warnings.find(({ code }) => code === 'promise-missed');
    expect(missed?.message).toContain('95.0 %');
    expect(missed?.message).toContain(`${(100 * (sized.certified?.level ?? 0)).toFixed(1)} %`);
  });

  it('adds no day to a provisional answer, and warns of it as of any other', async () => {
    const provider = handing(turning);
    const sized = await sizeStock({
      level: 0.95,
      unitCostMinor: costs,
      provider,
      uniform: uniforms('turning'),
      certifyOn: 400,
    });
    expect(provider.asked.map(([from, count]) => [from, count])).toEqual([
      [0, 1000],
      [1000, 400],
    ]);
    expect([sized.chosenOn, sized.certifiedOn]).toEqual([1000, 400]);
    expect(sized.warnings.map(({ code }) => code)).toContain('promise-missed');
  });

  it('certifies past the days already used when the cap cuts the doubling short', async () => {
    // Days without chance, so that the cost is steady at once and the first 1,000 fresh days are used up in vain.
    const steady = peaksOf(
      Array.from({ length: 4000 }, (_, day) => (day < 1000 ? [20, 30] : [30, 45])),
    );
    const provider = handing(steady);
    const sized = await sizeStock({
      level: 0.95,
      unitCostMinor: costs,
      provider,
      uniform: uniforms('steady'),
      cap: 1500,
    });
    expect(sized).toMatchObject({
      chosenOn: 1500,
      certifiedOn: 1500,
      stock: [30, 45],
      warnings: [],
    });
    expect(provider.asked.map(([from, count]) => [from, count])).toEqual([
      [0, 1000],
      [1000, 1000],
      [2000, 1500],
    ]);
  });
});

describe('rules that look at the clean count', () => {
  const whole = drawDays(CAFE, 2500, 'rules');

  it('give the same stock where the runs say what the peaks say', async () => {
    const provider = handing(whole);
    const ruled: SizingProvider = {
      peaks: provider.peaks,
      misses: (stock, from, count) => countMisses(sliceDays(whole, from, count), stock),
    };
    const read = await sizeStock({ ...request(provider), days: 500 });
    const searched = await sizeStock({ ...request(ruled), days: 500 });
    expect(searched.cost).toBe(read.cost);
    expect(searched.certified).toEqual(read.certified);
    expect([read.proven, searched.proven]).toEqual([true, false]);
  });

  it('are a warning when no stock meets the service level', async () => {
    const ruled: SizingProvider = { peaks: handing(whole).peaks, misses: (_, __, count) => count };
    const sized = await sizeStock({ ...request(ruled), days: 100 });
    expect(sized.certified?.level).toBe(0);
    expect(sized.warnings.filter(({ code }) => code === 'promise-missed')).toHaveLength(2);
  });
});

describe('requests that make no sense', () => {
  it('are refused', async () => {
    const provider = handing(peaksOf([[1, 1, 1, 1]]));
    for (const change of [
      { level: 0 },
      { level: 1 },
      { level: Number.NaN },
      { days: 0 },
      { cap: 2.5 },
      { certifyOn: 0 },
      { certifyOn: 1.5 },
    ]) {
      const sizing = sizeStock({ ...request(provider), ...change });
      await expect(sizing).rejects.toThrow(RangeError);
      await expect(sizing).rejects.toThrow('sizing needs 0 < level < 1 and at least one day');
    }
  });
});
