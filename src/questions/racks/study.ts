/** Racks as a study: what each kind takes of each ware, the plan with fewest loads, and washing as the rush has it. */
import { rackKind, rackKindIds } from '../../catalogue/catalogue.js';
import { mostPossible } from '../../racking/bound.js';
import { handleFinding, rackLayout } from '../../racking/layout.js';
import { nioshLift, type LiftAdvice } from '../../racking/lifting.js';
import type { LoadingRule } from '../../racking/open-rack.js';
import { tryOnEdge } from '../../racking/pegs.js';
import { rackPlan, type RackedWare } from '../../racking/plan.js';
import { extendersFor, type Rack } from '../../racking/rack.js';
import type { Vessel } from '../../racking/vessel.js';
import type { Answer, Evidence } from '../size/answer.js';
import { nameOf } from '../../quantities/name.js';
import { familyOf, rackFill, rackKindOf, type Ware } from '../../scenario/pieces-per-rack.js';
import { piecesPerRackOf, rackOf, vesselOf } from '../../scenario/rack-geometry.js';
import type { Runner } from '../../cafe/runner.js';
import type { Scenario } from '../../scenario/scenario.js';
import { kindOf } from '../../scenario/kinds.js';
import { study } from '../size/study.js';
import type { StatedLift, RackLine, RacksAnswer } from './answer.js';
import { twoShapes } from './wider-cups.js';

/** From a bench into a low machine; assumed unless stated. */
export const ASSUMED_LIFT: StatedLift = { reachCm: 40, fromCm: 90, toCm: 45 };

const DAYS = 300;
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
  const shown = kindOf(scenario, answer.tightestKind, seed).scenario;
  const openHours = answer.evidence!.guests.partiesArriving.length === 0 ? 0 : hoursOf(shown);
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
  // Ware without a shape, such as spoons, goes in the same racks whatever the plan is.
  const shapeless = Object.entries(scenario.ware)
    .filter(([id]) => known.every((one) => one.id !== id))
    .reduce((sum, [id, ware]) => {
      const rack = rackKindOf(scenario.racks, familyOf(id, ware));
      return (
        sum +
        usesOf(id) / (rackFill(ware, rack, scenario.racks, piecesPerRackOf)?.pieces ?? Infinity)
      );
    }, 0);
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
          : inUse.reduce((sum, { ware, pieces }) => sum + usesOf(ware) / pieces, shapeless),
      racksADay: plan.lines.reduce(
        (sum, { ware, perRack }) => sum + usesOf(ware) / perRack,
        shapeless,
      ),
      fewest: plan.fewest,
    },
    lift,
    liftCaution: heaviest === 0 ? null : adviceFor(heaviest * 1000).caution,
    washing: {
      loads: answer.loads,
      busy: answer.busy,
      openHours,
      kindOfDay: answer.kinds?.find(({ id }) => id === answer.tightestKind)?.name ?? null,
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
    most: mostPossible(vessel, rack),
    tryOne: tryOnEdge(rack, layout.pieces),
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
): Omit<RacksAnswer['washing'], 'loads' | 'busy' | 'openHours' | 'kindOfDay'> {
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
