/**
 * A stocktake: what has gone since the last count, what that says about the loss rates, and what to order.
 *
 * Pieces gone are those that were there and are neither counted nor retired. Where the count does not say how many
 * of them broke, they are put down to breakage and walk-off in the proportion that was expected.
 *
 * A count that the assumed rates make very unlikely, doubt about them included, is questioned: a thief, a bin, or a
 * slip of the pen is no rate. The order then follows the assumed rates until somebody knows.
 */
import { log1p } from '../elementary/log.js';
import type { Count } from './counts-file.js';
import { didYouMean } from '../quantities/nearest.js';
import {
  DAYS_A_YEAR,
  expectedLosses,
  lossesAtMost,
  shareFromRate,
  type LossRates,
} from './losses.js';
import {
  beliefOf,
  countedRate,
  priorOf,
  updated,
  type Interval,
  type RateBelief,
} from './loss-evidence.js';
import { ordersForPar, type OrderPolicy, type PolicyInput } from './policy.js';
import { problem } from './problems.js';
import type { Fault, Outcome } from '../quantities/flaw.js';

/** What was known of a ware before the count. */
export interface StocktakeWare {
  readonly ware: string;
  /** Pieces at the last count (or bought at the start). */
  readonly lastCount: number;
  /** Uses of all its pieces since then. */
  readonly usesSince: number;
  /** Plausible range of the assumed breakage per 1000 uses; null: not known. */
  readonly breakageRange: readonly [number, number] | null;
  /** Plausible range of the assumed share walking off a year; null: not known. */
  readonly walkOffRange: readonly [number, number] | null;
  /** Par, assumed loss rates, lead time and the rest of its ordering rules. */
  readonly policy: PolicyInput;
}

export interface StocktakeInput {
  readonly counts: readonly Count[];
  readonly ware: readonly StocktakeWare[];
  /** Days since the last count, above 0. */
  readonly days: number;
}

/** A rate before and after the count. */
export interface RateUpdate {
  /** Pieces put down to this cause; parts of a piece where they were shared out. */
  readonly events: number;
  /** Thousand uses, or piece-years. */
  readonly exposure: number;
  readonly prior: RateBelief;
  readonly posterior: RateBelief;
  /** Weight of the assumed rate in the rate from now on, 0..1; the count has the rest. */
  readonly weightOfAssumed: number;
  /** Law of the rate after the count. */
  readonly evidence: { readonly shape: number; readonly exposure: number };
}

export interface StocktakeLine {
  readonly ware: string;
  readonly expected: number;
  readonly counted: number;
  readonly retired: number;
  /** Pieces gone: neither counted nor retired. */
  readonly missing: number;
  /** Of these, known to have broken; null: nobody noted it. */
  readonly broken: number | null;
  /** Mean pieces that the assumed rates let go in this time. */
  readonly usual: number;
  /** Chance at the assumed rates that as many go, or more; and as few, or fewer. */
  readonly chance: { readonly ofAsMany: number; readonly ofAsFew: number };
  /** Where the count is very unlikely at the assumed rates: how. */
  readonly question: 'too many gone' | 'too few gone' | null;
  /** Missing pieces per 1000 uses, with a 95 % interval; null where nothing was used. */
  readonly seen: (Interval & { readonly rate: number }) | null;
  /** Breakage per 1000 uses; null where none is assumed or nothing was used. */
  readonly breakage: RateUpdate | null;
  /** Walk-off a piece-year (a rate, not a share); null where none is assumed. */
  readonly walkOff: RateUpdate | null;
  /** Loss rates that the order follows: with what was learnt, or the assumed ones where the count is questioned. */
  readonly rates: LossRates;
  readonly policy: OrderPolicy;
  /** Mean pieces that go within a year from those counted, at these rates; retired ones apart. */
  readonly goAYear: number;
  /** Whether the count is below the reorder point. */
  readonly orderNow: boolean;
  /** Pieces to order now, up to the holding; 0 where the count is enough. */
  readonly topUp: number;
}

export interface Stocktake {
  readonly days: number;
  readonly lines: readonly StocktakeLine[];
  /** Ware that nobody counted. */
  readonly uncounted: readonly string[];
}

/** Works the count through, or says what is wrong with it. */
export function stocktake(input: StocktakeInput): Outcome<Stocktake> {
  const problems = countProblems(input);
  if (problems.length > 0) return { ok: false, problems };
  const lines = input.counts.map((count) =>
    lineOf(
      count,
      input.ware.find(({ ware }) => ware === count.ware)!,
      input.days,
    ),
  );
  return {
    ok: true,
    value: {
      days: input.days,
      lines,
      uncounted: input.ware
        .map(({ ware }) => ware)
        .filter((ware) => !input.counts.some((count) => count.ware === ware)),
    },
  };
}

function countProblems({ counts, ware: wares, days }: StocktakeInput): readonly Fault[] {
  const problems: Fault[] = [];
  if (!(days > 0))
    problems.push(
      problem(
        ['days'],
        days,
        'is not after the last count',
        'give the date of the last count, before this one',
      ),
    );
  for (const count of counts) {
    const ware = wares.find((one) => one.ware === count.ware);
    const at = (column: string): readonly (string | number)[] => ['row', count.row, column];
    if (ware === undefined) {
      problems.push(
        problem(
          at('ware'),
          count.ware,
          'is not a ware of this scenario',
          didYouMean(
            count.ware,
            wares.map((one) => one.ware),
          ),
        ),
      );
      continue;
    }
    const bought = ware.lastCount + (count.delivered ?? 0);
    const found = count.counted + (count.retired ?? 0);
    if (found > bought)
      problems.push(
        problem(
          at('counted'),
          count.counted,
          `pieces${count.retired ? ` and ${count.retired} retired` : ''} are more than the ${bought} that there could be`,
          'enter what was delivered since the last count, or count again',
        ),
      );
    else if ((count.broken ?? 0) > bought - found)
      problems.push(
        problem(
          at('broken'),
          count.broken,
          `pieces broken are more than the ${bought - found} missing`,
          'count again, or enter what was delivered since the last count',
        ),
      );
  }
  return problems;
}

function lineOf(count: Count, ware: StocktakeWare, days: number): StocktakeLine {
  const assumed = ware.policy.rates;
  const expected = ware.lastCount + (count.delivered ?? 0);
  const retired = count.retired ?? 0;
  const missing = expected - count.counted - retired;
  const thousandUses = ware.usesSince / 1000;

  const wasExpected = expectedLosses(
    { ...assumed, usesADay: ware.usesSince / days },
    expected,
    days,
  );
  const accounted = goOf(wasExpected);
  const broken =
    count.broken ?? (accounted === 0 ? missing : (missing * wasExpected.breakage) / accounted);
  const breakage =
    thousandUses > 0 && assumed.perThousandUses > 0
      ? update(assumed.perThousandUses, ware.breakageRange, broken, thousandUses)
      : null;

  const hazardOf = (share: number): number => -log1p(-share);
  const pieceYears = (((expected + count.counted) / 2) * days) / DAYS_A_YEAR;
  const range =
    ware.walkOffRange === null
      ? null
      : ([hazardOf(ware.walkOffRange[0]), hazardOf(ware.walkOffRange[1])] as const);
  const walkOff =
    assumed.walkOffPerYear > 0 && pieceYears > 0
      ? update(hazardOf(assumed.walkOffPerYear), range, missing - broken, pieceYears)
      : null;

  const question = questionOf(missing, expected, days, ware, breakage !== null);
  const usually = {
    ...assumed,
    usesADay: ware.usesSince / days,
    // Retired pieces are counted by themselves.
    retirementPerYear: 0,
  };
  const chance = {
    ofAsMany: 1 - lossesAtMost(usually, expected, days, missing - 1),
    ofAsFew: lossesAtMost(usually, expected, days, missing),
  };
  const learnt: LossRates = {
    ...assumed,
    ...(breakage === null
      ? {}
      : {
          perThousandUses: breakage.posterior.mean,
          evidence: { shape: breakage.evidence.shape, thousandUses: breakage.evidence.exposure },
        }),
    ...(walkOff === null ? {} : { walkOffPerYear: shareFromRate(walkOff.posterior.mean) }),
  };
  const rates = question === null ? learnt : assumed;
  const policy = ordersForPar({ ...ware.policy, rates });
  const orderNow = count.counted < (policy.reorderPoint ?? policy.par);
  return {
    ware: count.ware,
    expected,
    counted: count.counted,
    retired,
    missing,
    broken: count.broken,
    usual: accounted,
    chance,
    question,
    seen: thousandUses > 0 ? countedRate(missing, thousandUses) : null,
    breakage,
    walkOff,
    rates,
    policy,
    goAYear: goOf(expectedLosses(rates, count.counted, DAYS_A_YEAR)),
    orderNow,
    topUp: orderNow ? Math.max(0, policy.orderUpTo - count.counted) : 0,
  };
}

const goOf = ({ breakage, walkOff }: ReturnType<typeof expectedLosses>): number =>
  breakage + walkOff;

/** Chance below which a count is questioned. */
const UNLIKELY = 0.01;

/** Whether so many or so few gone are very unlikely at the assumed rates, even at the ends of their ranges. */
function questionOf(
  missing: number,
  held: number,
  days: number,
  { policy: { rates }, usesSince, breakageRange, walkOffRange }: StocktakeWare,
  breaks: boolean,
): StocktakeLine['question'] {
  const at = (end: 0 | 1): LossRates => ({
    ...rates,
    usesADay: usesSince / days,
    walkOffPerYear: walkOffRange?.[end] ?? rates.walkOffPerYear,
    // Retired pieces are counted by themselves.
    retirementPerYear: 0,
    ...(breaks ? { evidence: priorOf(rates.perThousandUses, breakageRange) } : {}),
  });
  if (1 - lossesAtMost(at(1), held, days, missing - 1) < UNLIKELY) return 'too many gone';
  return lossesAtMost(at(0), held, days, missing) < UNLIKELY ? 'too few gone' : null;
}

function update(
  rate: number,
  range: readonly [number, number] | null,
  events: number,
  exposure: number,
): RateUpdate {
  const prior = priorOf(rate, range);
  const after = updated(prior, events, exposure);
  return {
    events,
    exposure,
    prior: beliefOf(prior),
    posterior: beliefOf(after),
    weightOfAssumed: prior.thousandUses / after.thousandUses,
    evidence: { shape: after.shape, exposure: after.thousandUses },
  };
}
