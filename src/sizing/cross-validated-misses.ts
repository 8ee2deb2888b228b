import { power } from '../elementary/powers.js';
import { allowedMisses } from '../statistics/quantile-of-counts.js';
import { leastCostStock } from './least-cost-stock.js';
import { countMisses, selectDays } from './peaks.js';
import type { Peaks } from './peaks.js';

/** Each day is held out once a deal, in one of as many hands. */
const HANDS = 5;
const DEALS = 2;
/** Parts a search may take here: a stock within a fraction of a percent does for counting misses. */
const PARTS = 200;

/**
 * How many of its own days the cheapest stock may miss so that fresh days meet the service level.
 *
 * The cheapest stock is fitted to the days it is chosen on: it misses exactly those that are dear to save, and on
 * fresh days it misses more. How many more is found by holding days out (cross-validation: Stone, Journal of the
 * Royal Statistical Society B 36, 1974): choose on four fifths of the days, count the misses on the other fifth,
 * in turn for all fifths, for two ways of dealing the days out. The answer is the largest k, at most the plain
 * ⌊n(1 − level)⌋, at which the days held out are missed no more often than asked for; 0 if none is small enough.
 *
 * Fifths rather than halves, because a stock chosen on half the days is over-fitted more than the one chosen on all
 * of them, and was found to buy too much. Days are independent, so they are dealt out by their number, without a
 * draw. Misses are taken to grow with k, which they do but for noise.
 */
export function crossValidatedMisses(
  peaks: Peaks,
  unitCostMinor: readonly number[],
  level: number,
): number {
  const plain = allowedMisses(peaks.days, level);
  if (plain === 0) return 0;
  const splits = dealtOut(peaks);
  const heldOutMisses = (k: number) => {
    let misses = 0;
    for (const { chosenOn, heldOut } of splits) {
      const allowed = Math.round((k * chosenOn.days) / peaks.days);
      misses += countMisses(
        heldOut,
        leastCostStock(chosenOn, unitCostMinor, allowed, { parts: PARTS }).stock,
      );
    }
    return misses / DEALS;
  };

  let kept = { k: 0, misses: 0 };
  let broken = { k: plain, misses: heldOutMisses(plain) };
  if (broken.misses <= plain) return plain;
  while (broken.k - kept.k > 1) {
    // Straight between the two: a few steps do where halving would take twice as many.
    const share = (plain - kept.misses) / (broken.misses - kept.misses);
    const guess = kept.k + Math.round(share * (broken.k - kept.k));
    const k = Math.min(Math.max(guess, kept.k + 1), broken.k - 1);
    const misses = heldOutMisses(k);
    if (misses <= plain) kept = { k, misses };
    else broken = { k, misses };
  }
  return kept.k;
}

interface Split {
  readonly chosenOn: Peaks;
  readonly heldOut: Peaks;
}

function dealtOut(peaks: Peaks): Split[] {
  const splits: Split[] = [];
  for (let deal = 0; deal < DEALS; deal++) {
    const step = power(HANDS, deal);
    for (let hand = 0; hand < HANDS; hand++) {
      const chosenOn: number[] = [];
      const heldOut: number[] = [];
      for (let day = 0; day < peaks.days; day++)
        (Math.floor(day / step) % HANDS === hand ? heldOut : chosenOn).push(day);
      splits.push({ chosenOn: selectDays(peaks, chosenOn), heldOut: selectDays(peaks, heldOut) });
    }
  }
  return splits;
}
