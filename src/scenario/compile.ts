/**
 * Scenario → the café as the rush sees it: times in ms from opening, names turned into indices.
 */
import type {
  CafeModel,
  ClearingModel,
  DrinkModel,
  FamilyModel,
  MachineModel,
  OtherLoadsModel,
  RackKindModel,
  Setting,
  ShareStep,
  WareModel,
  WashingModel,
} from '../cafe/model.js';
import { partLoadsOf } from '../cafe/washing/part-loads.js';
import { priceMinor } from '../quantities/price.js';
import type { Moment } from '../quantities/numbers.js';
import { arrivalSteps, closingMs, stepped } from './arrivals.js';
import { familyOf, rackFill, rackKindOf, type PiecesPerRack } from './pieces-per-rack.js';
import { easyHandleVariants, type DrinkVariant } from '../suiting/easyHandles.js';
import { suitMenu } from '../suiting/scenario-parts.js';
import type { Scenario } from './scenario.js';
import { meanShares, meanStaysIn, sharesByTime } from './shares-by-time.js';

type Machine = Extract<Scenario['washing']['machines'], { unlimited: unknown }>['unlimited'];

const clear = { law: 'constant', ms: 0 } as const;

/** Opening as a time of day, ms since midnight; 0 where only the length of the rush is given. */
export const openingClockMs = (scenario: Scenario): number =>
  'from' in scenario.hours ? scenario.hours.from : 0;

/** Cost of a piece of every ware, in whole minor units of the scenario's currency, in the order of the file. */
export const unitCosts = ({ ware, staffHour }: Scenario): number[] =>
  Object.values(ware).map(({ price }) => Math.round(priceMinor(price, 1, 1, staffHour.minor)));

/** The drinks that are ordered, with these shares by drink of the menu. Guests who need an easy handle ask for variants, which come after the menu's own. */
function variantsOf(scenario: Scenario, shares: Readonly<Record<string, number>>): DrinkVariant[] {
  const menu = Object.fromEntries(
    Object.entries(scenario.menu).map(([id, drink]) => [id, { ...drink, share: shares[id]! }]),
  );
  const easy = scenario.suit?.guests;
  return easyHandleVariants(suitMenu(menu), easy?.easyHandle ?? 0, easy?.instead ?? {}).toSorted(
    (a, b) => Number(a.easyHandle) - Number(b.easyHandle),
  );
}

function compileMenu(scenario: Scenario, wareIds: readonly string[]): DrinkModel[] {
  const pieces = (setting: readonly string[]): Setting => setting.map((id) => wareIds.indexOf(id));
  return variantsOf(scenario, meanShares(scenario)).map(
    ({ id, of, share, setting, fallBacks }) => ({
      id,
      share,
      setting: pieces(setting),
      fallBacks: fallBacks.map(pieces),
      making: scenario.menu[of]!.making ?? scenario.counter.making,
    }),
  );
}

/** Who stays in and what is ordered, step by step; null where both are the same all day. */
function compileShareSteps(scenario: Scenario): ShareStep[] | null {
  const steps = sharesByTime(scenario);
  return (
    steps?.map(({ untilMs, staysIn, menu }) => ({
      untilMs,
      staysIn,
      menu: variantsOf(scenario, menu).map(({ share }) => share),
    })) ?? null
  );
}

function compileWare(
  scenario: Scenario,
  piecesPerRack: PiecesPerRack | undefined,
): Pick<CafeModel, 'ware' | 'families' | 'rackKinds'> {
  const costs = unitCosts(scenario);
  const familyIds = [
    ...new Set(Object.entries(scenario.ware).map(([id, ware]) => familyOf(id, ware))),
  ];
  const kindIds = [...new Set(familyIds.map((family) => rackKindOf(scenario.racks, family)))];
  const ware = Object.entries(scenario.ware).map(([id, one], i): WareModel => {
    const family = familyOf(id, one);
    const fill = rackFill(one, rackKindOf(scenario.racks, family), scenario.racks, piecesPerRack);
    if (fill === null || fill.pieces < 1)
      throw new Error(
        `ware ${id} fits in no rack; read the scenario with the same pieces per rack`,
      );
    return {
      id,
      family: familyIds.indexOf(family),
      perRack: fill.pieces,
      drying: one.drying,
      lowWater: one.lowWater ?? null,
      unitCost: costs[i]!,
      polishing: one.polishing ?? null,
    };
  });
  const owned = scenario.racks?.owned ?? {};
  return {
    ware,
    families: familyIds.map((id): FamilyModel => ({
      id,
      rackKind: kindIds.indexOf(rackKindOf(scenario.racks, id)),
    })),
    rackKinds: kindIds.map((id): RackKindModel => ({
      id,
      owned: Object.hasOwn(owned, id) ? owned[id]! : null,
    })),
  };
}

function compileClearing({ clearing }: Scenario): ClearingModel {
  if (clearing === 'atOnce')
    return {
      every: null,
      clearers: null,
      tripPieces: null,
      trip: clear,
      whenDirty: null,
      forSeats: false,
    };
  return {
    every: clearing.every,
    clearers: clearing.clearers,
    tripPieces: clearing.tripPieces,
    trip: clearing.trip,
    whenDirty: clearing.whenDirty ?? null,
    forSeats: clearing.forSeats ?? false,
  };
}

/** Spells out of order as [start, end) from opening, in order, those that touch made one. */
function spells(
  down: readonly { readonly from: Moment; readonly for: number }[],
  opening: number,
): [number, number][] {
  const sorted = down
    .map((spell): [number, number] => {
      const start = Math.round(
        'clockMs' in spell.from ? spell.from.clockMs - opening : spell.from.sinceOpeningMs,
      );
      return [start, start + Math.round(spell.for)];
    })
    .filter(([start, end]) => end > start)
    .toSorted((a, b) => a[0] - b[0]);
  return sorted.reduce<[number, number][]>((merged, [start, end]) => {
    const last = merged.at(-1);
    if (last && start <= last[1]) last[1] = Math.max(last[1], end);
    else merged.push([start, end]);
    return merged;
  }, []);
}

function compileMachine(machine: Machine, number: number, opening: number): MachineModel {
  return {
    id: `${machine.class ?? 'machine'}-${number}`,
    racks: machine.racks,
    loading: machine.loading,
    cycle: machine.cycle,
    unloading: machine.unloading,
    warmUpMs: Math.round(machine.warmUp ?? 0),
    down: spells(machine.down ?? [], opening),
    breakdown: machine.breakdown ?? null,
  };
}

function compileOtherLoads(scenario: Scenario): OtherLoadsModel | null {
  const { otherLoads } = scenario.washing;
  if (!otherLoads) return null;
  const closing = closingMs(scenario);
  const { racks, arrivals, goes } = otherLoads;
  const steps =
    typeof racks === 'number'
      ? [{ for: closing, rate: racks }]
      : racks.map((step) => ({ for: step.for, rate: step.racks }));
  return {
    steps: stepped(steps, closing).map(({ untilMs, rate }) => ({ untilMs, racksPerMs: rate })),
    arrivals,
    goes,
  };
}

function compileWashing(scenario: Scenario): WashingModel {
  const { washing } = scenario;
  const opening = openingClockMs(scenario);
  const listed = Array.isArray(washing.machines)
    ? washing.machines.flatMap((machine) =>
        Array.from({ length: machine.count ?? 1 }, () => machine),
      )
    : null;
  const machines = listed?.map((machine, i) => compileMachine(machine, i + 1, opening)) ?? null;
  const everyMachine = machines
    ? machines[0]!
    : compileMachine((washing.machines as { unlimited: Machine }).unlimited, 1, opening);
  return {
    machines,
    everyMachine,
    hands: washing.hands,
    ...partLoadsOf(washing),
    otherLoads: compileOtherLoads(scenario),
  };
}

/**
 * The café of a scenario that `readScenario` accepted. `piecesPerRack` computes what fills a rack from
 * the shape of a ware; it must be the one the scenario was read with.
 */
export function compile(scenario: Scenario, piecesPerRack?: PiecesPerRack): CafeModel {
  const { seats, guests } = scenario;
  return {
    closingMs: closingMs(scenario),
    arrivals: arrivalSteps(scenario),
    shareSteps: compileShareSteps(scenario),
    dayFactorCv: scenario.arrivals.dayFactor,
    guests: { ...guests, staysIn: meanStaysIn(scenario) },
    menu: compileMenu(scenario, Object.keys(scenario.ware)),
    ...compileWare(scenario, piecesPerRack),
    seats: {
      count: seats.count,
      whenFull: seats.whenFull,
      waitLimitMs: Math.round(seats.waitLimit),
      heldUntilCleared: seats.heldUntilCleared,
    },
    makers: scenario.counter.makers,
    clearing: compileClearing(scenario),
    washing: compileWashing(scenario),
  };
}
