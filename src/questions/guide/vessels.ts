/** Which vessel for which drink, in the house and to take away, as far as the file says. */
import { nameOf } from '../../quantities/name.js';
import type { Scenario } from '../../scenario/scenario.js';
import { meanShares } from '../../scenario/shares-by-time.js';
import type { DrinkVessels } from './answer.js';

const VESSELS = new Set(['cup', 'glass']);

export function drinkVessels(scenario: Scenario): DrinkVessels[] {
  const shares = meanShares(scenario);
  return Object.entries(scenario.menu)
    .map(([drink, given]) => ({
      drink,
      name: nameOf(drink, given),
      share: shares[drink]!,
      house: houseVessel(scenario, given.setting),
      takeaway: takeawayVessel(scenario, drink),
    }))
    .toSorted((a, b) => b.share - a.share);
}

/** The cup or glass of a setting, or its first piece; null for a paper cup in the house too. */
function houseVessel({ ware }: Scenario, setting: readonly string[]): DrinkVessels['house'] {
  const id = setting.find((piece) => VESSELS.has(ware[piece]?.shape ?? '')) ?? setting[0];
  if (id === undefined) return null;
  const { brim = null, rim = null } = ware[id]!;
  return {
    ware: id,
    name: nameOf(id, ware[id]!),
    brimMl: brim,
    rimMm: rim,
    with: setting.filter((piece) => piece !== id).map((piece) => nameOf(piece, ware[piece]!)),
  };
}

/** The paper cup by how the drink is made, else by what is bought for it. */
function takeawayVessel({ suit, supply }: Scenario, drink: string): DrinkVessels['takeaway'] {
  const bought = Object.entries(supply?.takeaway?.cups ?? {}).find(([, cup]) =>
    cup.drinks.includes(drink),
  );
  const id = suit?.drinks?.[drink]?.paper ?? bought?.[0];
  if (id === undefined) return null;
  const paper = suit?.papers?.[id];
  return {
    name: bought === undefined || bought[0] !== id ? id : nameOf(id, bought[1]),
    nominalMl: paper?.nominal ?? null,
    brimMl: paper?.brim ?? null,
    rimMm: paper?.rim ?? null,
  };
}
