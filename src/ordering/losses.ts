/**
 * How many pieces of a ware are gone after so many days, as an exact distribution.
 *
 * Three separate ways to lose a piece:
 * - breakage and chipping, per use: Poisson in the uses; negative binomial where the rate itself is
 *   only known from stocktakes (gamma–Poisson) or where breakages come in bursts (`dispersion`);
 * - walk-off, a share of the pieces held a year: each piece stays or goes, so binomial;
 * - retirement of stained or worn pieces, likewise a share a year.
 * A piece that has walked off is not retired as well, so these two compete for the same pieces. Breakage
 * is not thinned by them and can, in the far tail, count a piece twice: it errs towards more spares.
 */
import { expm1 } from '../elementary/exp.js';
import { log1p } from '../elementary/log.js';
import {
  atMost,
  binomialCounts,
  negativeBinomialCounts,
  poissonCounts,
  quantileOf,
  sumOf,
} from './counts-of-pieces.js';
import type { PieceCounts } from './counts-of-pieces.js';

/** A breakage rate known from counts: gamma with this shape, over `thousandUses` of evidence; its mean is shape / thousandUses. */
export interface BreakageEvidence {
  readonly shape: number;
  readonly thousandUses: number;
}

export interface LossRates {
  /** Mean uses of the ware a calendar day (all pieces together). */
  readonly usesADay: number;
  /** Pieces broken or chipped per 1000 uses. */
  readonly perThousandUses: number;
  /** Share of the pieces held that has walked off after a year, 0 ≤ share < 1. */
  readonly walkOffPerYear: number;
  /** Share of the pieces held that is retired (stained, worn) within a year, 0 ≤ share < 1. */
  readonly retirementPerYear: number;
  /** Variance over mean of breakages in a period, ≥ 1; default 1 (Poisson). Ignored where `evidence` is given. */
  readonly dispersion?: number;
  /** Replaces `perThousandUses` by what stocktakes have shown, doubt included. */
  readonly evidence?: BreakageEvidence;
}

export const DAYS_A_YEAR = 365;

/**
 * Exact distribution of the pieces lost of `held` pieces over `days`.
 *
 * @param rates loss rates of the ware
 * @param held pieces at the start (walk-off and retirement act on these), a whole number
 * @param days length of the period, ≥ 0, need not be whole
 */
export function lossDistribution(rates: LossRates, held: number, days: number): PieceCounts {
  return sumOf(breakageCounts(rates, days), leavingCounts(rates, held, days));
}

/**
 * Probability that at most `most` of `held` pieces are lost over `days`: the same sum as
 * `lossDistribution` gives, without working out the whole of it.
 */
export function lossesAtMost(rates: LossRates, held: number, days: number, most: number): number {
  if (most < 0) return 0;
  const broken = breakageCounts(rates, days);
  const left = leavingCounts(rates, held, days);
  if (left.length === 1) return atMost(broken, most);
  let total = 0;
  let brokenUpTo = 0;
  let next = 0;
  for (let gone = Math.min(most, left.length - 1); gone >= 0; gone--) {
    for (; next <= most - gone && next < broken.length; next++) brokenUpTo += broken[next]!;
    total += left[gone]! * brokenUpTo;
  }
  return Math.min(1, total);
}

/** Mean losses by cause, pieces over `days` of `held`. */
export function expectedLosses(
  rates: LossRates,
  held: number,
  days: number,
): {
  readonly breakage: number;
  readonly walkOff: number;
  readonly retirement: number;
  readonly total: number;
} {
  const breakage = breakageMean(rates, days);
  const leaving = held * leavingShare(rates, days);
  // Split the pieces that leave by the hazards of the two causes.
  const walking = -log1p(-rates.walkOffPerYear);
  const retiring = -log1p(-rates.retirementPerYear);
  const walkOff = leaving === 0 ? 0 : (leaving * walking) / (walking + retiring);
  return { breakage, walkOff, retirement: leaving - walkOff, total: breakage + leaving };
}

/** Smallest number of pieces that no more than 1 − confidence of periods exceed in losses. */
export function lossQuantile(
  rates: LossRates,
  held: number,
  days: number,
  confidence: number,
): number {
  return quantileOf(lossDistribution(rates, held, days), confidence);
}

/**
 * A yearly share from a rate per piece-year, for studies that count losses against replenished pieces
 * (361 per 100 spoon-years is a rate of 3.61, hence a share of 97 %).
 */
export function shareFromRate(perPieceYear: number): number {
  return -expm1(-perPieceYear);
}

function breakageMean(rates: LossRates, days: number): number {
  const perThousand = rates.evidence
    ? rates.evidence.shape / rates.evidence.thousandUses
    : rates.perThousandUses;
  return (rates.usesADay * days * perThousand) / 1000;
}

function breakageCounts(rates: LossRates, days: number): PieceCounts {
  const mean = breakageMean(rates, days);
  if (rates.evidence) return negativeBinomialCounts(mean, rates.evidence.shape);
  const dispersion = rates.dispersion ?? 1;
  if (dispersion < 1)
    throw new RangeError(
      `breakages vary at least as much as Poisson: dispersion is 1 or more, not ${dispersion}`,
    );
  // Variance = mean · dispersion means shape = mean / (dispersion − 1).
  return dispersion === 1 || mean === 0
    ? poissonCounts(mean)
    : negativeBinomialCounts(mean, mean / (dispersion - 1));
}

function leavingCounts(rates: LossRates, held: number, days: number): PieceCounts {
  return binomialCounts(held, leavingShare(rates, days));
}

/** Share of pieces that has walked off or been retired after `days`. */
function leavingShare(rates: LossRates, days: number): number {
  const hazard = -log1p(-rates.walkOffPerYear) - log1p(-rates.retirementPerYear);
  return -expm1((-hazard * days) / DAYS_A_YEAR);
}
