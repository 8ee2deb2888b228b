/** One alternative under its days: the stock it needs, and what the rush takes at that stock. */
import { Day } from '../../cafe/day.js';
import { Demand } from '../../cafe/demand.js';
import { Floor } from '../../cafe/floor.js';
import { EveryStep } from '../../cafe/looking-on.js';
import type { CafeModel } from '../../cafe/model.js';
import { PLACE_COUNT, SHELF } from '../../cafe/places.js';
import { mergeDays, type DaysRun } from '../../cafe/rush.js';
import type { Costs } from '../../comparing/costs.js';
import { meanMs } from '../../engine/durations.js';
import { inMinor } from '../../quantities/money.js';
import type { Peaks } from '../../sizing/peaks.js';
import type { Answer } from '../size/answer.js';
import type { Candidate } from './alternatives.js';
import { costOfScenario, openHoursOf, type Taken } from './costs.js';
import { compile, unitCosts } from '../../scenario/compile.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import type { Runner } from '../../cafe/runner.js';
import { study } from '../size/study.js';

export interface EvaluateOptions {
  readonly level: number;
  readonly seed: string;
  readonly days: number;
  readonly piecesPerRack?: PiecesPerRack | undefined;
}

export interface Evaluated {
  readonly candidate: Candidate;
  readonly model: CafeModel;
  readonly answer: Answer;
  readonly stock: readonly number[];
  readonly unitCost: readonly number[];
  /** With unlimited ware, days 0 .. days − 1. */
  readonly peaks: Peaks;
  /** At the stock, in batches of BATCH days. */
  readonly atStock: DaysRun;
  readonly costs: Costs;
  /** Yearly cost of running, minor units, batch by batch. */
  readonly yearByBatch: readonly number[];
  readonly minutesShort: number;
}

/** Days a batch: long enough for its mean to be near normal, short enough for twenty of them in the fewest days. */
export const BATCH = 50;
const DAYS_WATCHED = 150;

export async function evaluate(
  candidate: Candidate,
  runner: Runner,
  { level, seed, days, piecesPerRack }: EvaluateOptions,
): Promise<Evaluated> {
  const { scenario } = candidate;
  const model = compile(scenario, piecesPerRack);
  const unlimited: DaysRun[] = [];
  const recording: Runner = {
    apart: (task, together) => runner.apart(task, together),
    async run(task, after) {
      const part = await runner.run(task, after);
      if (task.stock === null) unlimited.push(part);
      return part;
    },
  };
  const { answer } = await study(scenario, recording, {
    level,
    seed,
    days,
    ...(piecesPerRack === undefined ? {} : { piecesPerRack }),
  });
  const chosen = mergeDays(unlimited.filter((part) => part.from + part.days <= days));
  const stock = answer.stock.map(({ pieces }) => pieces);
  const unitCost = unitCosts(scenario);
  const batches = await runner.apart(
    { model, seed, from: 0, days, stock, listed: null, byDay: false },
    BATCH,
  );
  const atStock = mergeDays(batches);
  const money = (run: DaysRun): Costs =>
    costOfScenario(
      scenario,
      takenBy(candidate, model, run, answer, stock, unitCost),
      extraOf(candidate, scenario.staffHour.minor),
    );
  return {
    candidate,
    model,
    answer,
    stock,
    unitCost,
    peaks: { days: chosen.days, ware: unitCost.length, data: chosen.peaks },
    atStock,
    costs: money(atStock),
    yearByBatch: batches.map((batch) => money(batch).yearTotal),
    minutesShort: minutesShort(model, seed, Math.min(days, DAYS_WATCHED), stock),
  };
}

/** Money the alternative names beside what is worked out. */
export function extraOf(
  { id, once, aYear }: Candidate,
  staffHour: number,
): { readonly once: number; readonly aYear: number } {
  if (id === 'base') return { once: 0, aYear: 0 };
  return {
    once: once === undefined ? 0 : inMinor(once, staffHour),
    aYear: aYear === undefined ? 0 : inMinor(aYear, staffHour),
  };
}

const MINUTE = 60_000;

function takenBy(
  { scenario }: Candidate,
  model: CafeModel,
  run: DaysRun,
  answer: Answer,
  stock: readonly number[],
  unitCost: readonly number[],
): Taken {
  const { sums, days } = run;
  const machines = model.washing.machines?.length ?? 0;
  return {
    stock,
    unitCost,
    usesADay: Array.from(run.uses, (uses) => uses / days),
    racksNeeded: answer.loads.racksNeeded,
    day: {
      loads: sums.loads / days,
      staffMinutes: staffMinutesOf(run, model),
      openHours: openHoursOf(scenario),
      machineBusy:
        machines === 0 ? 0 : Math.min(1, sums.machineMs / (days * model.closingMs * machines)),
      paperCups: sums.paperFallBacks / days,
    },
  };
}

/** Staff minutes a day at the wash, polishing and walking trips, after closing too; whoever does it. */
export const staffMinutesOf = ({ sums, days }: DaysRun, { clearing }: CafeModel): number =>
  (sums.handlingMs + sums.trips * meanMs(clearing.trip) + sums.polishMs) / days / MINUTE;

/** Minutes of a rush in which the shelf of some ware is empty, looked at once a minute over the first days. */
function minutesShort(
  model: CafeModel,
  seed: string,
  days: number,
  stock: readonly number[],
): number {
  const floor = new Floor(model, seed);
  const demand = new Demand(model, seed);
  const day = new Day();
  let minutes = 0;
  const watcher = new EveryStep(MINUTE, model.closingMs, (_, seen) => {
    for (let ware = 0; ware < stock.length; ware += 1) {
      if (stock[ware]! > 0 && seen.ledger.counts[ware * PLACE_COUNT + SHELF] === 0) {
        minutes += 1;
        return;
      }
    }
  });
  for (let number = 0; number < days; number += 1) {
    demand.draw(number, day);
    watcher.rewind();
    floor.run(day, number, stock, watcher);
  }
  return minutes / days;
}
