/** The course on the shelf against playing the rule out by drawing, and its laws. */
import seedrandom from 'seedrandom';
import { describe, expect, test } from 'vitest';
import { ordersForPar, type PolicyInput } from '../../src/ordering/policy.js';
import { shelfCourse } from '../../src/ordering/shelf-course.js';
import { DAY_MS } from './supply-samples.js';

const rules: PolicyInput = {
  ware: 'cup',
  par: 30,
  rates: { usesADay: 250, perThousandUses: 0.6, walkOffPerYear: 0, retirementPerYear: 0 },
  leadTime: { law: 'constant', ms: 10 * DAY_MS },
  reviewDays: 28,
  coverDays: 140,
  confidence: 0.95,
  repeat: 'assured',
  horizonDays: 560,
  date: '2026-03-02',
};
const courseOf = (input: PolicyInput) =>
  shelfCourse({
    policy: ordersForPar(input),
    rates: input.rates,
    leadTime: input.leadTime,
    reviewDays: input.reviewDays,
    horizonDays: input.horizonDays,
    date: input.date,
  });

describe('pieces on the shelf over the months', () => {
  test('mean and number of orders are those of the rule played out day by day', () => {
    const policy = ordersForPar(rules);
    const course = courseOf(rules);
    const random = seedrandom.alea('20');
    const runs = 3000;
    const sums = new Float64Array(561);
    let orders = 0;
    for (let run = 0; run < runs; run++) {
      let [standing, due, coming] = [policy.held, Infinity, 0];
      for (let day = 1; day <= 560; day++) {
        for (
          let gap = -Math.log(1 - random.double());
          gap < 0.15;
          gap -= Math.log(1 - random.double())
        )
          standing--;
        if (day === due) [standing, coming, due] = [standing + coming, 0, Infinity];
        if (day % 28 === 0 && day < 560 && standing + coming < policy.reorderPoint!) {
          [coming, due] = [policy.orderUpTo - standing, day + 10];
          orders++;
        }
        sums[day]! += standing;
      }
    }
    // A standard error of the mean is below 0.2 pieces, of the orders below 0.02.
    for (const { day, mean } of course.points)
      if (Number.isInteger(day) && day > 0)
        expect(Math.abs(mean - sums[day]! / runs)).toBeLessThan(0.8);
    expect(Math.abs(course.ordersExpected - orders / runs)).toBeLessThan(0.08);
  });

  test('begins at what is held, ends at the horizon, and its low edge keeps to the par but for the promised share', () => {
    const { points } = courseOf(rules);
    const policy = ordersForPar({ ...rules });
    expect(points[0]).toMatchObject({
      day: 0,
      date: '2026-03-02',
      mean: policy.held,
      low: policy.held,
      high: policy.held,
    });
    expect(points.at(-1)!.day).toBe(560);
    for (const { mean, low, high } of points) {
      expect(low).toBeLessThanOrEqual(mean + 1e-9);
      expect(high).toBeGreaterThanOrEqual(Math.floor(mean));
      expect(low).toBeGreaterThanOrEqual(30);
    }
  });

  test('without repeat supply pieces only go, and none is ordered', () => {
    const { points, ordersExpected, reorderPoint } = courseOf({ ...rules, repeat: 'none' });
    expect([ordersExpected, reorderPoint]).toEqual([0, null]);
    points
      .slice(1)
      .forEach((point, index) =>
        expect(point.mean).toBeLessThanOrEqual(points[index]!.mean + 1e-9),
      );
  });
});
