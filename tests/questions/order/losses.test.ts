/** What a scenario says of losses reaches the holding. */
import { expect, test } from 'vitest';
import { smallestHolding } from '../../../src/ordering/holding-target.js';
import { supplySchema } from '../../../src/ordering/schema.js';
import { lossesOf } from '../../../src/questions/order/study.js';
import type { Scenario } from '../../../src/scenario/scenario.js';

test('breakages in bursts ask for more spares than breakages one by one', () => {
  const holding = (dispersion: number): number => {
    const supply = supplySchema.parse({ losses: { cup: { perThousandUses: 0.5, dispersion } } });
    const rates = lossesOf({ ware: { cup: {} }, supply } as unknown as Scenario, 'cup');
    expect(rates.dispersion).toBe(dispersion);
    return smallestHolding(60, { ...rates, usesADay: 200 }, [{ days: 100, weight: 1 }], 0.95);
  };
  // Mean 10: Poisson has its 95 % point at 15 (tables), a variance of 50 lies well beyond.
  expect(holding(1)).toBe(75);
  expect(holding(5)).toBeGreaterThan(holding(2.5));
  expect(holding(2.5)).toBeGreaterThan(holding(1));
});
