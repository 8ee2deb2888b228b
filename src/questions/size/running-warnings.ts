/** How the house runs, where that is odd enough to say: an empty dishwasher, seats that bind, ware that never comes back. */
import type { CafeModel, MachineModel } from '../../cafe/model.js';
import { meanMs } from '../../engine/durations.js';
import type { Warning } from '../../quantities/flaw.js';
import type { RushFacts } from './rush-facts.js';

/** Mean fill of a rack below which a dishwasher runs mostly empty. A choice: no published field figure was found. */
const LEAST_FILL = 0.35;
const MINUTE = 60_000;

const percent = (share: number): string => `${Math.round(share * 100)} %`;
const count = (value: number): string =>
  value < 10 ? value.toFixed(1) : String(Math.round(value));

const whole = (value: number): string => Math.round(value).toLocaleString('en');

export function runningWarnings(model: CafeModel, facts: RushFacts): Warning[] {
  return [...emptyDishwasher(model, facts), ...seatsBind(facts), ...nothingComesBack(model)];
}

function emptyDishwasher(model: CafeModel, { loads, drinks }: RushFacts): Warning[] {
  if (loads.racksADay < 1 || loads.fill >= LEAST_FILL) return [];
  const { partLoadWait, partLoadsEvery } = model.washing;
  const habits = [
    ...(partLoadWait === null ? [] : ['let part racks wait longer (washing.partLoadWait)']),
    ...(partLoadsEvery === null ? [] : ['wash part racks less often (washing.partLoadsEvery)']),
    'start a rack only from a certain filling (washing.partLoadFrom)',
    ...(model.families.length > 1
      ? ['put cups, saucers and spoons in one rack (give them one family)']
      : []),
  ];
  return [
    {
      code: 'dishwasher-mostly-empty',
      message: `the dishwasher runs mostly empty: ${count(loads.racksADay)} racks a day, ${percent(loads.fill)} full on average, for ${count(drinks.houseDrinks)} drinks in the house; ${habits.join(', or ')}`,
      path: partLoadWait === null ? 'washing.partLoadFrom' : 'washing.partLoadWait',
    },
  ];
}

function seatsBind({ guests }: RushFacts): Warning[] {
  const { left, takeawayInstead } = guests;
  if (left + takeawayInstead < 1) return [];
  const what = [
    ...(takeawayInstead > 0
      ? [`${count(takeawayInstead)} guests a day took their drinks away`]
      : []),
    ...(left > 0 ? [`${count(left)} guests a day left`] : []),
  ].join(' and ');
  return [
    {
      code: 'seats-bind',
      message: `${what} because no seat was free: with more seats you would need more pieces`,
      path: 'seats.count',
    },
  ];
}

/** Ware that cannot be washed and dry again before closing is bought once for every use. */
function nothingComesBack(model: CafeModel): Warning[] {
  const { closingMs, washing, ware } = model;
  const machines = washing.machines ?? [washing.everyMachine];
  if (machines.every(({ down }) => down.some(([from, to]) => from <= 0 && to >= closingMs)))
    return [
      {
        code: 'nothing-comes-back',
        message:
          'nothing can come back within the rush: no dishwasher works while the house is open',
        path: 'washing.machines',
      },
    ];
  const loadMs = (machine: MachineModel): number =>
    machine.warmUpMs + meanMs(machine.loading) + meanMs(machine.cycle) + meanMs(machine.unloading);
  const least = Math.min(...machines.map(loadMs));
  const late = ware.filter(({ drying }) => least + meanMs(drying) >= closingMs);
  if (late.length === 0) return [];
  const minutes = (least + Math.min(...late.map(({ drying }) => meanMs(drying)))) / MINUTE;
  return [
    {
      code: 'nothing-comes-back',
      message: `${late.length === ware.length ? 'nothing can' : `${late.map(({ id }) => id.replaceAll('-', ' ')).join(', ')} cannot`} come back within the rush: warm-up, load and drying take ${whole(minutes)} min, and the house is open for ${whole(closingMs / MINUTE)} min`,
      path: 'washing.machines',
    },
  ];
}
