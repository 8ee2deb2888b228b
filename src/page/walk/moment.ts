/** One moment of a walk, put together from its columns and spells. */
import type { DayWalk } from '../../questions/walk/day.js';
import type { WalkParty, WalkRack, WalkStage, WalkTrip } from '../../questions/walk/parts.js';

/** Pieces on one table; dirty: the guests have left. */
export interface TableNow {
  readonly party: WalkParty;
  readonly dirty: boolean;
  /** Indices into the party's pieces, in the order served. */
  readonly pieces: readonly number[];
}

export interface RackNow {
  /** Index into the walk's racks. */
  readonly index: number;
  readonly rack: WalkRack;
  /** Ware of the pieces in it, in the order racked. */
  readonly ware: readonly number[];
}

export interface MachineNow {
  /** Null: idle. */
  readonly spell: WalkStage | null;
  /** Our racks in it, and how many of food ware. */
  readonly racks: readonly RackNow[];
  readonly foodRacks: number;
}

export interface Moment {
  readonly index: number;
  readonly tables: readonly TableNow[];
  readonly trips: readonly WalkTrip[];
  /** Open racks in order of family, and closed ones in the order in which they were closed. */
  readonly openRacks: readonly RackNow[];
  readonly waitingRacks: readonly RackNow[];
  readonly machines: readonly MachineNow[];
  /** Drinks short up to now, by ware. */
  readonly short: readonly number[];
}

/** Index of the last moment at or before `ms`, 0 before the first. */
export function indexAt({ times }: Pick<DayWalk, 'times'>, ms: number): number {
  let [low, high] = [0, times.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (times[middle]! <= ms) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Pieces of a ware at a place of `walk.places`. */
export const piecesAt = (walk: DayWalk, index: number, ware: number, place: number): number =>
  walk.counts[(index * walk.wares.length + ware) * walk.places.length + place]!;

export function momentAt(walk: DayWalk, index: number): Moment {
  const now = ({ from, until }: { readonly from: number; readonly until: number }): boolean =>
    from <= index && index < until;
  const racks = walk.racks.flatMap((rack, number): RackNow[] => {
    if (!now(rack)) return [];
    return [
      { index: number, rack, ware: rack.ware.filter((_, piece) => rack.racked[piece]! <= index) },
    ];
  });
  const machines = Array.from({ length: walk.machines }, (): MachineNow => ({
    spell: null,
    racks: [],
    foodRacks: 0,
  }));
  for (const spell of walk.stages) {
    if (!now(spell)) continue;
    machines[spell.machine] = {
      spell,
      racks: racks.filter((rack) => spell.racks.includes(rack.index)),
      foodRacks: spell.racks.filter((rack) => rack < 0).length,
    };
  }
  const short = walk.wares.map(() => 0);
  for (const { moment, ware } of walk.shortages) if (moment <= index) short[ware]! += 1;
  return {
    index,
    tables: walk.parties.filter(now).map((party) => ({
      party,
      dirty: party.left <= index,
      pieces: party.ware.flatMap((_, piece) =>
        party.served[piece]! <= index && index < party.picked[piece]! ? [piece] : [],
      ),
    })),
    trips: walk.trips.filter(now),
    openRacks: racks
      .filter(({ rack }) => index < rack.closed)
      .sort((a, b) => a.rack.family - b.rack.family),
    waitingRacks: racks
      .filter(({ rack }) => rack.closed <= index && index < rack.washed)
      .sort((a, b) => a.rack.closed - b.rack.closed),
    machines,
    short,
  };
}
