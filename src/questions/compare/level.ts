/** Which level to buy: stocks at several levels on the base's days, and what the drinks short at each cost. */
import { yearlyPayment } from '../../comparing/annuity.js';
import { kneeOf } from '../../comparing/knee.js';
import {
  bestLevel,
  levelsWorth,
  shortDrinkCost,
  type LevelPoint,
} from '../../comparing/level-worth.js';
import { minorPerUnit } from '../../quantities/money.js';
import { levelWorthBuying } from '../../ordering/newsvendor.js';
import { meanOverKinds } from '../../scenario/kinds.js';
import { leastCostBeyond } from '../../sizing/least-cost-beyond.js';
import { allowedMisses } from '../../statistics/quantile-of-counts.js';
import type { Answer } from '../size/answer.js';
import type { LevelAnswer } from './answer.js';
import { frameOf, lossesIn, shortDrinkOf } from './costs.js';
import { runKinds, type Evaluated } from './evaluate.js';
import type { Runner } from '../../cafe/runner.js';

/** Below it drinks are short so often that fewer days count them as well. */
const FEW_SHORT = 0.9;
const LEVELS = [0.7, 0.75, 0.8, 0.85, 0.9, 0.925, 0.95, 0.975, 0.99, 0.995];

/** Days of one level, and of all together. */
const daysAt = (level: number): number => (level < FEW_SHORT ? 400 : 1000);
export const levelDays = (most: number): number =>
  [...LEVELS, 1].reduce((sum, level) => sum + Math.min(most, daysAt(level)), 0);

export async function levelToBuy(
  base: Evaluated,
  certified: Answer,
  runner: Runner,
  chosen: number,
): Promise<LevelAnswer> {
  const { candidate, kinds, days, unitCost } = base;
  const { scenario } = candidate;
  const frame = frameOf(scenario);
  const levels = [...new Set([...LEVELS, chosen])]
    .toSorted((a, b) => a - b)
    .filter((level) => allowedMisses(days, level) >= 1);
  const points: (LevelPoint & { readonly pieces: number })[] = [];
  for (const level of levels) {
    const { stock, cost } = leastCostBeyond(
      kinds.map(({ peaks }) => ({ peaks, misses: allowedMisses(days, level) })),
      unitCost,
      base.owned,
      { parts: 50 },
    );
    // Fresh days: those that a stock was chosen on flatter it.
    const runs = await runKinds(kinds, runner, {
      from: days,
      days: Math.min(daysAt(level), days),
      stock,
    });
    points.push({
      level,
      stockCost: cost,
      shortADay: meanOverKinds(kinds, (at) => runs[at]!.sums.shortDrinks / runs[at]!.days),
      pieces: stock.reduce((sum, pieces) => sum + pieces, 0),
    });
  }
  const perUnit = minorPerUnit(scenario.currency);
  // One figure for one stock: all levels are moved by what the certified answer differs from these days'.
  const own = points.find(({ level }) => level === chosen);
  const certifiedPieces = certified.stock.reduce((sum, { pieces }) => sum + pieces, 0);
  const morePieces = own === undefined ? 0 : certifiedPieces - own.pieces;
  const shift = own === undefined ? 0 : certified.cost * perUnit - own.stockCost;
  const stockCost = certified.cost * perUnit;
  const lost = base.stock.reduce(
    (sum, pieces, ware) =>
      sum +
      pieces * unitCost[ware]! * lossesIn(scenario, Object.keys(scenario.ware)[ware]!).lostPerYear,
    0,
  );
  const yearlyShare =
    yearlyPayment(1, frame.discount, frame.horizonYears) + (stockCost === 0 ? 0 : lost / stockCost);
  const shortCost = shortDrinkCost(shortDrinkOf(scenario), frame.staffHour);
  const worth = levelsWorth(
    points.map((point) => ({ ...point, stockCost: point.stockCost + shift })),
    yearlyShare,
    shortCost,
    frame.daysAYear,
  );
  const pieces = base.stock.reduce((sum, count) => sum + count, 0);
  const knee = kneeOf(worth.map(({ level, stockAYear }) => ({ x: level, y: stockAYear })));
  return {
    points: worth.map((one, at) => ({
      level: one.level,
      pieces: Math.max(0, points[at]!.pieces + morePieces),
      stockCost: one.stockCost / perUnit,
      shortADay: one.shortADay,
      stockAYear: one.stockAYear / perUnit,
      shortAYear: one.shortAYear / perUnit,
      totalAYear: one.totalAYear / perUnit,
      perSafeRush: one.perSafeRush / perUnit,
    })),
    chosen,
    recommended: bestLevel(worth).level,
    newsvendor:
      pieces === 0
        ? 0
        : levelWorthBuying({
            pieceMinorPerYear: (stockCost / pieces) * yearlyShare,
            shortMinor: shortCost,
            rushesPerYear: frame.daysAYear,
          }),
    knee: knee === null ? null : worth[knee]!.level,
    shortDrinkCost: shortCost / perUnit,
  };
}
