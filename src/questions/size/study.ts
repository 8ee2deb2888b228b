/**
 * The study: scenario → demand → rush → evidence → decision → answer, drawn in one file.
 *
 * Days come from a runner; the stock is read off their peaks (or searched for, when a rule looks at the
 * clean count), certified on fresh days, and reported together with what the rush looked like.
 */
import type { ListedDay } from '../../cafe/listed-day.js';
import type { Runner } from '../../cafe/runner.js';
import type { DaysRun } from '../../cafe/rush.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { minorPerUnit } from '../../quantities/money.js';
import { nameOf } from '../../quantities/name.js';
import { unitCosts } from '../../scenario/compile.js';
import { ownedPieces } from '../../scenario/have.js';
import { kindsOf, seedOf } from '../../scenario/kinds.js';
import type { PiecesPerRack } from '../../scenario/pieces-per-rack.js';
import type { KindOfDay, Scenario } from '../../scenario/scenario.js';
import type { Warning } from '../../quantities/flaw.js';
import { assuredStock, type Assured } from '../../sizing/assured-stock.js';
import { marginalStock, mostNeeded } from '../../sizing/marginal-stock.js';
import type { Peaks } from '../../sizing/peaks.js';
import { riskCurve, scaledPathOf, type RiskPoint } from '../../sizing/risk-curve.js';
import { sizeStock, type SizedStock } from '../../sizing/size-stock.js';
import type { SizingRequest } from '../../sizing/sizing-request.js';
import { exactBinomialInterval } from '../../statistics/exact-binomial-interval.js';
import {
  TAKEN_AS_PLENTIFUL,
  type Answer,
  type Evidence,
  type KindAnswer,
  type StockLine,
} from './answer.js';
import { KindHouse, peaksOf, type KindReport } from './kind-house.js';
import { byDayOf } from './rush-facts.js';

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
  /** The chance of running out as all ware is scaled together; worked out when asked. */
  readonly risk: { together(): readonly RiskPoint[] };
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
  const seed = options.seed ?? scenario.seed;
  const level = options.level ?? scenario.level;
  const listed = options.listed ?? null;
  const costs = unitCosts(scenario);
  const owned = ownedPieces(scenario);
  const kinds = kindsOf(scenario);
  const { piecesPerRack } = options;
  const houses = kinds.map(
    (kind, at) =>
      new KindHouse(kind, runner, { seed: seedOf(seed, kind, at), listed, piecesPerRack, owned }),
  );
  const sized = options.stock === undefined ? await chosenStock() : null;
  const given = options.stock === undefined ? null : await givenStock(options.stock);
  const first = options.stock === undefined || listed !== null ? 0 : JUDGED_FROM;
  const days = sized?.chosenOn ?? given!.days;
  const stock =
    sized === null ? given!.stock : sized.stock.map((pieces, ware) => pieces + owned[ware]!);
  const reports: KindReport[] = [];
  for (const [at, house] of houses.entries())
    reports.push(
      await house.report(stock, level, first, days, given === null ? null : given.atStock[at]!),
    );
  const tightest = sized?.tightest ?? given!.tightest;
  const report = reports[tightest]!;
  const alone = mostNeeded(reports.map(({ peaks }) => marginalStock(peaks, level)));
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
  const peaks = options.peaks === true ? houses.map((_, at) => rowsOf(at)) : null;
  const { facts } = report;
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
    overloads: report.overloads,
    warnings: [
      ...(sized?.warnings ?? []),
      ...(given?.warnings ?? []),
      ...warningsOf(kinds, reports),
    ],
    tightest: report.tightest,
    ...(watched > 0 ? { evidence: await report.watch(watched) } : {}),
    ...(peaks !== null && kinds.length === 1 ? { peaks: peaks[0]! } : {}),
    ...(given === null ? {} : given.reported[tightest]),
    ...(kinds.length === 1 ? {} : answersByKind()),
  };
  const curvePeaks =
    sized?.fresh == null
      ? report.peaks
      : houses[tightest]!.freshPeaks(sized.chosenOn, sized.certifiedOn);
  return {
    answer,
    watch: (most) => report.watch(most),
    risk: {
      together: () => riskCurve(curvePeaks, scaledPathOf(curvePeaks, stock)),
    },
  };

  function rowsOf(at: number): number[][] {
    return peakRows(given === null ? reports[at]!.peaks : peaksOf(given.atStock[at]!));
  }

  /** Racks are bought for the kind that needs most. */
  function answersByKind(): Pick<Answer, 'kinds' | 'tightestKind' | 'loads'> {
    const racks = facts.loads.racksNeeded.map(({ kind }, at) => ({
      kind,
      racks: Math.max(...reports.map((one) => one.facts.loads.racksNeeded[at]!.racks)),
    }));
    return {
      tightestKind: kinds[tightest]!.id,
      loads: { ...facts.loads, racksNeeded: racks },
      kinds: kinds.map(({ id, name, daysAYear }, at): KindAnswer => {
        const { busy, guests, loads, uses, drinks, takeawayCups } = reports[at]!.facts;
        return {
          id,
          name,
          daysAYear,
          certified: sized?.kinds[at]!.certified ?? given?.reported[at]!.rushLevel ?? null,
          busy,
          guests,
          loads,
          uses,
          drinks,
          takeawayCups,
          ...(peaks === null ? {} : { peaks: peaks[at]! }),
        };
      }),
    };
  }

  async function chosenStock(): Promise<SizedStock & { readonly assured?: Assured }> {
    const bootstrap = new Stream(streamKey(seed, 'bootstrap'));
    const [provider, ...further] = houses.map((house) => house.provider);
    const request: SizingRequest = {
      level,
      unitCostMinor: costs,
      provider: provider!,
      further,
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

  async function givenStock(pieces: Readonly<Record<string, number>>): Promise<GivenStock> {
    const { model } = houses[0]!;
    const ids = model.ware.map(({ id }) => id);
    const unknown = Object.keys(pieces).filter((id) => !ids.includes(id));
    if (unknown.length > 0)
      throw new RangeError(
        `stock: no ware "${unknown.join('", "')}" in the scenario; it has ${ids.join(', ')}`,
      );
    const count = listed?.length ?? options.days ?? DAYS_AT_STOCK;
    const from = listed === null ? JUDGED_FROM : 0;
    const most: number[][] = [];
    for (const house of houses) most.push(largest(await house.runPlenty(from, count)));
    const full = ids.map((id, ware) => pieces[id] ?? Math.max(...most.map((one) => one[ware]!)));
    const atStock: DaysRun[] = [];
    for (const house of houses) atStock.push(await house.run(from, count, full, { byDay: true }));
    const reported = atStock.map((run) =>
      byDayOf(model, run, exactBinomialInterval(run.sums.safeDays, count), listed !== null),
    );
    const left = ids.filter((id) => pieces[id] === undefined);
    return {
      days: count,
      stock: full,
      atStock,
      reported,
      tightest: reported.reduce(
        (least, { rushLevel }, at) =>
          rushLevel!.level < reported[least]!.rushLevel!.level ? at : least,
        0,
      ),
      warnings:
        left.length === 0
          ? []
          : [
              {
                code: TAKEN_AS_PLENTIFUL,
                message: `no pieces were given for ${left.map((id) => nameOf(id, scenario.ware[id]!)).join(', ')}: as many as the busiest day needs were assumed`,
                path: '',
              },
            ],
    };
  }
}

/** A given stock on its days, by kind. */
interface GivenStock {
  readonly days: number;
  readonly stock: readonly number[];
  readonly atStock: readonly DaysRun[];
  readonly reported: readonly Partial<Answer>[];
  /** The kind that is carried least. */
  readonly tightest: number;
  readonly warnings: readonly Warning[];
}

/** Warnings of every kind; where there are several, each says on which. */
const warningsOf = (
  kinds: readonly KindOfDay[],
  reports: readonly KindReport[],
): readonly Warning[] =>
  reports.flatMap(({ warnings }, at) =>
    kinds.length === 1
      ? warnings
      : warnings.map((one) => ({ ...one, message: `${kinds[at]!.name}: ${one.message}` })),
  );

const peakRows = (peaks: Peaks): number[][] =>
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
