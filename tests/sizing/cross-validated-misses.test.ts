import { expect, it } from 'vitest';
import { crossValidatedMisses } from '../../src/sizing/cross-validated-misses.js';
import { leastCostStock } from '../../src/sizing/least-cost-stock.js';
import { drawDays, THREE_KINDS } from './days.js';

const [MEANS, COSTS] = [
  [6, 11, 17],
  [450, 620, 380],
];

/** Prices that count how often they are looked at. */
function counted(): { prices: number[]; looks: () => number } {
  let looks = 0;
  const prices = new Proxy([...COSTS], {
    get(all, at, self) {
      looks += 1;
      return Reflect.get(all, at, self) as unknown;
    },
  });
  return { prices, looks: () => looks };
}

// Two deals of five hands are ten searches a try. Of 40 halving takes six tries and more for each of these.
it('takes a few tries, as it goes straight between what is known', () => {
  const one = counted();
  leastCostStock(drawDays({ means: MEANS, kinds: THREE_KINDS }, 50, 'one'), one.prices, 3);
  let tries = 0;
  for (const sample of [4, 5, 6]) {
    const { prices, looks } = counted();
    const days = drawDays({ means: MEANS, kinds: THREE_KINDS }, 200, `tries ${sample}`);
    expect(crossValidatedMisses(days, prices, 0.8)).toBeLessThanOrEqual(40);
    tries += looks() / one.looks() / 10;
  }
  expect(tries).toBeLessThanOrEqual(12);
});
