/**
 * What an alternative costs from today: money now, money a year, and both over the horizon. All amounts in minor
 * units, not rounded. What is already there costs nothing; nothing is counted for selling it either.
 */
import { annuityFactor, presentCost } from './annuity.js';

/** Prices and the frame of years. */
export interface CostFrame {
  readonly daysAYear: number;
  /** Share of a day's uses within the hours that were simulated, 0..1. */
  readonly rushShare: number;
  readonly horizonYears: number;
  readonly discount: number;
  readonly waterPerM3: number;
  readonly energyPerKWh: number;
  readonly detergentPerKg: number;
  readonly rinseAidPerL: number;
  readonly staffHour: number;
  /** Share of staff time that is counted as money: 0 where it is on shift anyway. */
  readonly staffCounted: number;
  /** What service and repairs of a machine cost a year, as a share of its price. */
  readonly serviceShare: number;
}

export interface MachineCost {
  readonly price: number;
  readonly installation: number;
  readonly lifeYears: number;
  /** A load: millilitres, kWh, grams, millilitres. */
  readonly waterMl: number;
  readonly energyKWh: number;
  readonly detergentG: number;
  readonly rinseAidMl: number;
  readonly idleKW: number;
  /** Already there: nothing now, and replaced once its life from today is over. */
  readonly owned: boolean;
}

export interface WareCost {
  readonly pieces: number;
  /** Of them already there. */
  readonly owned: number;
  readonly unitCost: number;
  /** Uses within the hours, a day. */
  readonly usesADay: number;
  readonly brokenPerThousandUses: number;
  readonly lostPerYear: number;
}

/** What the hours of one mean day take. */
export interface DayUse {
  readonly loads: number;
  /** Staff minutes of loading and unloading, polishing, walking trips. */
  readonly staffMinutes: number;
  readonly openHours: number;
  /** Share of the open hours in which a machine works, mean over machines. */
  readonly machineBusy: number;
}

export interface CostInput {
  readonly machines: readonly MachineCost[];
  readonly ware: readonly WareCost[];
  readonly racks: number;
  readonly freight: number;
  readonly once: number;
  readonly aYear: number;
  readonly day: DayUse;
}

export const nowParts = ['ware', 'racks', 'machines', 'installation', 'freight', 'other'] as const;
export const yearParts = [
  'water',
  'energy',
  'chemicals',
  'service',
  'staff',
  'breakage',
  'lost',
  'other',
] as const;
export type NowPart = (typeof nowParts)[number];
export type YearPart = (typeof yearParts)[number];

export interface Costs {
  readonly now: Readonly<Record<NowPart, number>>;
  readonly nowTotal: number;
  readonly year: Readonly<Record<YearPart, number>>;
  readonly yearTotal: number;
  /** A year of all the staff time, counted above or not. */
  readonly staffAYear: number;
  /** Present value over the horizon; machines with installation enter by the even payment of their life. */
  readonly total: number;
  /** Present value of machines with installation alone. */
  readonly machinesPresent: number;
}

const sum = (values: Iterable<number>): number =>
  [...values].reduce((total, value) => total + value, 0);

/** Money of one alternative. Loads are shared evenly over the machines. */
export function costsOf(frame: CostFrame, input: CostInput): Costs {
  const { machines, ware, day } = input;
  const share = (of: (machine: MachineCost) => number): number =>
    machines.length === 0 ? 0 : sum(machines.map(of)) / machines.length;
  // The hours simulated are a share of the day, which uses so much more.
  const days = frame.daysAYear / frame.rushShare;
  const loads = day.loads * days;
  const idleHours = machines.length * (1 - day.machineBusy) * day.openHours * days;
  const bought = machines.filter(({ owned }) => !owned);
  const staffAYear = (day.staffMinutes / 60) * days * frame.staffHour;
  const now = {
    ware: sum(ware.map(({ pieces, owned, unitCost }) => Math.max(0, pieces - owned) * unitCost)),
    racks: input.racks,
    machines: sum(bought.map(({ price }) => price)),
    installation: sum(bought.map(({ installation }) => installation)),
    freight: input.freight,
    other: input.once,
  };
  const year = {
    water: (loads * share(({ waterMl }) => waterMl) * frame.waterPerM3) / 1e6,
    energy:
      (loads * share(({ energyKWh }) => energyKWh) + idleHours * share(({ idleKW }) => idleKW)) *
      frame.energyPerKWh,
    chemicals:
      loads *
      (share(({ detergentG }) => detergentG / 1000) * frame.detergentPerKg +
        share(({ rinseAidMl }) => rinseAidMl / 1000) * frame.rinseAidPerL),
    service: sum(machines.map(({ price }) => price)) * frame.serviceShare,
    staff: staffAYear * frame.staffCounted,
    breakage: sum(
      ware.map(
        ({ usesADay, brokenPerThousandUses, unitCost }) =>
          ((usesADay * days * brokenPerThousandUses) / 1000) * unitCost,
      ),
    ),
    lost: sum(ware.map(({ pieces, lostPerYear, unitCost }) => pieces * lostPerYear * unitCost)),
    other: input.aYear,
  };
  const nowTotal = sum(Object.values(now));
  const yearTotal = sum(Object.values(year));
  const machinesPresent = sum(
    machines.map(
      ({ price, installation, lifeYears, owned }) =>
        presentCost(price + installation, lifeYears, frame.discount, frame.horizonYears) -
        (owned
          ? presentCost(
              price + installation,
              lifeYears,
              frame.discount,
              Math.min(lifeYears, frame.horizonYears),
            )
          : 0),
    ),
  );
  const total =
    nowTotal -
    now.machines -
    now.installation +
    machinesPresent +
    yearTotal * annuityFactor(frame.discount, frame.horizonYears);
  return { now, nowTotal, year, yearTotal, staffAYear, total, machinesPresent };
}

/** Specific heat of water times the rise: kWh to warm so many litres by so many kelvin (1.163 Wh a litre and kelvin, the International Table calorie). */
export const waterHeatKWh = (litres: number, kelvin: number): number =>
  (litres * kelvin * 1.163) / 1000;
