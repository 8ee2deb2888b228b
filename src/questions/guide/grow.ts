/**
 * A house like the one of a file with other seats and another takeaway share. Guests who come to sit stay the same for each
 * seat; people and racks become the smallest whole number that has no more work each than in the file. Dishwashers may have
 * more, as long as they are idle for half of the time: nobody buys another for less.
 */
import { meanMs } from '../../engine/durations.js';
import { closingMs } from '../../scenario/arrivals.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { rawValueAt, scaled, tidy, withoutRaw, withRawValue } from '../../scenario/raw-paths.js';
import type { Scenario } from '../../scenario/scenario.js';
import { meanStaysIn } from '../../scenario/shares-by-time.js';
import { isGroup } from '../../scenario/tree.js';
import type { MachineModel } from '../../cafe/model.js';

export interface HouseSize {
  readonly seats: number;
  /** Share of guests who take away, 0..1; null: as in the file. */
  readonly takeaway: number | null;
}

/** A scenario as it was read, and the tree it was read from. */
export interface Pattern {
  readonly scenario: Scenario;
  readonly raw: unknown;
  /** Seats, a number. */
  readonly seats: number;
  /** Share of the makers' work that is at the dishwasher; 0 where others do that. */
  readonly washingShare: number;
  /** Mean share of the time in which the file's dishwashers are busy, 0..1; null: not known, or as many as are needed. */
  readonly machinesBusy: number | null;
}

/**
 * Dishwashers are added only where those of the file would be busy for more of the time than this. Assumed: one that is busy
 * half of the time on average still keeps up in an hour with twice the usual work.
 */
export const BUSY_ENOUGH = 0.5;

/** How much more there is of each than in the file: 1 is the same. */
export interface Growth {
  /** Guests who come to sit, and with them pieces, trips, racks and loads. */
  readonly inHouse: number;
  /** All guests. */
  readonly guests: number;
  /** Share who stay in. */
  readonly staysIn: number;
  /** Work of those who make drinks. */
  readonly making: number;
}

export function growthOf(pattern: Pattern, { seats, takeaway }: HouseSize): Growth {
  const { scenario, washingShare } = pattern;
  const stays = meanStaysIn(scenario);
  const { drinksEach, secondDrink } = scenario.guests;
  const inHouse = seats / pattern.seats;
  const staysIn = takeaway === null ? 1 : (1 - takeaway) / stays;
  const guests = inHouse / staysIn;
  // Guests who stay in have a second drink now and then; those who take away do not.
  const drinks = guests * (drinksEach + staysIn * stays * secondDrink);
  const before = drinksEach + stays * secondDrink;
  return {
    inHouse,
    guests,
    staysIn,
    making:
      (1 - washingShare) * (before === 0 ? inHouse : drinks / before) + washingShare * inHouse,
  };
}

/** Rounding of a share such as 30/26 must not cost a whole machine. */
const ROUNDING = 1e-9;

/** The smallest whole number with no more work each, where there is `times` the work. */
export const grown = (count: number, times: number): number =>
  Math.max(1, Math.ceil(count * times - ROUNDING));

/** The file's tree for the other house, to be checked as any scenario is. What the house owns already is left out. */
export function grownRaw(pattern: Pattern, size: HouseSize): unknown {
  const { scenario, raw } = pattern;
  const growth = growthOf(pattern, size);
  const { clearing, counter, washing, racks } = scenario;
  const set = (tree: unknown, path: (string | number)[], value: unknown): unknown =>
    value === undefined ? tree : withRawValue(tree, path, value);
  const more = (count: number | null | undefined, times: number): number | undefined =>
    typeof count === 'number' ? grown(count, times) : undefined;

  let tree = ['have', 'alternatives'].reduce(
    (from, key) => (isGroup(from) && key in from ? withoutRaw(from, [key]) : from),
    raw,
  );
  if (growth.guests !== 1)
    tree = set(tree, ['arrivals'], scaled(rawValueAt(raw, ['arrivals']), growth.guests));
  if (size.takeaway !== null)
    tree = set(tree, ['guests', 'staysIn'], staysInRaw(scenario, growth.staysIn));
  tree = set(tree, ['seats', 'count'], size.seats);
  tree = set(tree, ['counter', 'makers'], more(counter.makers, growth.making));
  if (clearing !== 'atOnce')
    tree = set(tree, ['clearing', 'clearers'], more(clearing.clearers, growth.inHouse));
  if (typeof washing.hands === 'number')
    tree = set(tree, ['washing', 'hands'], more(washing.hands, growth.inHouse));
  for (const [kind, owned] of Object.entries(racks?.owned ?? {}))
    tree = set(tree, ['racks', 'owned', kind], more(owned, growth.inHouse));
  if (washing.otherLoads !== undefined && growth.inHouse !== 1) {
    const at = ['washing', 'otherLoads', 'racks'];
    tree = set(tree, at, scaled(rawValueAt(raw, at), growth.inHouse));
  }
  return set(tree, ['washing', 'machines'], machinesRaw(pattern, machineGrowth(pattern, growth)));
}

/** One share, or each step's, times the same: guests who sit stay as they are in every step. */
function staysInRaw({ guests: { staysIn } }: Scenario, times: number): unknown {
  const percent = (share: number): string => `${tidy(100 * share * times)} %`;
  if (typeof staysIn === 'number') return percent(staysIn);
  return staysIn.map((step) => ({
    for: `${tidy(step.for / 60_000)} min`,
    staysIn: percent(step.staysIn),
  }));
}

/** Largest share of guests who stay in at any time of the day, were it so many times the file's. */
export function mostStayingIn({ guests: { staysIn } }: Scenario, times: number): number {
  const shares = typeof staysIn === 'number' ? [staysIn] : staysIn.map((step) => step.staysIn);
  return times * Math.max(...shares);
}

/** How many times as much the machines must be able to wash: less than the work grows, where those of the file have time left. */
function machineGrowth({ machinesBusy }: Pattern, { inHouse }: Growth): number {
  if (machinesBusy === null || inHouse <= 1) return inHouse;
  return Math.max(1, inHouse * Math.min(1, machinesBusy / BUSY_ENOUGH));
}

/** The list with as many machines as it takes to wash `times` as much: those of the list in its order, then more of the first. */
function machinesRaw({ scenario, raw }: Pattern, times: number): unknown {
  const { machines } = scenario.washing;
  if (!Array.isArray(machines)) return undefined;
  const model = compile(scenario, piecesPerRackOf).washing.machines ?? [];
  if (model.length === 0) return undefined;
  const count = machinesFor(
    model.map((machine) => capacityOf(machine, closingMs(scenario))),
    times,
  );
  let left = count;
  const counts = machines.map(({ count: own = 1 }) => {
    const kept = Math.min(own, left);
    left -= kept;
    return kept;
  });
  counts[counts.findIndex((kept) => kept > 0)]! += left;
  const own = rawValueAt(raw, ['washing', 'machines']) as readonly unknown[];
  return own.flatMap((machine, at) =>
    counts[at] === 0
      ? []
      : [
          counts[at] === (machines[at]!.count ?? 1)
            ? machine
            : { ...(machine as object), count: counts[at] },
        ],
  );
}

/** Racks a ms that a machine can wash, its hours out of order and its breakdowns counted off. */
function capacityOf(machine: MachineModel, openMs: number): number {
  const { racks, loading, cycle, unloading, down, breakdown } = machine;
  const out = down.reduce(
    (sum, [from, to]) => sum + Math.max(0, Math.min(to, openMs) - Math.max(from, 0)),
    0,
  );
  const runs =
    breakdown === null
      ? 1
      : meanMs(breakdown.until) / (meanMs(breakdown.until) + meanMs(breakdown.repair));
  const load = meanMs(loading) + meanMs(cycle) + meanMs(unloading);
  return ((racks / Math.max(load, 1)) * runs * (openMs - out)) / openMs;
}

/** How many machines, in their order and then more of the first, wash `times` what all of them do. */
export function machinesFor(capacities: readonly number[], times: number): number {
  const wanted = times * capacities.reduce((sum, one) => sum + one, 0);
  let [count, sum] = [0, 0];
  do {
    sum += capacities[count] ?? capacities[0]!;
    count += 1;
  } while (sum < wanted * (1 - ROUNDING) && (count < capacities.length || capacities[0]! > 0));
  return count;
}
