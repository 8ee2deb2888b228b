/** Racks as a study: what each kind takes of each ware, the plan with fewest loads, and washing as the rush has it. */
import { rackKind, rackKindIds } from '../../catalogue/catalogue.js';
import { handleFinding, rackLayout, type Binding, type RackLayout } from '../../racking/layout.js';
import { nioshLift, type LiftAdvice } from '../../racking/lifting.js';
import type { LoadingRule } from '../../racking/open-rack.js';
import { rackPlan, type RackedWare } from '../../racking/plan.js';
import { extendersFor, type Rack } from '../../racking/rack.js';
import type { Vessel } from '../../racking/vessel.js';
import type { Answer, Evidence } from '../size/answer.js';
import { nameOf } from '../../quantities/name.js';
import { familyOf, rackFill, rackKindOf, type Ware } from '../../scenario/pieces-per-rack.js';
import { piecesPerRackOf, rackOf, vesselOf } from '../../scenario/rack-geometry.js';
import { withRackPlan } from '../../scenario/rack-plan.js';
import type { Runner } from '../../cafe/runner.js';
import type { Scenario } from '../../scenario/scenario.js';
import { study } from '../size/study.js';

/** A lift of a loaded rack: hands ahead of the ankles, heights of the hands above the floor, cm. */
export interface StatedLift {
  readonly reachCm: number;
  readonly fromCm: number;
  readonly toCm: number;
}

/** From a bench into a low machine; assumed unless stated. */
export const ASSUMED_LIFT: StatedLift = { reachCm: 40, fromCm: 90, toCm: 45 };

export interface RackLine {
  readonly ware: string;
  readonly name: string;
  readonly rack: string;
  readonly rackName: string;
  /** Glass, which is kept apart from its neighbours. */
  readonly glass: boolean;
  /** The kind that the scenario washes it in, and the kind with fewest loads. */
  readonly used: boolean;
  readonly planned: boolean;
  readonly pieces: number;
  readonly areaShare: number;
  readonly loadsPer100: number | null;
  readonly binds: Binding;
  /** Pieces with all handles straight, and all at 45°; null where it makes no difference to ask. */
  readonly straight: number | null;
  readonly at45: number | null;
  readonly slackMm: number | null;
  readonly cliff: RackLayout['cliff'];
  /** Extenders a compartment rack needs for a piece so tall. */
  readonly extenders: number;
  /** Rack and pieces; null where the mass of a piece is not known, and then no index either. */
  readonly loadedKg: number | null;
  /** NIOSH lifting index; null where no load is advised, or the mass is not known. */
  readonly liftingIndex: number | null;
  readonly problems: readonly string[];
}

/**
 * What a house needs with its cups as they are and with every rim some millimetres wider. `fullRacksADay`: racks the cups alone
 * would take, were every rack full. `racks`: the kind each cup goes in; where the wider cup no longer does, the one with fewest loads.
 */
export interface TwoShapes {
  readonly widerByMm: number;
  readonly shapes: readonly {
    readonly wider: boolean;
    readonly pieces: number;
    readonly cost: number;
    readonly racksADay: number;
    readonly fullRacksADay: number;
    readonly handlingMinutes: number;
    readonly perRack: Readonly<Record<string, number>>;
    readonly racks: Readonly<Record<string, string>>;
  }[];
}

export interface RacksAnswer {
  readonly scenario: string;
  readonly seed: string;
  readonly currency: string;
  readonly days: number;
  readonly lines: readonly RackLine[];
  /** Ware whose shape is not known: pieces a rack are given or typical. */
  readonly given: readonly {
    readonly ware: string;
    readonly name: string;
    readonly rack: string;
    readonly pieces: number;
    readonly from: 'given' | 'class';
  }[];
  /** Racks a day of the ware of known shape, were every rack full: in the racks the scenario uses (null: some do not go in), and in those of the plan. */
  readonly plan: {
    readonly usedRacksADay: number | null;
    readonly racksADay: number;
    readonly fewest: boolean;
  };
  readonly lift: StatedLift;
  /** What the heaviest rack in use asks for; null: no mass is known. */
  readonly liftCaution: string | null;
  readonly washing: Pick<Answer, 'loads' | 'busy'> & {
    readonly openHours: number;
    /** Mean minutes of a use at each place, by ware. */
    readonly places: readonly string[];
    readonly minutes: readonly {
      readonly ware: string;
      readonly name: string;
      readonly minutes: readonly number[];
    }[];
    /** Mean share of machines and hands busy, and racks waiting, from each quarter hour on. */
    readonly quarters: readonly {
      readonly minute: number;
      readonly machines: number;
      readonly hands: number;
      readonly racksWaiting: number;
    }[];
    /** Minutes from opening at which racks begin to wait and no longer do; null: they never wait to speak of. */
    readonly queue: { readonly fromMinute: number; readonly toMinute: number } | null;
  };
  readonly twoShapes: TwoShapes | null;
}

const DAYS = 300;
const WIDER_BY_MM = 10;
/** Racks waiting on the mean day that count as a queue. */
const QUEUE = 0.1;

export interface RacksOptions {
  /** Absent: the scenario's. */
  readonly seed?: string;
  /** Absent: an assumed one. */
  readonly lift?: StatedLift;
  /** Whether to try wider cups too, which takes as many days again; absent: yes. */
  readonly wider?: boolean;
}

/** @throws Error as `study` does, for a scenario that `readScenario` did not accept */
export async function racksStudy(
  scenario: Scenario,
  runner: Runner,
  options: RacksOptions = {},
): Promise<RacksAnswer> {
  const seed = options.seed ?? scenario.seed;
  const run = (changed: Scenario) =>
    study(changed, runner, { days: DAYS, watch: DAYS, seed, piecesPerRack: piecesPerRackOf });
  const { answer } = await run(scenario);
  const lift = options.lift ?? ASSUMED_LIFT;
  const openHours = answer.evidence!.guests.partiesArriving.length === 0 ? 0 : hoursOf(scenario);
  const work = liftingWork(answer.loads.racksADay, openHours);
  const adviceFor = (massG: number): LiftAdvice =>
    nioshLift({
      loadKg: massG / 1000,
      hCm: lift.reachCm,
      vOriginCm: lift.fromCm,
      vDestCm: lift.toCm,
      ...work,
    });
  const racks = rackKindIds().flatMap((id) => rackOf(id, scenario.racks) ?? []);
  const known = Object.entries(scenario.ware).flatMap(([id, ware]) => {
    const vessel = vesselOf(ware);
    return vessel === null ? [] : [{ id, ware, vessel }];
  });
  const plan = rackPlan(
    known.map(({ id, vessel }): RackedWare => ({
      id,
      vessel,
      group: vessel.shape === 'glass' ? 'glass' : 'china',
      pieces: answer.uses.find(({ ware }) => ware === id)?.aDay ?? 1,
    })),
    racks,
    scenario.racks?.loading ?? 'best',
  );
  const lines = known.flatMap(({ id, ware, vessel }) => {
    const used = rackKindOf(scenario.racks, familyOf(id, ware));
    const planned = plan.lines.find((line) => line.ware === id)?.rack;
    return racks
      .map((rack) =>
        lineOf(id, ware, vessel, rack, used, planned, scenario.racks?.loading ?? 'best', adviceFor),
      )
      .filter((line) => line.pieces > 0 || line.used);
  });
  const usesOf = (id: string): number => answer.uses.find(({ ware }) => ware === id)?.aDay ?? 0;
  const inUse = lines.filter(({ used }) => used);
  const heaviest = Math.max(0, ...inUse.map(({ loadedKg }) => loadedKg ?? 0));
  return {
    scenario: scenario.name,
    seed,
    currency: scenario.currency,
    days: answer.days.chosenOn,
    lines,
    given: Object.entries(scenario.ware).flatMap(([id, ware]) => {
      const rack = rackKindOf(scenario.racks, familyOf(id, ware));
      const fill = rackFill(ware, rack, scenario.racks, piecesPerRackOf);
      return fill === null || fill.from === 'shape'
        ? []
        : [
            {
              ware: id,
              name: nameOf(id, ware),
              rack: rackKind(rack)?.name ?? rack,
              pieces: fill.pieces,
              from: fill.from,
            },
          ];
    }),
    plan: {
      usedRacksADay:
        inUse.length < known.length || inUse.some(({ pieces }) => pieces === 0)
          ? null
          : inUse.reduce((sum, { ware, pieces }) => sum + usesOf(ware) / pieces, 0),
      racksADay: plan.lines.reduce((sum, { ware, perRack }) => sum + usesOf(ware) / perRack, 0),
      fewest: plan.fewest,
    },
    lift,
    liftCaution: heaviest === 0 ? null : adviceFor(heaviest * 1000).caution,
    washing: {
      loads: answer.loads,
      busy: answer.busy,
      openHours,
      ...washingOf(answer, answer.evidence!),
    },
    twoShapes:
      options.wider === false
        ? null
        : await twoShapes(scenario, answer, async (changed) => (await run(changed)).answer),
  };
}

/** How often racks are lifted, and the length of work as the lifting equation has it: up to an hour, two hours or eight. */
export const liftingWork = (
  racksADay: number,
  openHours: number,
): { readonly perMinute: number; readonly hours: 1 | 2 | 8 } => ({
  perMinute: racksADay / Math.max(openHours, 1) / 60,
  hours: openHours <= 1 ? 1 : openHours <= 2 ? 2 : 8,
});

const hoursOf = ({ hours }: Scenario): number =>
  ('from' in hours ? hours.to - hours.from : hours.for) / 3_600_000;

function lineOf(
  id: string,
  ware: Ware,
  vessel: Vessel,
  rack: Rack,
  used: string,
  planned: string | undefined,
  rule: LoadingRule,
  adviceFor: (massG: number) => LiftAdvice,
): RackLine {
  const layout = rackLayout(vessel, rack, rule);
  const turns = (vessel.handleMm ?? 0) > 0 && (rack.kind === 'open' || rack.kind === 'grid');
  const finding = turns ? handleFinding(vessel, rack) : null;
  const known = ware.mass !== undefined;
  return {
    ware: id,
    name: nameOf(id, ware),
    rack: rack.id,
    rackName: rackKind(rack.id)?.name ?? rack.id,
    glass: vessel.shape === 'glass',
    used: rack.id === used,
    planned: rack.id === planned,
    pieces: layout.pieces,
    areaShare: layout.areaShare,
    loadsPer100: layout.pieces === 0 ? null : Math.ceil(100 / layout.pieces),
    binds: layout.binds,
    straight: finding?.straight ?? null,
    at45: finding?.at45 ?? null,
    slackMm: layout.slackMm,
    cliff: layout.cliff,
    extenders: extendersFor(vessel.heightMm, rack),
    loadedKg: known ? layout.loadedMassG / 1000 : null,
    liftingIndex: known ? adviceFor(layout.loadedMassG).liftingIndex : null,
    problems: layout.problems.map(({ message }) => message),
  };
}

function washingOf(
  answer: Answer,
  evidence: Evidence,
): Omit<RacksAnswer['washing'], 'loads' | 'busy' | 'openHours'> {
  const { guests, stepMinutes } = evidence;
  const perQuarter = Math.max(1, Math.round(15 / stepMinutes));
  const mean = (values: readonly number[], from: number): number => {
    const part = values.slice(from, from + perQuarter);
    return part.reduce((sum, value) => sum + value, 0) / part.length;
  };
  const starts = Array.from(
    { length: Math.ceil(guests.machinesBusy.length / perQuarter) },
    (_, index) => index * perQuarter,
  );
  const waiting = guests.racksWaiting
    .map((racks, step) => ({ racks, minute: step * stepMinutes }))
    .filter(({ racks }) => racks > QUEUE);
  return {
    places: answer.tightest.places,
    minutes: answer.minutes.loop.map(({ ware, places }) => ({
      ware,
      name: answer.stock.find((line) => line.ware === ware)!.name,
      minutes: places,
    })),
    quarters: starts.map((from) => ({
      minute: from * stepMinutes,
      machines: mean(guests.machinesBusy, from),
      hands: mean(guests.handsBusy, from),
      racksWaiting: mean(guests.racksWaiting, from),
    })),
    queue:
      waiting.length === 0
        ? null
        : { fromMinute: waiting[0]!.minute, toMinute: waiting.at(-1)!.minute + stepMinutes },
  };
}

/** The same drinks in wider cups: what the rim alone costs. Null where no cup's shape is known, or no rack takes the wider ones. */
async function twoShapes(
  scenario: Scenario,
  now: Answer,
  sized: (changed: Scenario) => Promise<Answer>,
): Promise<TwoShapes | null> {
  const cups = Object.entries(scenario.ware).flatMap(([id, ware]) =>
    ware.shape === 'cup' && vesselOf(ware) !== null ? [id] : [],
  );
  const [asTheyAre, wider] = [0, WIDER_BY_MM].map((byMm) =>
    refitted(widened(scenario, cups, byMm)),
  );
  if (cups.length === 0 || asTheyAre == null || wider == null) return null;
  const shape = async (
    changed: Scenario,
    known: Answer | null,
  ): Promise<TwoShapes['shapes'][number]> => {
    const answer = known ?? (await sized(changed));
    const kindOf = (id: string): string =>
      rackKindOf(changed.racks, familyOf(id, changed.ware[id]!));
    const perRack = Object.fromEntries(
      cups.map((id) => [
        id,
        rackFill(changed.ware[id]!, kindOf(id), changed.racks, piecesPerRackOf)?.pieces ?? 0,
      ]),
    );
    return {
      wider: changed === wider,
      pieces: answer.stock
        .filter(({ ware }) => cups.includes(ware))
        .reduce((sum, { pieces }) => sum + pieces, 0),
      cost: answer.cost,
      racksADay: answer.loads.racksADay,
      fullRacksADay: answer.uses
        .filter(({ ware }) => cups.includes(ware))
        .reduce((sum, { ware, aDay }) => sum + aDay / perRack[ware]!, 0),
      handlingMinutes: answer.loads.handlingMinutes,
      perRack,
      racks: Object.fromEntries(cups.map((id) => [id, kindOf(id)])),
    };
  };
  const asGiven = cups.every((id) => scenario.ware[id]!.perRack === undefined);
  return {
    widerByMm: WIDER_BY_MM,
    shapes: [await shape(asTheyAre, asGiven ? now : null), await shape(wider, null)],
  };
}

/** Every cup some millimetres wider; pieces a rack follow from the shape, also where the file gives them. */
function widened(scenario: Scenario, cups: readonly string[], byMm: number): Scenario {
  const ware = Object.entries(scenario.ware).map(([id, one]): [string, Ware] => {
    if (!cups.includes(id)) return [id, one];
    const { perRack: _, ...rest } = one;
    return [
      id,
      {
        ...rest,
        rim: one.rim! + byMm,
        ...(one.rimAcross === undefined ? {} : { rimAcross: one.rimAcross + byMm }),
      },
    ];
  });
  return { ...scenario, ware: Object.fromEntries(ware) };
}

/** The scenario with another rack, the one with fewest loads, for families of which some ware does not go in theirs; null: none takes it. */
function refitted(scenario: Scenario): Scenario | null {
  const families = [
    ...new Set(Object.entries(scenario.ware).map(([id, ware]) => familyOf(id, ware))),
  ];
  const goesIn = ({ ware, racks }: Scenario, family: string): boolean =>
    Object.entries(ware).every(
      ([id, one]) =>
        familyOf(id, one) !== family ||
        (rackFill(one, rackKindOf(racks, family), racks, piecesPerRackOf)?.pieces ?? 0) > 0,
    );
  const kept = families
    .filter((family) => goesIn(scenario, family))
    .map((family) => [family, rackKindOf(scenario.racks, family)] as const);
  if (kept.length === families.length) return scenario;
  const changed = withRackPlan(
    {
      ...scenario,
      racks: { ...scenario.racks, plan: 'fewestLoads', families: Object.fromEntries(kept) },
    },
    piecesPerRackOf,
  );
  return families.every((family) => goesIn(changed, family)) ? changed : null;
}
