/**
 * The study: scenario → demand → rush → evidence → decision → answer, drawn in one file.
 *
 * Days come from a runner; the stock is read off their peaks (or searched for, when a rule looks at the
 * clean count), certified on fresh days, and reported together with what the rush looked like.
 */
import type { ListedDay } from '../../cafe/listed-day.js';
import { nameOf } from '../../quantities/name.js';
import { compile, unitCosts } from '../../scenario/compile.js';
import { mergeDays, type DaysRun } from '../../cafe/rush.js';
import { looksAtTheShelf } from '../../cafe/washing/rules/in-order.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { minorPerUnit } from '../../quantities/money.js';
import { marginalStock } from '../../sizing/marginal-stock.js';
import { peaksBeyond } from '../../sizing/least-cost-beyond.js';
import { countMisses, sliceDays, type Peaks } from '../../sizing/peaks.js';
import { onePathOf, riskCurve, scaledPathOf, type RiskPoint } from '../../sizing/risk-curve.js';
import { assuredStock, type Assured } from '../../sizing/assured-stock.js';
import { sizeStock, type SizedStock, type SizingRequest } from '../../sizing/size-stock.js';
import { exactBinomialInterval } from '../../statistics/exact-binomial-interval.js';
import type { Warning } from '../../quantities/flaw.js';
import type { Answer, Evidence, StockLine } from './answer.js';
import { tightestMoment, watchDays } from './evidence.js';
import { ownedPieces } from '../../scenario/have.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import { findOverloads } from './overloads.js';
import { byDayOf, rushFacts } from './rush-facts.js';
import type { Runner } from '../../cafe/runner.js';
import type { Scenario } from '../../scenario/scenario.js';
import { rushWarnings } from './rush-warnings.js';

export interface StudyOptions {
  /** Overrides the scenario's own level and seed. */
  readonly level?: number;
  readonly seed?: string;
  /** Fixes the number of days the stock is chosen on. */
  readonly days?: number;
  /** A quick, provisional answer: certified once, on so many fresh days, and no days added. No matter where the stock or the days are given. */
  readonly certifyOn?: number;
  /** One-sided confidence that the level is held, as a share above 0.5; with `certifyOn`, given stocks or given days it has no place. */
  readonly confidence?: number;
  /** Given pieces by ware id: asks how safe that stock is. Ware left out is taken as plentiful. */
  readonly stock?: Readonly<Record<string, number>>;
  /** Given days in place of drawn ones. */
  readonly listed?: readonly ListedDay[];
  /** Add the peaks of every day chosen on. */
  readonly peaks?: boolean;
  /** Days to watch for pictures; 0: none. The tightest moment is always reported. */
  readonly watch?: number;
  readonly piecesPerRack?: PiecesPerRack;
}

/** A study's answer, and the curves of risk that its pictures are made from. */
export interface Study {
  readonly answer: Answer;
  /** The chance of running out as all ware is scaled together, and with one ware varied alone; worked out when asked. */
  readonly risk: { together(): readonly RiskPoint[]; alone(ware: number): readonly RiskPoint[] };
  /** Watches the first days again for pictures, at most as many as were run. */
  watch(days: number): Promise<Evidence>;
}

/** Days run at a given stock unless said otherwise. */
const DAYS_AT_STOCK = 2000;
export const MOST_DAYS = 8000;
/** First day that a given stock is judged on: beyond all that a stock may be chosen or certified on, so that none flatters itself. */
const JUDGED_FROM = 10_000_000;

/**
 * Size the stock of a scenario, or judge a given one.
 * @throws RangeError for a level outside 0..1, fewer than one day, or a ware that the scenario does not have
 */
export async function study(
  scenario: Scenario,
  runner: Runner,
  options: StudyOptions = {},
): Promise<Study> {
  const model = compile(scenario, options.piecesPerRack);
  const seed = options.seed ?? scenario.seed;
  const level = options.level ?? scenario.level;
  const listed = options.listed ?? null;
  const costs = unitCosts(scenario);
  const owned = ownedPieces(scenario);
  const runs: DaysRun[] = [];
  const run = (
    from: number,
    days: number,
    stock: readonly number[] | null,
    { byDay = false, after = 0 } = {},
  ): Promise<DaysRun> => runner.run({ model, seed, from, days, stock, listed, byDay }, after);
  const withOwned = (bought: readonly number[]): number[] =>
    bought.map((pieces, ware) => pieces + owned[ware]!);
  const provider = {
    async peaks(from: number, count: number, after: number): Promise<Peaks> {
      const part = await run(from, count, null, { after });
      runs.push(part);
      // What is owned costs nothing: the search is for what more is needed.
      return peaksBeyond(peaksOf(part), owned);
    },
    ...(looksAtTheShelf(model)
      ? {
          misses: async (bought: readonly number[], from: number, count: number) =>
            count - (await run(from, count, withOwned(bought))).sums.safeDays,
        }
      : {}),
  };

  const first = options.stock === undefined || listed !== null ? 0 : JUDGED_FROM;
  const sized = options.stock === undefined ? await chosenStock() : null;
  const given = options.stock === undefined ? null : await givenStock(options.stock);
  const days = sized?.chosenOn ?? given!.days;
  const stock = sized === null ? given!.stock : withOwned(sized.stock);
  // The rush to tell of: with unlimited ware, unless the stock itself changes what happens.
  const unlimited = mergeDays(runs.filter((part) => part.from + part.days <= first + days));
  const reported =
    given?.atStock ?? (provider.misses === undefined ? unlimited : await run(0, days, stock));
  const facts = rushFacts(model, reported, level);
  const peaks = peaksOf(unlimited);
  const alone = marginalStock(peaks, level);
  const perUnit = minorPerUnit(scenario.currency);
  const lines: StockLine[] = Object.entries(scenario.ware).map(([id, ware], index) => ({
    ware: id,
    name: nameOf(id, ware),
    pieces: stock[index]!,
    low: alone[index]!.low,
    high: alone[index]!.high,
    alone: alone[index]!.pieces,
    unitCost: costs[index]! / perUnit,
    have: owned[index]!,
    add: Math.max(0, stock[index]! - owned[index]!),
    aloneLow: alone[index]!.low,
    aloneHigh: alone[index]!.high,
  }));
  const watched = Math.min(options.watch ?? 0, days);
  const look = {
    model,
    seed,
    days: watched,
    stock: reported === unlimited ? null : stock,
    listed,
    pause: async () => runner.pause?.(),
  };
  const tight = tightestDay(peaks, stock, level);
  const tightest = await tightestMoment(look, first + tight.day, tight.ware);
  const warnings: Warning[] = [
    ...(sized?.warnings ?? []),
    ...(given?.warnings ?? []),
    ...rushWarnings(model, reported, facts, listed),
  ];
  const answer: Answer = {
    scenario: scenario.name,
    seed,
    currency: scenario.currency,
    level,
    days: { chosenOn: days, certifiedOn: sized?.certifiedOn ?? 0 },
    certified: sized?.certified ?? null,
    ...(sized?.assured === undefined ? {} : { assured: sized.assured }),
    stock: lines,
    cost: stock.reduce((sum, pieces, index) => sum + pieces * costs[index]!, 0) / perUnit,
    spend: lines.reduce((sum, { add, unitCost }) => sum + add * unitCost, 0),
    ...facts,
    overloads: findOverloads(model, facts.houseShare),
    warnings,
    tightest,
    ...(watched > 0 ? { evidence: await watchDays(look) } : {}),
    ...(options.peaks === true ? { peaks: rowsOf(peaksOf(given?.atStock ?? unlimited)) } : {}),
    ...(given === null ? {} : given.reported),
  };
  const curvePeaks = sized?.fresh == null ? peaks : freshPeaks(runs, sized);
  return {
    answer,
    watch: (most) => watchDays({ ...look, days: Math.min(most, days) }),
    risk: {
      together: () => riskCurve(curvePeaks, scaledPathOf(curvePeaks, stock)),
      alone: (ware) => riskCurve(curvePeaks, onePathOf(curvePeaks, stock, ware)),
    },
  };

  async function chosenStock(): Promise<SizedStock & { readonly assured?: Assured }> {
    const bootstrap = new Stream(streamKey(seed, 'bootstrap'));
    const request: SizingRequest = {
      level,
      unitCostMinor: costs,
      provider,
      cap: MOST_DAYS,
      uniform: () => bootstrap.uniform(),
      ...(listed === null ? {} : { days: listed.length, certify: false }),
      ...(listed === null && options.days !== undefined ? { days: options.days } : {}),
      ...(listed === null && options.certifyOn !== undefined
        ? { certifyOn: options.certifyOn }
        : {}),
    };
    const { confidence, certifyOn } = options;
    return confidence === undefined || certifyOn !== undefined || listed !== null
      ? sizeStock(request)
      : assuredStock(request, confidence);
  }

  async function givenStock(pieces: Readonly<Record<string, number>>): Promise<{
    days: number;
    stock: number[];
    atStock: DaysRun;
    warnings: Warning[];
    reported: Partial<Answer>;
  }> {
    const ids = model.ware.map(({ id }) => id);
    const unknown = Object.keys(pieces).filter((id) => !ids.includes(id));
    if (unknown.length > 0)
      throw new RangeError(
        `stock: no ware "${unknown.join('", "')}" in the scenario; it has ${ids.join(', ')}`,
      );
    const count = listed?.length ?? options.days ?? DAYS_AT_STOCK;
    const plenty = await run(first, count, null);
    runs.push(plenty);
    const most = largest(peaksOf(plenty));
    const full = ids.map((id, ware) => pieces[id] ?? most[ware]!);
    const atStock = await run(first, count, full, { byDay: true });
    const left = ids.filter((id) => pieces[id] === undefined);
    return {
      days: count,
      stock: full,
      atStock,
      warnings:
        left.length === 0
          ? []
          : [
              {
                code: 'ware-taken-as-plentiful',
                message: `no pieces were given for ${left.join(', ')}: as many as the busiest day needs were assumed`,
                path: '',
              },
            ],
      reported: byDayOf(
        model,
        atStock,
        exactBinomialInterval(atStock.sums.safeDays, count),
        listed !== null,
      ),
    };
  }
}

const peaksOf = (run: DaysRun): Peaks => ({
  days: run.days,
  ware: run.peaks.length / run.days,
  data: run.peaks,
});

/** All that the days certified on need, whatever is owned. */
function freshPeaks(runs: readonly DaysRun[], { chosenOn, certifiedOn }: SizedStock): Peaks {
  const all = peaksOf(mergeDays(runs));
  const from = Math.max(chosenOn, all.days - certifiedOn);
  return sliceDays(all, from, all.days - from);
}

const rowsOf = (peaks: Peaks): number[][] =>
  Array.from({ length: peaks.days }, (_, day) => [
    ...peaks.data.subarray(day * peaks.ware, (day + 1) * peaks.ware),
  ]);

function largest(peaks: Peaks): number[] {
  const most = Array.from({ length: peaks.ware }, () => 0);
  peaks.data.forEach((peak, cell) => {
    const ware = cell % peaks.ware;
    if (peak > most[ware]!) most[ware] = peak;
  });
  return most;
}

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
