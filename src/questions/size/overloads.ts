/**
 * Overloads: where work comes in faster than it can be done, so that more stock only buys time.
 *
 * Worked out from expectations, slot by slot: work offered (drinks × making time, racks × handling and
 * cycle, trips) over the people or machines there are. A stage is overloaded when its backlog, begun at
 * opening and fed slot by slot, is still growing after half an hour of more work than capacity.
 */
import { meanMs } from '../../engine/durations.js';
import type { CafeModel } from '../../cafe/model.js';
import type { Overload } from './answer.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const LONG_ENOUGH = HOUR / 2;

interface Step {
  readonly fromMs: number;
  readonly untilMs: number;
  /** Work offered in server-milliseconds a millisecond. */
  readonly offered: number;
}

/**
 * @param houseShare share of parties that sit down, after those turned away (0..1), as simulated
 * @returns the overloaded stages, worst first
 */
export function findOverloads(model: CafeModel, houseShare: number): Overload[] {
  const { guests, makers, clearing, washing } = model;
  const meanSize = guests.partySize.reduce((sum, share, index) => sum + share * (index + 1), 0);
  const secondShare = guests.staysIn > 0 ? guests.secondDrink : 0;
  const making = model.menu.reduce((sum, drink) => sum + drink.share * meanMs(drink.making), 0);
  const houseDrinks = meanSize * (guests.drinksEach + secondShare) * houseShare;
  const awayDrinks = meanSize * guests.drinksEach * (1 - houseShare);
  const makerMs = (houseDrinks + awayDrinks) * making;
  const racks =
    model.menu.reduce(
      (sum, drink) =>
        sum +
        drink.share * drink.setting.reduce((part, ware) => part + 1 / model.ware[ware]!.perRack, 0),
      0,
    ) * houseDrinks;
  const pieces =
    model.menu.reduce((sum, drink) => sum + drink.share * drink.setting.length, 0) * houseDrinks;
  const one = washing.everyMachine;
  const loadMs = meanMs(one.loading) + meanMs(one.cycle) + meanMs(one.unloading);
  const handMs = meanMs(one.loading) + meanMs(one.unloading);
  const atOnce =
    washing.machines === null
      ? null
      : washing.machines.reduce((sum, machine) => sum + machine.racks, 0);
  const list: Overload[] = [];
  const arrivals = model.arrivals.map((step, index) => ({
    fromMs: model.arrivals[index - 1]?.untilMs ?? 0,
    untilMs: step.untilMs,
    rate: step.partiesPerMs,
  }));
  const steps = (work: number): Step[] =>
    arrivals.map(({ fromMs, untilMs, rate }) => ({ fromMs, untilMs, offered: rate * work }));
  const washSteps = (perRackMs: number): Step[] =>
    steps(racks * perRackMs).map((step) => ({
      ...step,
      offered: step.offered + otherRate(model, step.fromMs) * perRackMs,
    }));
  consider(list, 'makers', makers, steps(makerMs));
  if (washing.machines !== null) consider(list, 'machines', atOnce, washSteps(loadMs));
  if (typeof washing.hands === 'number')
    consider(list, 'hands', washing.hands, washSteps(handMs / one.racks));
  if (clearing.every !== null && clearing.tripPieces !== null)
    consider(
      list,
      'clearers',
      clearing.clearers,
      steps((pieces / clearing.tripPieces) * meanMs(clearing.trip)),
    );
  return list.sort((a, b) => b.load - a.load);
}

function otherRate(model: CafeModel, atMs: number): number {
  return model.washing.otherLoads?.steps.find((step) => atMs < step.untilMs)?.racksPerMs ?? 0;
}

function consider(
  list: Overload[],
  what: string,
  servers: number | null,
  steps: readonly Step[],
): void {
  if (servers === null) return;
  const busiest = worstHour(steps);
  if (busiest <= servers) return;
  let over = 0;
  let from: number | null = null;
  for (const step of steps) {
    if (step.offered > servers) {
      from ??= step.fromMs;
      over += step.untilMs - step.fromMs;
    }
  }
  if (from === null || over < LONG_ENOUGH) return;
  list.push({
    what,
    load: busiest / servers,
    fromMinute: from / MINUTE,
    wouldDo: Math.max(servers + 1, Math.ceil(busiest / 0.85)),
  });
}

/** Most work offered in any hour (or the whole time, if shorter), as a mean number of servers. */
function worstHour(steps: readonly Step[]): number {
  const end = steps.at(-1)?.untilMs ?? 0;
  const window = Math.min(HOUR, end);
  const workUntil = (ms: number): number =>
    steps.reduce(
      (sum, step) => sum + step.offered * Math.max(0, Math.min(ms, step.untilMs) - step.fromMs),
      0,
    );
  return Math.max(
    0,
    ...steps
      .map(({ fromMs }) => Math.min(fromMs, end - window))
      .map((from) => (workUntil(from + window) - workUntil(from)) / window),
  );
}
