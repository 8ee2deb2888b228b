/** One house under its days: the stock it needs, what running it takes, and what that costs. */
import type { CafeModel } from '../../cafe/model.js';
import { mergeDays, type DaysRun } from '../../cafe/rush.js';
import { looksAtTheShelf } from '../../cafe/washing/rules/in-order.js';
import { annuityFactor } from '../../comparing/annuity.js';
import type { Costs } from '../../comparing/costs.js';
import { meanMs } from '../../engine/durations.js';
import { inMinor } from '../../quantities/money.js';
import { ownedPieces } from '../../scenario/have.js';
import { leastCostBeyond } from '../../sizing/least-cost-beyond.js';
import { mergePeaks, type Peaks } from '../../sizing/peaks.js';
import type { Candidate } from './alternatives.js';
import { costOfScenario, frameOf, openHoursOf, type Taken } from './costs.js';
import { compile, unitCosts } from '../../scenario/compile.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import { racksAtLevel } from '../size/rush-facts.js';
import type { Runner } from '../../cafe/runner.js';
import { study } from '../size/study.js';

export interface EvaluateOptions {
  readonly level: number;
  readonly seed: string;
  /** Days a part: what is drawn again together to find errors. */
  readonly partDays: number;
  readonly piecesPerRack?: PiecesPerRack | undefined;
}

/** A house under days 0 … days − 1. */
export interface Evaluated {
  readonly candidate: Candidate;
  readonly model: CafeModel;
  readonly unitCost: readonly number[];
  /** Pieces that are there already. */
  readonly owned: readonly number[];
  readonly level: number;
  readonly days: number;
  /** With unlimited ware. */
  readonly peaks: Peaks;
  /** The days in parts: with unlimited ware, or at the stock where a rule looks at the shelf. */
  readonly parts: readonly DaysRun[];
  readonly stock: readonly number[];
  /** Days that the stock may miss. */
  readonly misses: number;
  readonly racksNeeded: Taken['racksNeeded'];
  readonly costs: Costs;
  readonly staffMinutes: number;
}

/** Runs the days of one house, each once however often it is looked at. */
export class House {
  readonly model: CafeModel;
  readonly unitCost: readonly number[];
  readonly owned: readonly number[];
  private readonly looked = new Map<number, Evaluated>();
  private unlimited: readonly DaysRun[] = [];

  constructor(
    readonly candidate: Candidate,
    private readonly runner: Runner,
    private readonly options: EvaluateOptions,
  ) {
    this.model = compile(candidate.scenario, options.piecesPerRack);
    this.unitCost = unitCosts(candidate.scenario);
    this.owned = ownedPieces(candidate.scenario);
  }

  /** Peaks of the first `days` days. */
  async peaks(days: number): Promise<Peaks> {
    return mergePeaks((await this.parts(days)).map((part) => this.peaksOf(part)));
  }

  /** @param misses days that the stock may miss; where a rule looks at the shelf, the search has its own */
  async look(days: number, misses: number): Promise<Evaluated> {
    const known = this.looked.get(days);
    if (known !== undefined) return known;
    const { candidate, model, unitCost, owned } = this;
    const { level, seed, partDays, piecesPerRack } = this.options;
    let parts = await this.parts(days);
    const peaks = mergePeaks(parts.map((part) => this.peaksOf(part)));
    let { stock } = leastCostBeyond(peaks, unitCost, misses, owned) as { stock: readonly number[] };
    if (looksAtTheShelf(model)) {
      const { answer } = await study(candidate.scenario, this.runner, {
        level,
        seed,
        days,
        certifyOn: 1,
        ...(piecesPerRack === undefined ? {} : { piecesPerRack }),
      });
      stock = answer.stock.map(({ pieces }) => pieces);
      parts = await this.runner.apart(
        { model, seed, from: 0, days, stock, listed: null, byDay: false },
        partDays,
      );
    }
    const whole = mergeDays(parts);
    const racksNeeded = model.rackKinds.map(({ id }, kind) => ({
      kind: id,
      racks: racksAtLevel(whole, model.rackKinds.length, kind, level),
    }));
    const taken = { ...runningOf(candidate, model, whole), stock, unitCost, racksNeeded };
    const seen = {
      candidate,
      model,
      unitCost,
      owned,
      level,
      days,
      peaks,
      parts,
      stock,
      misses,
      racksNeeded,
      costs: costOfScenario(candidate.scenario, taken, extraOf(candidate)),
      staffMinutes: taken.day.staffMinutes,
    };
    this.looked.set(days, seen);
    return seen;
  }

  private async parts(days: number): Promise<readonly DaysRun[]> {
    const { seed, partDays } = this.options;
    const have = this.unlimited.length * partDays;
    if (have < days) {
      const task = { model: this.model, seed, stock: null, listed: null, byDay: false };
      this.unlimited = [
        ...this.unlimited,
        ...(await this.runner.apart({ ...task, from: have, days: days - have }, partDays)),
      ];
    }
    return this.unlimited.slice(0, Math.ceil(days / partDays));
  }

  private peaksOf(part: DaysRun): Peaks {
    return { days: part.days, ware: this.unitCost.length, data: part.peaks };
  }
}

/** Money the alternative names beside what is worked out. */
export function extraOf({ id, once, aYear, scenario }: Candidate): {
  readonly once: number;
  readonly aYear: number;
} {
  const hour = scenario.staffHour.minor;
  if (id === 'base') return { once: 0, aYear: 0 };
  return {
    once: once === undefined ? 0 : inMinor(once, hour),
    aYear: aYear === undefined ? 0 : inMinor(aYear, hour),
  };
}

const MINUTE = 60_000;

/** What a mean day of a run takes. */
export function runningOf(
  { scenario }: Pick<Candidate, 'scenario'>,
  model: CafeModel,
  run: DaysRun,
): Pick<Taken, 'day' | 'usesADay'> {
  const { sums, days } = run;
  const machines = model.washing.machines?.length ?? 0;
  return {
    usesADay: Array.from(run.uses, (uses) => uses / days),
    day: {
      loads: sums.loads / days,
      staffMinutes: staffMinutesOf(run, model),
      openHours: openHoursOf(scenario),
      machineBusy:
        machines === 0 ? 0 : Math.min(1, sums.machineMs / (days * model.closingMs * machines)),
    },
  };
}

/** Present value over the horizon of a year's running as a part of the days has it, minor units; no ware, no racks. */
export function runningWorth({ candidate, model, unitCost }: Evaluated, part: DaysRun): number {
  const { scenario } = candidate;
  const frame = frameOf(scenario);
  const { yearTotal } = costOfScenario(
    scenario,
    {
      ...runningOf(candidate, model, part),
      stock: unitCost.map(() => 0),
      unitCost,
      racksNeeded: [],
    },
    { once: 0, aYear: 0 },
  );
  return yearTotal * annuityFactor(frame.discount, frame.horizonYears);
}

const NO_DAY = { loads: 0, staffMinutes: 0, openHours: 0, machineBusy: 0 };

/** Present value over the horizon of all that does not hang on running: ware with what of it walks off, racks, machines. */
export function standingWorth(
  { candidate, unitCost }: Evaluated,
  stock: readonly number[],
  racksNeeded: Taken['racksNeeded'],
): number {
  const taken = { stock, unitCost, racksNeeded, usesADay: unitCost.map(() => 0), day: NO_DAY };
  return costOfScenario(candidate.scenario, taken, extraOf(candidate)).total;
}

/** Staff minutes a day at the wash, polishing and walking trips, after closing too; whoever does it. */
export const staffMinutesOf = ({ sums, days }: DaysRun, { clearing }: CafeModel): number =>
  (sums.handlingMs + sums.trips * meanMs(clearing.trip) + sums.polishMs) / days / MINUTE;
