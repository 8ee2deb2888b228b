import { describe, expect, it } from 'vitest';
import { kneeOf } from '../../src/comparing/knee.js';
import { bestLevel, levelsWorth, shortDrinkCost } from '../../src/comparing/level-worth.js';
import { measureFirst } from '../../src/comparing/moves.js';

describe('which level to buy', () => {
  // A newsvendor's table: c a year per piece, p per short drink; shortfalls of a Poisson demand of mean 20, worked out directly.
  const poisson = (k: number): number =>
    Math.exp(
      k * Math.log(20) -
        20 -
        Array.from({ length: k }, (_, i) => Math.log(i + 1)).reduce((a, b) => a + b, 0),
    );
  const within = (stock: number): number =>
    Array.from({ length: stock + 1 }, (_, k) => poisson(k)).reduce((a, b) => a + b, 0);
  const short = (stock: number): number =>
    Array.from({ length: 80 }, (_, k) => Math.max(0, k - stock) * poisson(k)).reduce(
      (a, b) => a + b,
      0,
    );

  it('meets the critical ratio of the newsvendor', () => {
    const [piece, drink, days] = [500, 40, 250];
    const stocks = Array.from({ length: 30 }, (_, index) => 15 + index);
    const points = stocks.map((stock) => ({
      level: within(stock),
      stockCost: stock * piece,
      shortADay: short(stock),
    }));
    const best = bestLevel(levelsWorth(points, 0.3, drink, days));
    const ratio = 1 - (piece * 0.3) / (drink * days);
    expect(best.level).toBe(within(stocks.find((stock) => within(stock) >= ratio)!));
  });

  it('adds up what a short drink costs', () =>
    expect(
      shortDrinkCost({ paperCup: 12, delayMinutes: 3, guestLost: 0.02, guestWorth: 5000 }, 2000),
    ).toBe(12 + 100 + 100));

  it('finds the knee of two straight pieces where they meet', () => {
    const points = Array.from({ length: 11 }, (_, x) => ({ x, y: x <= 7 ? x : 7 + 10 * (x - 7) }));
    expect(kneeOf(points)).toBe(7);
    expect(kneeOf(points.map(({ x }) => ({ x, y: 2 * x })))).toBeNull();
  });
});

describe('what to measure first', () => {
  it('takes the widest that can be measured, and tells what is left as a root of squares', () => {
    const swings = [
      { path: 'a', low: 0, high: 6 },
      { path: 'b', low: 10, high: 2 },
      { path: 'c', low: 0, high: 24 },
      { path: 'd', low: 5, high: 5 },
    ];
    expect(measureFirst(swings, (path) => path !== 'c')).toEqual({
      paths: ['b', 'a'],
      now: 13,
      left: 12,
    });
  });
});
