/** One kind of day of a house: its days, run as they are asked for, and what they say of a stock. */
import type { ListedDay } from '../../cafe/listed-day.js';
import type { CafeModel } from '../../cafe/model.js';
import { mergeDays, type DaysRun } from '../../cafe/rush.js';
import type { Runner } from '../../cafe/runner.js';
import { looksAtTheShelf } from '../../cafe/washing/rules/in-order.js';
import { compile } from '../../scenario/compile.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import type { KindOfDay } from '../../scenario/scenario.js';
import type { Warning } from '../../quantities/flaw.js';
import { peaksBeyond } from '../../sizing/least-cost-beyond.js';
import { countMisses, type Peaks } from '../../sizing/peaks.js';
import type { SizingProvider } from '../../sizing/sizing-request.js';
import type { Evidence, Overload, TightestMoment } from './answer.js';
import { tightestMoment, watchDays } from './evidence.js';
import { findOverloads } from './overloads.js';
import { rushFacts, type RushFacts } from './rush-facts.js';
import { rushWarnings } from './rush-warnings.js';

export interface KindOptions {
  readonly seed: string;
  readonly listed: readonly ListedDay[] | null;
  readonly piecesPerRack?: PiecesPerRack | undefined;
  /** Pieces by ware that are there already. */
  readonly owned: readonly number[];
}

/** What a kind of day says of a stock. */
export interface KindReport {
  readonly facts: RushFacts;
  readonly overloads: readonly Overload[];
  readonly warnings: readonly Warning[];
  readonly peaks: Peaks;
  readonly tightest: TightestMoment;
  /** Watches the first days again, at most as many as were run. */
  watch(days: number): Promise<Evidence>;
}

export class KindHouse {
  readonly model: CafeModel;
  readonly provider: SizingProvider;
  private readonly runs: DaysRun[] = [];

  constructor(
    readonly kind: KindOfDay,
    private readonly runner: Runner,
    private readonly options: KindOptions,
  ) {
    const { owned } = options;
    this.model = compile(kind.scenario, options.piecesPerRack);
    this.provider = {
      peaks: async (from, count, after) => {
        const part = await this.run(from, count, null, { after });
        this.runs.push(part);
        // What is owned costs nothing: the search is for what more is needed.
        return peaksBeyond(peaksOf(part), owned);
      },
      ...(looksAtTheShelf(this.model)
        ? {
            misses: async (bought: readonly number[], from: number, count: number) =>
              count -
              (
                await this.run(
                  from,
                  count,
                  bought.map((pieces, ware) => pieces + owned[ware]!),
                )
              ).sums.safeDays,
          }
        : {}),
    };
  }

  run(
    from: number,
    days: number,
    stock: readonly number[] | null,
    { byDay = false, after = 0 } = {},
  ): Promise<DaysRun> {
    const { seed, listed } = this.options;
    return this.runner.run({ model: this.model, seed, from, days, stock, listed, byDay }, after);
  }

  /** Runs days with unlimited ware, to be reported of. */
  async runPlenty(from: number, days: number): Promise<Peaks> {
    const plenty = await this.run(from, days, null);
    this.runs.push(plenty);
    return peaksOf(plenty);
  }

  /** All that the days certified on need, whatever is owned. */
  freshPeaks(chosenOn: number, certifiedOn: number): Peaks {
    const all = peaksOf(mergeDays(this.runs));
    const from = Math.max(chosenOn, all.days - certifiedOn);
    return {
      days: all.days - from,
      ware: all.ware,
      data: all.data.subarray(from * all.ware),
    };
  }

  /** @param atStock the days at the stock, where that was given */
  async report(
    stock: readonly number[],
    level: number,
    first: number,
    days: number,
    atStock: DaysRun | null,
  ): Promise<KindReport> {
    const { model, runs } = this;
    const { seed, listed } = this.options;
    // The rush to tell of: with unlimited ware, unless the stock itself changes what happens.
    const unlimited = mergeDays(runs.filter((part) => part.from + part.days <= first + days));
    const reported =
      atStock ?? (this.provider.misses === undefined ? unlimited : await this.run(0, days, stock));
    const facts = rushFacts(model, reported, level);
    const peaks = peaksOf(unlimited);
    const look = {
      model,
      seed,
      stock: reported === unlimited ? null : stock,
      listed,
      pause: async () => this.runner.pause?.(),
    };
    const tight = tightestDay(peaks, stock, level);
    return {
      facts,
      overloads: findOverloads(model, facts.houseShare),
      warnings: rushWarnings(model, reported, facts, listed),
      peaks,
      tightest: await tightestMoment({ ...look, days }, first + tight.day, tight.ware),
      watch: (most) => watchDays({ ...look, days: Math.min(most, days) }),
    };
  }
}

export const peaksOf = (run: DaysRun): Peaks => ({
  days: run.days,
  ware: run.peaks.length / run.days,
  data: run.peaks,
});

/** The day nearest the level in how tight it gets at this stock, and the ware that is scarcest on it. */
function tightestDay(
  peaks: Peaks,
  stock: readonly number[],
  level: number,
): { day: number; ware: number } {
  const days = Array.from({ length: peaks.days }, (_, day) => {
    let [ware, share] = [0, -1];
    stock.forEach((pieces, index) => {
      const of = peaks.data[day * peaks.ware + index]! / Math.max(pieces, 0.5);
      if (of > share) [ware, share] = [index, of];
    });
    return { day, ware, share };
  }).sort((a, b) => a.share - b.share || a.day - b.day);
  const within = days.length - countMisses(peaks, stock);
  const wanted = Math.min(within, Math.ceil(level * days.length)) - 1;
  return days[Math.max(0, wanted)]!;
}
