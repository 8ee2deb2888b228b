/** A quick reading of a scenario: the cheapest stock on so many days, not certified. For grids, ranges and draws. */
import type { CafeModel } from '../../cafe/model.js';
import { mergeDays, type DaysRun } from '../../cafe/rush.js';
import type { Costs } from '../../comparing/costs.js';
import { ownedPieces } from '../../scenario/have.js';
import { leastCostBeyond } from '../../sizing/least-cost-beyond.js';
import type { Peaks } from '../../sizing/peaks.js';
import { allowedMisses } from '../../statistics/quantile-of-counts.js';
import { costOfScenario } from './costs.js';
import { runningOf } from './evaluate.js';
import { compile, unitCosts } from '../../scenario/compile.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import type { Runner } from '../../cafe/runner.js';
import { rushFacts } from '../size/rush-facts.js';
import type { Scenario } from '../../scenario/scenario.js';

export interface QuickOptions {
  readonly level: number;
  readonly seed: string;
  readonly days: number;
  readonly piecesPerRack?: PiecesPerRack | undefined;
}

export interface Quick {
  readonly stock: readonly number[];
  readonly stockCost: number;
  readonly costs: Costs;
  readonly machinesBusy: number | null;
}

/** Reads stocks, running no days twice for scenarios that differ in prices alone. */
export class QuickReader {
  /** By rush, the shorter runs first. */
  private readonly runs = new Map<string, readonly DaysRun[]>();

  constructor(
    private readonly runner: Runner,
    private readonly options: QuickOptions,
  ) {}

  /** @param days fewer or more than usual; those run before are not run again */
  async read(
    scenario: Scenario,
    extra = { once: 0, aYear: 0 },
    days = this.options.days,
  ): Promise<Quick> {
    const { level, piecesPerRack } = this.options;
    const model = compile(scenario, piecesPerRack);
    const run = await this.run(model, days);
    const unitCost = unitCosts(scenario);
    const peaks: Peaks = { days, ware: unitCost.length, data: run.peaks };
    const { stock, cost } = leastCostBeyond(
      peaks,
      unitCost,
      allowedMisses(days, level),
      ownedPieces(scenario),
      { parts: 50 },
    );
    const facts = rushFacts(model, run, level);
    const running = runningOf({ scenario }, model, run);
    return {
      stock,
      stockCost: cost,
      machinesBusy: facts.busy.machines,
      costs: costOfScenario(
        scenario,
        { ...running, stock, unitCost, racksNeeded: facts.loads.racksNeeded },
        extra,
      ),
    };
  }

  private async run(model: CafeModel, days: number): Promise<DaysRun> {
    const key = rushKey(model);
    const known = this.runs.get(key) ?? [];
    const same = known.find((run) => run.days === days);
    if (same !== undefined) return same;
    const before = known.findLast((run) => run.days < days);
    const from = before?.days ?? 0;
    const { seed } = this.options;
    const more = await this.runner.run({
      model,
      seed,
      from,
      days: days - from,
      stock: null,
      listed: null,
      byDay: false,
    });
    const run = before === undefined ? more : mergeDays([before, more]);
    this.runs.set(
      key,
      [...known, run].toSorted((a, b) => a.days - b.days),
    );
    return run;
  }
}

/** What of a café the rush sees: not what ware costs. */
const rushKey = (model: CafeModel): string =>
  JSON.stringify({ ...model, ware: model.ware.map((ware) => ({ ...ware, unitCost: 0 })) });
