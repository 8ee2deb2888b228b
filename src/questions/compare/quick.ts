/** A quick reading of a scenario: the cheapest stock on so many days, not certified. For grids, ranges and draws. */
import type { CafeModel } from '../../cafe/model.js';
import { mergeDays, type DaysRun } from '../../cafe/rush.js';
import type { Costs } from '../../comparing/costs.js';
import { ownedPieces } from '../../scenario/have.js';
import { leastCostBeyond } from '../../sizing/least-cost-beyond.js';
import { allowedMisses } from '../../statistics/quantile-of-counts.js';
import { costOfScenario } from './costs.js';
import { modelsOf, racksForAll, runningOf, type RunOfKind } from './evaluate.js';
import { unitCosts } from '../../scenario/compile.js';
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
  /** Of the kind of day on which they are busiest. */
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
    const { level, seed, piecesPerRack } = this.options;
    const kinds = modelsOf(scenario, seed, piecesPerRack);
    const runs: RunOfKind[] = [];
    for (const { model, seed: own, share } of kinds)
      runs.push({ model, share, run: await this.run(model, own, days) });
    const unitCost = unitCosts(scenario);
    const misses = allowedMisses(days, level);
    const { stock, cost } = leastCostBeyond(
      runs.map(({ run }) => ({
        peaks: { days, ware: unitCost.length, data: run.peaks },
        misses,
      })),
      unitCost,
      ownedPieces(scenario),
      { parts: 50 },
    );
    const busy = runs.map(({ model, run }) => rushFacts(model, run, level).busy.machines);
    return {
      stock,
      stockCost: cost,
      machinesBusy: busy.includes(null) ? null : Math.max(...busy.map((share) => share!)),
      costs: costOfScenario(
        scenario,
        { ...runningOf(runs), stock, unitCost, racksNeeded: racksForAll(runs, level) },
        extra,
      ),
    };
  }

  private async run(model: CafeModel, seed: string, days: number): Promise<DaysRun> {
    const key = rushKey(model, seed);
    const known = this.runs.get(key) ?? [];
    const same = known.find((run) => run.days === days);
    if (same !== undefined) return same;
    const before = known.findLast((run) => run.days < days);
    const from = before?.days ?? 0;
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
const rushKey = (model: CafeModel, seed: string): string =>
  JSON.stringify({ ...model, seed, ware: model.ware.map((ware) => ({ ...ware, unitCost: 0 })) });
