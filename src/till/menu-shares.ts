/**
 * From what a till counts to the shares of a menu.
 */
import type { GroupShare } from './fit-till.js';

export interface DrinkShare {
  readonly drink: string;
  /** Of all drinks; the shares of a menu sum to 1. */
  readonly share: number;
  /** Some item of the map stands for it. */
  readonly onTill: boolean;
  /** How the share was come by where the till does not tell drinks apart; null where it does. */
  readonly divided: string | null;
}

/**
 * A share for every drink of the menu. What the till counts for several drinks together is divided
 * among them in the proportions of the base, or evenly where the base gives them none.
 *
 * @param base The menu's drinks and their shares in the base; null where it has none that can be read.
 */
export function menuShares(
  groups: readonly GroupShare[],
  base: ReadonlyMap<string, number | null>,
): DrinkShare[] {
  const shares = new Map(
    [...base.keys()].map((drink) => [
      drink,
      { share: 0, onTill: false, divided: null as string | null },
    ]),
  );
  for (const group of groups) {
    const weights = group.drinks.map((drink) => base.get(drink) ?? 0);
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    group.drinks.forEach((drink, at) => {
      const entry = shares.get(drink)!;
      entry.onTill = true;
      entry.share += group.share * (all > 0 ? weights[at]! / all : 1 / weights.length);
      if (group.drinks.length > 1)
        entry.divided = `"${group.items.join('", "')}" divided among ${group.drinks.join(', ')} ${all > 0 ? 'as in the base scenario' : 'evenly'}`;
    });
  }
  return [...shares].map(([drink, entry]) => ({ drink, ...entry }));
}

/**
 * Shares as percentages with two decimals that sum to 100 % exactly: what rounding down leaves over goes
 * to those that lost most by it (largest remainders).
 *
 * @param shares Sum to 1.
 */
export function percents(shares: readonly number[]): string[] {
  const exact = shares.map((share) => share * 10_000);
  const units = exact.map(Math.floor);
  const left = Math.round(10_000 - units.reduce((sum, unit) => sum + unit, 0));
  const byLoss = exact
    .map((value, at) => ({ at, loss: value - units[at]! }))
    .sort((one, other) => other.loss - one.loss || one.at - other.at);
  for (const { at } of byLoss.slice(0, left)) units[at]! += 1;
  return units.map((unit) => `${unit / 100} %`);
}
