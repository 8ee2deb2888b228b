/**
 * How much whole days differ beyond chance: the coefficient of variation of the day's level.
 */
import { mean, sampleVariance } from 'simple-statistics';
import { square } from '../elementary/powers.js';
import { chiSquareQuantile } from './chi-square.js';

export interface DayFactor {
  /** Coefficient of variation of the day's level; 0 when days differ no more than chance lets them. */
  readonly cv: number;
  /** Interval of it. */
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
  /** Variance over mean of the daily totals; 1 for a plain Poisson process. */
  readonly varianceToMean: number;
}

/**
 * Fit the day's level by moments: a Poisson total with mean m × level has variance m + c²m², so c² is
 * (variance − mean) / mean².
 *
 * The interval takes the chi-square interval of a variance through the same formula. Its degrees of freedom are
 * (days − 1) / (1 + c²): of Poisson totals at gamma levels the estimate of c² has 1 + c² times the variance that normal
 * totals would give it (delta method, from their third and fourth moments).
 *
 * @param totals Parties of each day; at least two days, not all zero.
 */
export function fitDayFactor(totals: readonly number[], confidence = 0.95): DayFactor {
  const m = mean([...totals]);
  const s2 = sampleVariance([...totals]);
  const cvOf = (spread: number): number => Math.sqrt(Math.max(0, spread - m)) / m;
  const tail = (1 - confidence) / 2;
  const cv = cvOf(s2);
  const free = (totals.length - 1) / (1 + square(cv));
  return {
    cv,
    low: cvOf((free * s2) / chiSquareQuantile(1 - tail, free)),
    high: cvOf((free * s2) / chiSquareQuantile(tail, free)),
    confidence,
    varianceToMean: s2 / m,
  };
}
