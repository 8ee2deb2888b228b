import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LagrangianBounds } from '../../src/sizing/lagrangian-bounds.js';
import { countMisses, type Peaks } from '../../src/sizing/peaks.js';
import { reducedDays } from '../../src/sizing/reduced-days.js';
import { shrunkBox } from '../../src/sizing/stock-box.js';
import { peaksOf } from './days.js';

const MOST = 6;

interface Problem {
  readonly peaks: Peaks;
  readonly costs: readonly number[];
  readonly k: number;
}

/** A bound of the whole problem. @param money what the unit of prices is worth */
function raised(given: Problem, price: number, rounds: number, limit: number, money = 1) {
  const { peaks, k } = given;
  const costs = given.costs.map((cost) => cost * money);
  const reduced = reducedDays(peaks, k);
  const box = shrunkBox(reduced, costs, { low: reduced.floor, high: reduced.top }, 1e9 * money)!;
  const bounds = new LagrangianBounds(reduced, costs);
  const found = bounds.raise(box, price * money, rounds, limit * money);
  return { box, found };
}

const costs = (ware: number) =>
  fc.array(fc.integer({ min: 1, max: 40 }), { minLength: ware, maxLength: ware });
const rowsOf = (ware: number, days: number) =>
  fc.array(fc.array(fc.nat(MOST), { minLength: ware, maxLength: ware }), {
    minLength: days,
    maxLength: days,
  });
const problem: fc.Arbitrary<Problem> = fc.record({
  peaks: rowsOf(3, 14).map(peaksOf),
  costs: costs(3),
  k: fc.integer({ min: 1, max: 4 }),
});

/** All stocks of three ware up to the largest peak that meet the service level. */
function enough({ peaks, costs: unit, k }: Problem): { stock: number[]; cost: number }[] {
  const all = [];
  for (let a = 0; a <= MOST; a++)
    for (let b = 0; b <= MOST; b++)
      for (let c = 0; c <= MOST; c++)
        if (countMisses(peaks, [a, b, c]) <= k)
          all.push({ stock: [a, b, c], cost: a * unit[0]! + b * unit[1]! + c * unit[2]! });
  return all;
}

describe('the bound', () => {
  it('is never above the least cost, and cuts off no stock that is enough and within the limit', () => {
    fc.assert(
      fc.property(
        problem,
        fc.integer({ min: 1, max: 12 }),
        fc.nat(30),
        fc.constantFrom(0.01, 1, 20, 900),
        (given, rounds, spare, price) => {
          const stocks = enough(given);
          const least = Math.min(...stocks.map(({ cost }) => cost));
          const limit = least + spare + 0.5;
          const { found } = raised(given, price, rounds, limit);
          expect(found.value).toBeLessThanOrEqual(least + 1e-9);
          for (const { stock, cost } of stocks)
            if (cost <= limit)
              stock.forEach((pieces, w) => {
                // Below the least of a ware and above the top no stock need be looked at.
                expect(pieces).toBeGreaterThanOrEqual(found.low[w]!);
                if (pieces <= Math.max(...rowsWith(given.peaks, w)))
                  expect(pieces).toBeLessThanOrEqual(found.high[w]!);
              });
        },
      ),
      { seed: 51, numRuns: 100 },
    );
  });

  it('is the same in any money, to the last bit', () => {
    fc.assert(
      fc.property(
        problem,
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom(0.01, 20, 900),
        fc.constantFrom(2 ** -40, 2 ** -6, 2 ** 30),
        (given, rounds, limit, price, money) => {
          const { found, box } = raised(given, price, rounds, limit);
          const other = raised(given, price, rounds, limit, money);
          expect(other.box).toEqual(box);
          expect(other.found).toEqual({
            ...found,
            value: found.value * money,
            price: found.price * money,
          });
        },
      ),
      { seed: 55, numRuns: 60 },
    );
  });

  it('comes nearer to the least cost as shares of days move to the ware that run out', () => {
    let [first, last] = [0, 0];
    for (const given of fc.sample(problem, { seed: 52, numRuns: 60 })) {
      const least = Math.min(...enough(given).map(({ cost }) => cost));
      const [one, many] = [1, 15].map((rounds) => raised(given, 20, rounds, 1e9).found.value);
      expect(many).toBeGreaterThanOrEqual(one!);
      first += least - one!;
      last += least - many!;
    }
    expect(last).toBeLessThan(0.62 * first);
  });
});

const rowsWith = (peaks: Peaks, w: number): number[] =>
  Array.from({ length: peaks.days }, (_, day) => peaks.data[day * peaks.ware + w]!);

describe('where no day can run out of two ware, so that nothing is shared', () => {
  /** The bound at a price, written down as it is defined, and what each stock of each ware costs in it. */
  function atPrice({ peaks, costs: unit, k }: Problem, price: number) {
    const { floor } = reducedDays(peaks, k);
    const each = unit.map((cost, w) => {
      const wanted = rowsWith(peaks, w);
      const levels = [...new Set([...wanted, 0])]
        .map((level) => Math.max(level, floor[w]!))
        .toSorted((a, b) => a - b);
      return levels.map((level) => ({
        level,
        value: cost * level + price * wanted.filter((peak) => peak > level).length,
      }));
    });
    const least = each.map((some) => Math.min(...some.map(({ value }) => value)));
    return { each, least, value: least.reduce((sum, value) => sum + value, -price * k) };
  }

  const apart: fc.Arbitrary<Problem> = fc.record({
    peaks: fc
      .array(fc.tuple(fc.nat(2), fc.integer({ min: 1, max: 60 })), { minLength: 12, maxLength: 24 })
      .map((days) =>
        peaksOf(days.map(([ware, peak]) => [0, 1, 2].map((w) => (w === ware ? peak : 0)))),
      ),
    costs: costs(3),
    k: fc.integer({ min: 1, max: 5 }),
  });

  it('is that of the best price, wherever the search for it starts', () => {
    fc.assert(
      fc.property(apart, fc.constantFrom(0.003, 1, 30, 1e4, 1e6), (given, start) => {
        const { found } = raised(given, start, 1, 1e9);
        expect(found.value).toBeCloseTo(atPrice(given, found.price).value, 6);
        // The bound is concave and straight between prices at which two stocks of a ware cost the same.
        let best = { price: 0, value: atPrice(given, 0).value };
        given.costs.forEach((cost, w) => {
          const levels = atPrice(given, 0).each[w]!.map(({ level }) => level);
          const shortAt = (level: number): number =>
            rowsWith(given.peaks, w).filter((peak) => peak > level).length;
          for (const low of levels)
            for (const high of levels)
              if (shortAt(low) > shortAt(high)) {
                const price = (cost * (high - low)) / (shortAt(low) - shortAt(high));
                const { value } = atPrice(given, price);
                if (value > best.value || (value === best.value && price > best.price))
                  best = { price, value };
              }
        });
        // The best price is found to one part in a thousand, and no day adds more than the price; none is sought below a billionth of the start.
        const slack = (2e-3 * best.price + 2e-9 * start) * given.peaks.days;
        expect(found.value).toBeGreaterThanOrEqual(best.value - slack);
      }),
      { seed: 53, numRuns: 60 },
    );
  });

  it('leaves of each ware just the stocks with which it stays within the limit', () => {
    let cut = 0;
    fc.assert(
      fc.property(apart, fc.integer({ min: 1, max: 200 }), (given, spare) => {
        const { found: free } = raised(given, 30, 1, 1e9);
        const limit = free.value + spare + 1e-3;
        const { found } = raised(given, 30, 1, limit);
        const { each, least, value } = atPrice(given, found.price);
        each.forEach((some, w) => {
          const within = some.filter((one) => value - least[w]! + one.value <= limit);
          const levels = within.map(({ level }) => level);
          expect([found.low[w], found.high[w]]).toEqual([Math.min(...levels), Math.max(...levels)]);
          cut += some.length - levels.length;
        });
      }),
      { seed: 54, numRuns: 150 },
    );
    expect(cut).toBeGreaterThan(500);
  });
});
