/** From the neutral configuration of the worked days (times in minutes, null = unlimited) to a café model. */
import type { CafeModel, MachineModel, WashingModel } from '../../src/cafe/model.js';
import type { DurationLaw } from '../../src/engine/durations.js';

interface NeutralMachine {
  readonly racks: number;
  readonly cycle: number;
  readonly load: number;
  readonly unload: number;
}

/** What the worked days are written in; ids refer to one another. */
export interface NeutralConfig {
  readonly slots: readonly { readonly minutes: number; readonly partiesPerMinute: number }[];
  readonly dwell: number;
  readonly wares: readonly {
    readonly id: string;
    readonly family: string;
    readonly perRack: number;
    readonly dry: number;
    readonly cost: number;
    readonly lowWater?: number;
  }[];
  readonly families: readonly { readonly id: string; readonly kind: string }[];
  readonly rackKinds: readonly { readonly id: string; readonly owned: number | null }[];
  readonly menu: readonly {
    readonly id: string;
    readonly share: number;
    readonly setting: readonly string[];
    readonly fallBacks: readonly (readonly string[])[];
  }[];
  readonly seats: {
    readonly count: number | null;
    readonly whenFull?: string;
    readonly waitLimit?: number;
    readonly heldUntilCleared?: boolean;
  };
  readonly makers: { readonly count: number | null; readonly make: number };
  readonly clearing: {
    readonly mode: string;
    readonly every?: number;
    readonly clearers?: number | null;
    readonly tripPieces?: number | null;
    readonly trip?: number;
  };
  readonly washing: {
    readonly machines: readonly NeutralMachine[] | null;
    readonly machine?: NeutralMachine;
    readonly hands: number | null;
    readonly patience: number | null;
    readonly lowWater?: boolean;
    readonly otherLoads?: {
      readonly perHour: number;
      readonly arrivals: string;
      readonly priority: string;
    };
  };
}

const MINUTE = 60_000;

const minutes = (x: number): DurationLaw => ({ law: 'constant', ms: x * MINUTE });

function oneOf<T extends string>(value: string, known: readonly T[]): T {
  const found = known.find((k) => k === value);
  if (found === undefined) throw new RangeError(`"${value}" is none of ${known.join(', ')}`);
  return found;
}

function machineOf({ racks, cycle, load, unload }: NeutralMachine, id: string): MachineModel {
  return {
    id,
    racks,
    loading: minutes(load),
    cycle: minutes(cycle),
    unloading: minutes(unload),
    warmUpMs: 0,
    down: [],
    breakdown: null,
  };
}

/** The café of a neutral configuration. Throws a RangeError on a word or an id it does not know. */
export function modelFromNeutral(config: NeutralConfig): CafeModel {
  const index = (list: readonly { readonly id: string }[], id: string): number => {
    const found = list.findIndex((row) => row.id === id);
    if (found < 0)
      throw new RangeError(`"${id}" is none of ${list.map((row) => row.id).join(', ')}`);
    return found;
  };
  const setting = (ids: readonly string[]): number[] =>
    ids.filter((id) => id !== 'takeaway').map((id) => index(config.wares, id));
  const { seats, makers, clearing, washing } = config;
  let endMs = 0;
  const arrivals = config.slots.map((slot) => ({
    untilMs: (endMs += slot.minutes * MINUTE),
    partiesPerMs: slot.partiesPerMinute / MINUTE,
  }));
  const machines =
    washing.machines?.map((machine, i) => machineOf(machine, `machine ${i + 1}`)) ?? null;
  const everyMachine =
    washing.machine === undefined ? machines?.[0] : machineOf(washing.machine, 'machine');
  if (everyMachine === undefined) throw new RangeError('no machine is described');
  const others = washing.otherLoads;
  const otherLoads: WashingModel['otherLoads'] =
    others === undefined
      ? null
      : {
          steps: [{ untilMs: endMs, racksPerMs: others.perHour / (60 * MINUTE) }],
          arrivals: oneOf(others.arrivals, ['regular', 'poisson']),
          goes: oneOf(others.priority, ['first', 'inTurn', 'last']),
        };
  return {
    closingMs: endMs,
    arrivals,
    dayFactorCv: 0,
    guests: {
      partySize: [1],
      staysIn: 1,
      drinksEach: 1,
      secondDrink: 0,
      dwell: [minutes(config.dwell)],
    },
    menu: config.menu.map((drink) => ({
      id: drink.id,
      share: drink.share,
      setting: setting(drink.setting),
      fallBacks: drink.fallBacks.map(setting),
      making: minutes(makers.make),
    })),
    ware: config.wares.map((ware) => ({
      id: ware.id,
      family: index(config.families, ware.family),
      perRack: ware.perRack,
      drying: minutes(ware.dry),
      lowWater: washing.lowWater === false ? null : (ware.lowWater ?? null),
      unitCost: ware.cost,
      polishing: null,
    })),
    families: config.families.map(({ id, kind }) => ({
      id,
      rackKind: index(config.rackKinds, kind),
    })),
    rackKinds: config.rackKinds.map(({ id, owned }) => ({ id, owned })),
    seats: {
      count: seats.count,
      whenFull: oneOf(seats.whenFull ?? 'leave', ['leave', 'takeaway', 'wait']),
      waitLimitMs: (seats.waitLimit ?? 0) * MINUTE,
      heldUntilCleared: seats.heldUntilCleared ?? false,
    },
    makers: makers.count,
    clearing: {
      every:
        oneOf(clearing.mode, ['immediate', 'rounds']) === 'rounds'
          ? minutes(clearing.every!)
          : null,
      whenDirty: null,
      forSeats: false,
      clearers: clearing.clearers ?? null,
      tripPieces: clearing.tripPieces ?? null,
      trip: minutes(clearing.trip ?? 0),
    },
    washing: {
      machines,
      everyMachine,
      hands: washing.hands,
      partLoadWait: washing.patience === null ? null : minutes(washing.patience),
      partLoadsEvery: null,
      partLoadFrom: null,
      otherLoads,
    },
  };
}
