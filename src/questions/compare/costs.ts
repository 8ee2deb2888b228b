/** What an alternative's scenario is priced with, and its costs from what the rush took. */
import { wareClass, rackKind } from '../../catalogue/catalogue.js';
import {
  costsOf,
  type CostFrame,
  type Costs,
  type DayUse,
  type MachineCost,
} from '../../comparing/costs.js';
import type { ShortDrink } from '../../comparing/level-worth.js';
import { calendarOf } from '../../scenario/calendar.js';
import { ownedPieces } from '../../scenario/have.js';
import { inMinor, type Money } from '../../quantities/money.js';
import { priceMinor } from '../../quantities/price.js';

import type { Answer } from '../size/answer.js';
import type { Scenario } from '../../scenario/scenario.js';

/** Where neither costs nor supply tells; all else that the costs leave out is filled from the reference data. */
const DEFAULTS = { rushShare: 1, staffCounted: 0 } as const;

export function frameOf(scenario: Scenario): CostFrame {
  const { costs, supply, staffHour } = scenario;
  const hour = staffHour.minor;
  return {
    daysAYear: calendarOf(scenario).daysAYear,
    rushShare: costs.rushShare ?? supply?.rushShare ?? DEFAULTS.rushShare,
    horizonYears: costs.horizonYears,
    discount: costs.discount,
    waterPerM3: inMinor(costs.waterPerM3, hour),
    energyPerKWh: inMinor(costs.energyPer100kWh, hour) / 100,
    detergentPerKg: inMinor(costs.detergentPerKg, hour),
    rinseAidPerL: inMinor(costs.rinseAidPerL, hour),
    staffHour: hour,
    staffCounted: costs.staffCounted ?? DEFAULTS.staffCounted,
    serviceShare: costs.service,
  };
}

/** Difference in the total below which an owner does not care; 0 where the file states none. */
export const indifferenceOf = ({ costs, staffHour }: Scenario): number =>
  costs.indifference === undefined ? 0 : inMinor(costs.indifference, staffHour.minor);

export function shortDrinkOf({
  costs: { shortDrink },
  staffHour: { minor: hour },
}: Scenario): ShortDrink {
  return {
    paperCup: priceMinor(shortDrink.paperCup, 1, 1, hour),
    delayMinutes: shortDrink.delay / 60_000,
    guestLost: shortDrink.guestLost,
    guestWorth: inMinor(shortDrink.guestWorth, hour),
  };
}

export function machinesOf({ washing, staffHour, have }: Scenario): MachineCost[] {
  if (!Array.isArray(washing.machines)) return [];
  const minor = (money: Money | undefined): number =>
    money === undefined ? 0 : inMinor(money, staffHour.minor);
  const left = new Map(Object.entries(have?.machines ?? {}));
  return washing.machines.flatMap((machine) =>
    Array.from({ length: machine.count ?? 1 }, () => {
      const there = left.get(machine.class ?? '') ?? 0;
      if (machine.class !== undefined) left.set(machine.class, Math.max(0, there - 1));
      return {
        price: minor(machine.price),
        installation: minor(machine.installation),
        lifeYears: machine.lifeYears ?? 12,
        waterMl: machine.water ?? 0,
        energyKWh: machine.energy ?? 0,
        detergentG: machine.detergent ?? 0,
        rinseAidMl: machine.rinseAid ?? 0,
        idleKW: machine.idlePower ?? 0,
        owned: there > 0,
      };
    }),
  );
}

/** Losses of a ware: the scenario's own, else those of its class (assumed), else none. */
export function lossesIn(
  scenario: Scenario,
  id: string,
): { readonly brokenPerThousandUses: number; readonly lostPerYear: number } {
  const own = scenario.supply?.losses?.[id];
  const like = scenario.ware[id]!.like;
  const cls = like === undefined ? null : wareClass(like);
  return {
    brokenPerThousandUses: own?.perThousandUses ?? cls?.brokenPerThousandUses.value ?? 0,
    lostPerYear: own?.walkOff ?? cls?.lostPerYear.value ?? 0,
  };
}

/** Racks bought: as many as are owned in the scenario, or as the rush needs where that is no limit. */
export function racksOf(
  scenario: Scenario,
  needed: Answer['loads']['racksNeeded'],
): { readonly racks: number; readonly cost: number } {
  const hour = scenario.staffHour.minor;
  let [racks, cost] = [0, 0];
  for (const { kind, racks: most } of needed) {
    const count = scenario.racks?.owned?.[kind] ?? most;
    // A rack of the house's own kind costs what an open one does, where the scenario does not say.
    const price = scenario.costs?.rack ?? (rackKind(kind) ?? rackKind('open'))?.price.value;
    racks += count;
    const buy = Math.max(0, count - (scenario.have?.racks?.[kind] ?? 0));
    cost += buy * (price === undefined ? 0 : inMinor(price, hour));
  }
  return { racks, cost };
}

/** Freight of buying what of the stock is not there: the cheapest plain step of a supplier that quotes every ware; nothing where none does. */
export function freightOf(scenario: Scenario, stock: readonly number[]): number {
  const hour = scenario.staffHour.minor;
  const minor = (money: Money | undefined): number =>
    money === undefined ? 0 : inMinor(money, hour);
  const ids = Object.keys(scenario.ware);
  const owned = ownedPieces(scenario);
  const costs = Object.values(scenario.supply?.suppliers ?? {}).flatMap(({ quotes, freight }) => {
    if (!ids.every((id) => quotes[id] !== undefined)) return [];
    const cartons = ids.reduce(
      (sum, id, ware) =>
        sum + Math.ceil(Math.max(0, stock[ware]! - owned[ware]!) / quotes[id]!.carton),
      0,
    );
    const step = freight.steps?.filter(({ from }) => from <= cartons).at(-1) ?? freight;
    return [minor(step.fixed) + cartons * minor(step.perCarton)];
  });
  return costs.length === 0 ? 0 : Math.min(...costs);
}

/** Floor that the pieces take side by side in one layer, handles and all, m². */
export const shelfM2 = (scenario: Scenario, stock: readonly number[]): number =>
  Object.values(scenario.ware).reduce((sum, { rim = 0, foot = 0, handle = 0 }, ware) => {
    const widest = Math.max(rim, foot);
    return sum + (stock[ware]! * widest * (widest + handle)) / 1e6;
  }, 0);

export interface Taken {
  readonly stock: readonly number[];
  readonly unitCost: readonly number[];
  readonly usesADay: readonly number[];
  readonly racksNeeded: Answer['loads']['racksNeeded'];
  readonly day: DayUse;
}

export function costOfScenario(
  scenario: Scenario,
  taken: Taken,
  extra: { readonly once: number; readonly aYear: number },
): Costs {
  const owned = ownedPieces(scenario);
  return costsOf(frameOf(scenario), {
    machines: machinesOf(scenario),
    ware: Object.keys(scenario.ware).map((id, ware) => ({
      pieces: taken.stock[ware]!,
      owned: owned[ware]!,
      unitCost: taken.unitCost[ware]!,
      usesADay: taken.usesADay[ware]!,
      ...lossesIn(scenario, id),
    })),
    racks: racksOf(scenario, taken.racksNeeded).cost,
    freight: freightOf(scenario, taken.stock),
    once: extra.once,
    aYear: extra.aYear,
    day: taken.day,
  });
}
