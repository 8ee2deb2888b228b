import { expect, it } from 'vitest';
import { leastCostStock } from '../../src/sizing/least-cost-stock.js';
import { resampledStocks } from '../../src/sizing/resampled-stocks.js';
import { drawDays, EIGHT_COSTS, EIGHT_WARE, rowsOf, THREE_KINDS } from './days.js';

const DAYS = 60;
const costs = EIGHT_COSTS.slice(0, 3);
const peaks = drawDays({ means: EIGHT_WARE.slice(0, 3), kinds: THREE_KINDS }, DAYS, 'samples');

it('samples of every day once are the days themselves, and samples of one day need what that day needs', () => {
  let at = 0;
  const inTurn = () => (at++ % DAYS) / DAYS;
  const { stock } = leastCostStock(peaks, costs, 6);
  expect(resampledStocks(peaks, costs, 0.9, 2, inTurn)).toEqual([stock, stock]);
  for (const day of [0, 17, DAYS - 1])
    expect(resampledStocks(peaks, costs, 0.9, 1, () => (day + 0.5) / DAYS)).toEqual([
      rowsOf(peaks)[day],
    ]);
});
