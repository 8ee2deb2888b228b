/**
 * Handbook values of shared/checks/published.json: economic order (Nahmias, Production and Operations
 * Analysis), base stock (Sherbrooke, Optimal Inventory Modeling of Systems, ch. 2) and newsvendor (Nahmias, ch. 5).
 * Each entry names its source; where its basis says so, the book's figure is from memory and the value was
 * computed independently.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { baseStock, sparesForFillRate } from '../../src/ordering/base-stock.js';
import { poissonCounts } from '../../src/ordering/counts-of-pieces.js';
import { costPerYear, discountedOrder, economicOrder } from '../../src/ordering/economic-order.js';
import {
  criticalRatio,
  levelWorthBuying,
  mismatchCost,
  newsvendor,
  normalNewsvendor,
} from '../../src/ordering/newsvendor.js';

interface Check<I, E> {
  readonly id: string;
  readonly topic: string;
  readonly inputs: I;
  readonly expected: E;
  readonly tolerance: number;
}

const all = JSON.parse(
  readFileSync(new URL('../../shared/checks/published.json', import.meta.url), 'utf8'),
) as Check<never, never>[];
const check = <I, E>(id: string): Check<I, E> => {
  const found = all.find((one) => one.id === id);
  if (found === undefined) throw new Error(`published.json has no ${id}`);
  return found as Check<I, E>;
};
const near = (value: number, expected: number, tolerance: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe('economic order', () => {
  test('Nahmias, example 4.1', () => {
    const { inputs, expected, tolerance } = check<
      { K: number; lambdaPerYear: number; h: number },
      { Q: number; T_years: number; rounded: number }
    >('eoq-nahmias-4.1');
    const order = economicOrder({
      orderCost: inputs.K,
      demandPerYear: inputs.lambdaPerYear,
      holdingPerPieceYear: inputs.h,
    });
    near(order.quantity, expected.Q, tolerance);
    near(order.years, expected.T_years, tolerance);
    expect(Math.round(order.quantity)).toBe(expected.rounded);
    near(
      order.costPerYear,
      (inputs.K * inputs.lambdaPerYear) / order.quantity + (inputs.h * order.quantity) / 2,
      1e-9,
    );
  });

  test('Nahmias, example 4.4: all-units discount', () => {
    const { inputs, expected, tolerance } = check<
      { K: number; lambda: number; I: number; breaks: [number, number][] },
      { EOQs: number[]; cost: Record<string, number>; best: number }
    >('eoq-quantity-discount');
    const given = {
      orderCost: inputs.K,
      demandPerYear: inputs.lambda,
      holdingRate: inputs.I,
      breaks: inputs.breaks.map(([from, price]) => ({ from, price })),
    };
    const order = discountedOrder(given);
    expected.EOQs.forEach((quantity, index) =>
      near(order.atEachPrice[index]!, quantity, tolerance),
    );
    for (const [quantity, cost] of Object.entries(expected.cost))
      near(costPerYear(given, Number(quantity)), cost, tolerance);
    expect(order.best.quantity).toBe(expected.best);
    expect(order.candidates.map(({ quantity }) => quantity)).toEqual([400, 500, 1000]);
  });

  test('no whole order size is cheaper than the best with discounts', () => {
    const given = {
      orderCost: 31,
      demandPerYear: 240,
      holdingRate: 0.25,
      breaks: [
        { from: 0, price: 4.2 },
        { from: 72, price: 3.9 },
        { from: 240, price: 3.5 },
      ],
    };
    const { best } = discountedOrder(given);
    for (let quantity = 1; quantity <= 1000; quantity++)
      expect(costPerYear(given, quantity)).toBeGreaterThanOrEqual(best.costPerYear - 1e-9);
  });
});

describe('base stock', () => {
  test.each(['ebo-1', 'ebo-4', 'ebo-70'])('%s', (id) => {
    const { inputs, expected, tolerance } = check<
      { pipelineMean: number; s: number[] },
      { EBO: number[]; fillRate: number[] }
    >(id);
    inputs.s.forEach((spares, index) => {
      const result = baseStock(inputs.pipelineMean, spares);
      near(result.expectedBackorders, expected.EBO[index]!, tolerance);
      near(result.fillRate, expected.fillRate[index]!, tolerance);
    });
  });

  test('spares for a fill rate are the fewest that reach it', () => {
    const spares = sparesForFillRate(4, 0.9);
    expect(baseStock(4, spares).fillRate).toBeGreaterThanOrEqual(0.9);
    expect(baseStock(4, spares - 1).fillRate).toBeLessThan(0.9);
  });
});

describe('newsvendor', () => {
  test('Nahmias, the newsstand', () => {
    const { inputs, expected, tolerance } = check<
      { mean: number; sd: number; cu: number; co: number },
      { criticalRatio: number; z: number; Q: number; rounded: number }
    >('newsvendor-nahmias');
    const answer = normalNewsvendor(inputs, { under: inputs.cu, over: inputs.co });
    near(answer.ratio, expected.criticalRatio, tolerance);
    near(answer.z, expected.z, tolerance);
    near(answer.quantity, expected.Q, tolerance);
    expect(Math.round(answer.quantity)).toBe(expected.rounded);
  });

  test.each(['newsvendor-poisson-10', 'newsvendor-poisson-70'])('%s', (id) => {
    const { inputs, expected, tolerance } = check<
      { poissonMean: number; cu: number; co: number },
      { Q: number; expectedCost: number }
    >(id);
    const demand = poissonCounts(inputs.poissonMean);
    const costs = { under: inputs.cu, over: inputs.co };
    const answer = newsvendor(demand, costs);
    expect(answer.quantity).toBe(expected.Q);
    near(answer.expectedCost, expected.expectedCost, tolerance);
    for (let quantity = 0; quantity < 2 * inputs.poissonMean; quantity++)
      expect(mismatchCost(demand, quantity, costs)).toBeGreaterThanOrEqual(
        answer.expectedCost - 1e-9,
      );
  });

  test('the level worth buying: at it, one piece more costs what it saves', () => {
    const costs = { pieceMinorPerYear: 150, shortMinor: 40, rushesPerYear: 300 };
    const level = levelWorthBuying(costs);
    expect((1 - level) * costs.shortMinor * costs.rushesPerYear).toBeCloseTo(
      costs.pieceMinorPerYear,
      9,
    );
    expect(levelWorthBuying({ ...costs, shortMinor: 0.4 })).toBe(0);
    expect(criticalRatio({ under: 19, over: 1 })).toBe(0.95);
  });
});
