/** The neutral configurations of shared/checks/tiny-days.json as scenario files. */
export interface NeutralConfig {
  readonly slots: readonly { readonly minutes: number; readonly partiesPerMinute: number }[];
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
    readonly tripPieces?: number;
    readonly trip?: number;
  };
  readonly washing: {
    readonly machines: readonly NeutralMachine[] | null;
    readonly machine?: NeutralMachine;
    readonly hands: number | null;
    readonly patience: number | null;
    readonly otherLoads?: {
      readonly perHour: number;
      readonly arrivals: string;
      readonly priority: string;
    };
  };
  readonly level: number;
}

interface NeutralMachine {
  readonly racks: number;
  readonly cycle: number;
  readonly load: number;
  readonly unload: number;
}

const minutes = (value: number): string => `${value} min`;
const orUnlimited = (value: number | null): number | string => value ?? 'unlimited';
const machine = ({ racks, cycle, load, unload }: NeutralMachine): Record<string, unknown> => ({
  racks,
  cycle: minutes(cycle),
  loading: minutes(load),
  unloading: minutes(unload),
});

export function scenarioOfNeutral(name: string, config: NeutralConfig): Record<string, unknown> {
  const { seats, clearing, washing } = config;
  // On a listed day shares do not matter; a scenario file wants them to add up.
  const shares = config.menu.reduce((sum, drink) => sum + drink.share, 0);
  const total = config.slots.reduce((sum, slot) => sum + slot.minutes, 0);
  return {
    name,
    currency: 'EUR',
    staffHour: '20 EUR',
    level: config.level,
    hours: { for: minutes(total) },
    arrivals: {
      steps: config.slots.map((slot) => ({
        for: minutes(slot.minutes),
        parties: `${slot.partiesPerMinute} / min`,
      })),
      dayFactor: 0,
    },
    guests: { partySize: 1, staysIn: '100 %', drinksEach: 1, secondDrink: 0, dwell: '0 s' },
    menu: Object.fromEntries(
      config.menu.map(({ id, share, setting, fallBacks }) => [
        id,
        { share: share / shares, setting, fallBacks, making: minutes(config.makers.make) },
      ]),
    ),
    ware: Object.fromEntries(
      config.wares.map(({ id, family, perRack, dry, cost, lowWater }) => [
        id,
        {
          price: `${cost} EUR`,
          family,
          perRack,
          drying: minutes(dry),
          ...(lowWater === undefined ? {} : { lowWater }),
        },
      ]),
    ),
    racks: {
      families: Object.fromEntries(config.families.map(({ id, kind }) => [id, kind])),
      owned: Object.fromEntries(config.rackKinds.map(({ id, owned }) => [id, orUnlimited(owned)])),
    },
    seats: {
      count: orUnlimited(seats.count),
      whenFull: seats.whenFull ?? 'leave',
      waitLimit: minutes(seats.waitLimit ?? 0),
      heldUntilCleared: seats.heldUntilCleared ?? false,
    },
    counter: { makers: orUnlimited(config.makers.count), making: minutes(config.makers.make) },
    clearing:
      clearing.mode === 'immediate'
        ? 'atOnce'
        : {
            every: minutes(clearing.every!),
            clearers: orUnlimited(clearing.clearers ?? null),
            tripPieces: clearing.tripPieces ?? 'unlimited',
            trip: minutes(clearing.trip!),
          },
    washing: {
      machines:
        washing.machines === null
          ? { unlimited: machine(washing.machine!) }
          : washing.machines.map(machine),
      hands: orUnlimited(washing.hands),
      partLoadWait: washing.patience === null ? 'never' : minutes(washing.patience),
      ...(washing.otherLoads
        ? {
            otherLoads: {
              racks: `${washing.otherLoads.perHour} / h`,
              arrivals: washing.otherLoads.arrivals,
              goes: washing.otherLoads.priority,
            },
          }
        : {}),
    },
  };
}
