/**
 * Scenario → the café as the rush sees it: times in ms from opening, names turned into indices.
 */
import type {
  ArrivalStep,
  CafeModel,
  ClearingModel,
  DrinkModel,
  FamilyModel,
  GuestsModel,
  MachineModel,
  OtherLoadsModel,
  RackKindModel,
  Setting,
  WareModel,
  WashingModel,
} from '../cafe/model.js';
import { inMinor } from '../quantities/money.js';
import type { Moment } from '../quantities/numbers.js';
import { familyOf, rackFill, rackKindOf, type PiecesPerRack } from './pieces-per-rack.js';
import { easyHandleVariants } from '../suiting/easyHandles.js';
import { suitMenu } from '../suiting/scenario-parts.js';
import type { Scenario } from './scenario.js';

type Machine = Extract<Scenario['washing']['machines'], { unlimited: unknown }>['unlimited'];

const clear = { law: 'constant', ms: 0 } as const;

/** Opening as a time of day, ms since midnight; 0 where only the length of the rush is given. */
export const openingClockMs = (scenario: Scenario): number =>
  'from' in scenario.hours ? scenario.hours.from : 0;

/** Length of the rush, ms. */
export const closingMs = ({ hours }: Scenario): number =>
  'from' in hours ? hours.to - hours.from : Math.round(hours.for);

/** Cost of a piece of every ware, in minor units of the scenario's currency, in the order of the file. */
export const unitCosts = (scenario: Scenario): number[] =>
  Object.values(scenario.ware).map(({ price }) => inMinor(price, scenario.staffHour.minor));

/** Steps of a rate over the hours; the last ends at closing. */
function stepped(
  steps: readonly { readonly for: number; readonly rate: number }[],
  closing: number,
): { untilMs: number; rate: number }[] {
  let until = 0;
  return steps.map((step, i) => {
    until = i === steps.length - 1 ? closing : until + Math.round(step.for);
    return { untilMs: until, rate: step.rate };
  });
}

/**
 * Weight in the busiest hour (or the whole rush, if shorter) of a rate that is constant in equal
 * slots. The window that holds most begins or ends at a slot's boundary.
 */
function busiestHour(shape: readonly number[], slotMs: number, windowMs: number): number {
  const ends = shape.map((_, i) => (i + 1) * slotMs);
  const upTo = (ms: number): number =>
    shape.reduce(
      (sum, weight, i) => sum + (weight * Math.min(Math.max(ms - i * slotMs, 0), slotMs)) / slotMs,
      0,
    );
  const last = ends.at(-1)! - windowMs;
  const starts = [0, last, ...ends, ...ends.map((end) => end - windowMs)].filter(
    (start) => start >= 0 && start <= last,
  );
  return Math.max(...starts.map((start) => upTo(start + windowMs) - upTo(start)));
}

function arrivalSteps(scenario: Scenario, partySize: readonly number[]): ArrivalStep[] {
  const closing = closingMs(scenario);
  const { slots, steps, peak } = scenario.arrivals;
  if (slots)
    return stepped(
      slots.parties.map((parties) => ({
        for: slots.every,
        rate: parties / Math.round(slots.every),
      })),
      closing,
    ).map(toStep);
  if (steps)
    return stepped(
      steps.map((step) => ({ for: step.for, rate: step.parties })),
      closing,
    ).map(toStep);
  const { guests, shape } = peak!;
  const slotMs = closing / shape.length;
  const windowMs = Math.min(3_600_000, closing);
  const meanSize = partySize.reduce((sum, share, i) => sum + share * (i + 1), 0);
  // Guests a weight of one stands for, so that the busiest hour has `guests` an hour.
  const perWeight = (guests * windowMs) / busiestHour(shape, slotMs, windowMs);
  return shape.map((weight, i) => {
    const untilMs = Math.round((i + 1) * slotMs);
    const lengthMs = untilMs - Math.round(i * slotMs);
    return {
      untilMs,
      partiesPerMs: lengthMs === 0 ? 0 : (weight * perWeight) / meanSize / lengthMs,
    };
  });
}

const toStep = ({ untilMs, rate }: { untilMs: number; rate: number }): ArrivalStep => ({
  untilMs,
  partiesPerMs: rate,
});

function compileGuests({ guests }: Scenario): GuestsModel {
  const { staysIn, drinksEach, secondDrink, dwell } = guests;
  return { partySize: guests.partySize, staysIn, drinksEach, secondDrink, dwell };
}

/** Guests who need an easy handle ask for variants of their drinks, which come after the menu's own. */
function compileMenu(scenario: Scenario, wareIds: readonly string[]): DrinkModel[] {
  const pieces = (setting: readonly string[]): Setting => setting.map((id) => wareIds.indexOf(id));
  const easy = scenario.suit?.guests;
  const variants = easyHandleVariants(
    suitMenu(scenario.menu),
    easy?.easyHandle ?? 0,
    easy?.instead ?? {},
  );
  const inOrder = variants.toSorted((a, b) => Number(a.easyHandle) - Number(b.easyHandle));
  return inOrder.map(({ id, of, share, setting, fallBacks }) => ({
    id,
    share,
    setting: pieces(setting),
    fallBacks: fallBacks.map(pieces),
    making: scenario.menu[of]!.making ?? scenario.counter.making,
  }));
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
      throw new Error(`ware ${id} fits no rack: read the scenario with the same pieces per rack`);
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
    return { everyMs: null, clearers: null, tripPieces: null, trip: clear };
  return {
    everyMs: Math.round(clearing.every),
    clearers: clearing.clearers,
    tripPieces: clearing.tripPieces,
    trip: clearing.trip,
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
  const every = washing.partLoadsEvery ?? null;
  return {
    machines,
    everyMachine,
    hands: washing.hands,
    partLoadWaitMs: washing.partLoadWait === null ? null : Math.round(washing.partLoadWait),
    partLoadsEveryMs: every === null ? null : Math.round(every),
    otherLoads: compileOtherLoads(scenario),
  };
}

/**
 * The café of a scenario that `readScenario` accepted. `piecesPerRack` computes what fills a rack from
 * the shape of a ware; it must be the one the scenario was read with.
 */
export function compile(scenario: Scenario, piecesPerRack?: PiecesPerRack): CafeModel {
  const guests = compileGuests(scenario);
  const { seats } = scenario;
  return {
    closingMs: closingMs(scenario),
    arrivals: arrivalSteps(scenario, guests.partySize),
    dayFactorCv: scenario.arrivals.dayFactor,
    guests,
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
