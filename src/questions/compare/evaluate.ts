/** One house under its days: the stock it needs, what running it takes, and what that costs. */
import type { CafeModel } from '../../cafe/model.js';
import { mergeDays, type DaysRun, type RushTask } from '../../cafe/rush.js';
import type { Runner } from '../../cafe/runner.js';
import { looksAtTheShelf } from '../../cafe/washing/rules/in-order.js';
import { annuityFactor } from '../../comparing/annuity.js';
import type { Costs } from '../../comparing/costs.js';
import { meanMs } from '../../engine/durations.js';
import { inMinor } from '../../quantities/money.js';
import { compile, unitCosts } from '../../scenario/compile.js';
import { ownedPieces } from '../../scenario/have.js';
import { kindsOf, meanOverKinds, seedOf, sharesOf } from '../../scenario/kinds.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import type { Scenario } from '../../scenario/scenario.js';
import { leastCostBeyond } from '../../sizing/least-cost-beyond.js';
import { mergePeaks, type Peaks } from '../../sizing/peaks.js';
import { exactBinomialInterval } from '../../statistics/exact-binomial-interval.js';
import type { Share } from '../size/answer.js';
import { racksAtLevel } from '../size/rush-facts.js';
import { study } from '../size/study.js';
import type { Candidate } from './alternatives.js';
import { costOfScenario, frameOf, type Taken } from './costs.js';

export interface EvaluateOptions {
  readonly level: number;
  readonly seed: string;
  /** Days a part: what is drawn again together to find errors. */
  readonly partDays: number;
  readonly piecesPerRack?: PiecesPerRack | undefined;
}

/** One kind of day of a house; a house without kinds has one. */
export interface EvaluatedKind {
  readonly model: CafeModel;
  readonly seed: string;
  /** Of the year's days. */
  readonly share: number;
  /** With unlimited ware. */
  readonly peaks: Peaks;
  /** The days in parts: with unlimited ware, or at the stock where a rule looks at the shelf. */
  readonly parts: readonly DaysRun[];
  /** Days that the stock may miss. */
  readonly misses: number;
}

/** A house under days 0 … days − 1 of each kind. */
export interface Evaluated {
  readonly candidate: Candidate;
  readonly kinds: readonly EvaluatedKind[];
  /** Of the file's own kind of day. */
  readonly model: CafeModel;
  readonly unitCost: readonly number[];
  /** Pieces that are there already. */
  readonly owned: readonly number[];
  readonly level: number;
  readonly days: number;
  readonly stock: readonly number[];
  readonly racksNeeded: Taken['racksNeeded'];
  readonly costs: Costs;
  readonly staffMinutes: number;
}

/** Runs the days of one house, each once however often it is looked at. */
export class House {
  readonly unitCost: readonly number[];
  readonly owned: readonly number[];
  /** A rule of it looks at the shelf: its stock needs days of its own. */
  readonly atStock: boolean;
  private readonly kinds: readonly KindDays[];
  private readonly looked = new Map<number, Evaluated>();

  constructor(
    readonly candidate: Candidate,
    private readonly runner: Runner,
    private readonly options: EvaluateOptions,
  ) {
    const { scenario } = candidate;
    this.kinds = kindDays(scenario, options);
    this.unitCost = unitCosts(scenario);
    this.owned = ownedPieces(scenario);
    this.atStock = this.kinds.some(({ model }) => looksAtTheShelf(model));
  }

  /** Peaks of the first `days` days, by kind. */
  async peaks(days: number): Promise<Peaks[]> {
    const all: Peaks[] = [];
    for (const kind of this.kinds)
      all.push(mergePeaks((await this.parts(kind, days)).map((part) => this.peaksOf(part))));
    return all;
  }

  /**
   * @param misses by kind: days that the stock may miss; where a rule looks at the shelf, the search has its own
   * @param keep false: not the last word on these days
   */
  async look(days: number, misses: readonly number[], keep = true): Promise<Evaluated> {
    const known = this.looked.get(days);
    if (known !== undefined) return known;
    const { candidate, unitCost, owned, atStock } = this;
    const { level, seed, partDays, piecesPerRack } = this.options;
    const peaks = await this.peaks(days);
    let { stock } = leastCostBeyond(
      peaks.map((one, at) => ({ peaks: one, misses: misses[at]! })),
      unitCost,
      owned,
    ) as { stock: readonly number[] };
    if (atStock) {
      const { answer } = await study(candidate.scenario, this.runner, {
        level,
        seed,
        days,
        certifyOn: 1,
        ...(piecesPerRack === undefined ? {} : { piecesPerRack }),
      });
      stock = answer.stock.map(({ pieces }) => pieces);
    }
    const kinds: EvaluatedKind[] = [];
    for (const [at, kind] of this.kinds.entries()) {
      const { model, seed: own, share } = kind;
      const task = { model, seed: own, from: 0, days, stock, listed: null, byDay: false };
      const parts = atStock
        ? await this.runner.apart(task, partDays)
        : await this.parts(kind, days);
      kinds.push({ model, seed: own, share, peaks: peaks[at]!, parts, misses: misses[at]! });
    }
    const runs = kinds.map(({ model, share, parts }) => ({ model, share, run: mergeDays(parts) }));
    const racksNeeded = racksForAll(runs, level);
    const taken = { ...runningOf(runs), stock, unitCost, racksNeeded };
    const seen = {
      candidate,
      kinds,
      model: kinds[0]!.model,
      unitCost,
      owned,
      level,
      days,
      stock,
      racksNeeded,
      costs: costOfScenario(candidate.scenario, taken, extraOf(candidate)),
      staffMinutes: taken.day.staffMinutes,
    };
    if (keep) this.looked.set(days, seen);
    return seen;
  }

  private async parts(kind: KindDays, days: number): Promise<readonly DaysRun[]> {
    const { partDays } = this.options;
    const { model, seed, unlimited } = kind;
    const have = unlimited.length * partDays;
    if (have < days) {
      const task = { model, seed, stock: null, listed: null, byDay: false };
      unlimited.push(
        ...(await this.runner.apart({ ...task, from: have, days: days - have }, partDays)),
      );
    }
    return unlimited.slice(0, Math.ceil(days / partDays));
  }

  private peaksOf(part: DaysRun): Peaks {
    return { days: part.days, ware: this.unitCost.length, data: part.peaks };
  }
}

/** A kind of day and the parts of its days run so far. */
type KindDays = Pick<EvaluatedKind, 'model' | 'seed' | 'share'> & { readonly unlimited: DaysRun[] };

const kindDays = (scenario: Scenario, { seed, piecesPerRack }: EvaluateOptions): KindDays[] =>
  modelsOf(scenario, seed, piecesPerRack).map((kind) => ({ ...kind, unlimited: [] }));

/** The kinds of day of a scenario as the rush sees them. */
export function modelsOf(
  scenario: Scenario,
  seed: string,
  piecesPerRack: PiecesPerRack | undefined,
): Pick<EvaluatedKind, 'model' | 'seed' | 'share'>[] {
  const kinds = kindsOf(scenario);
  const shares = sharesOf(kinds);
  return kinds.map((kind, at) => ({
    model: compile(kind.scenario, piecesPerRack),
    seed: seedOf(seed, kind, at),
    share: shares[at]!,
  }));
}

/** Days of every kind at a stock, such as fresh ones. */
export async function runKinds(
  kinds: readonly Pick<EvaluatedKind, 'model' | 'seed'>[],
  runner: Runner,
  task: Pick<RushTask, 'from' | 'days' | 'stock'>,
): Promise<DaysRun[]> {
  const runs: DaysRun[] = [];
  for (const { model, seed } of kinds)
    runs.push(await runner.run({ model, seed, ...task, listed: null, byDay: false }));
  return runs;
}

/** Share of days on which nothing ran out, of the kind where it is lowest. */
export const lowestSafe = (runs: readonly DaysRun[]): Share => {
  const { sums, days } = runs.reduce((least, run) =>
    run.sums.safeDays < least.sums.safeDays ? run : least,
  );
  const { share, ...rest } = exactBinomialInterval(sums.safeDays, days);
  return { level: share, ...rest };
};

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

/** Days of a kind that were run. */
export interface RunOfKind {
  readonly model: CafeModel;
  readonly share: number;
  readonly run: DaysRun;
}

/** Racks of each kind of rack that are enough on every kind of day. */
export const racksForAll = (runs: readonly RunOfKind[], level: number): Taken['racksNeeded'] =>
  runs[0]!.model.rackKinds.map(({ id }, kind, { length }) => ({
    kind: id,
    racks: Math.max(...runs.map(({ run }) => racksAtLevel(run, length, kind, level))),
  }));

/** What a mean day of the year takes. */
export function runningOf(runs: readonly RunOfKind[]): Pick<Taken, 'day' | 'usesADay'> {
  const mean = (of: (one: RunOfKind) => number): number =>
    meanOverKinds(runs, (at) => of(runs[at]!));
  const openHours = mean(hoursOf);
  return {
    usesADay: Array.from(runs[0]!.run.uses, (_, ware) =>
      mean(({ run }) => run.uses[ware]! / run.days),
    ),
    day: {
      loads: mean(({ run }) => run.sums.loads / run.days),
      staffMinutes: mean(({ run, model }) => staffMinutesOf(run, model)),
      openHours,
      // Of the open hours: a long day counts for more.
      machineBusy:
        runs.length === 1
          ? machineBusyOf(runs[0]!)
          : mean((one) => hoursOf(one) * machineBusyOf(one)) / openHours,
    },
  };
}

const hoursOf = ({ model }: RunOfKind): number => model.closingMs / 3_600_000;

function machineBusyOf({ model, run: { sums, days } }: RunOfKind): number {
  const machines = model.washing.machines?.length ?? 0;
  return machines === 0 ? 0 : Math.min(1, sums.machineMs / (days * model.closingMs * machines));
}

/** Present value over the horizon of a year's running, were all its days like a part of those of one kind; minor units; no ware, no racks. */
export function runningWorth(
  { candidate, unitCost }: Evaluated,
  { model }: EvaluatedKind,
  part: DaysRun,
): number {
  const { scenario } = candidate;
  const frame = frameOf(scenario);
  const { yearTotal } = costOfScenario(
    scenario,
    {
      ...runningOf([{ model, share: 1, run: part }]),
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
