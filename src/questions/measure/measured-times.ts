/** Times of one kind as a measured duration: mean with its interval, and the law that fits best. */
import { exp } from '../../elementary/exp.js';
import { fitLaw, spreadOf, type Law } from '../../measuring/fit-law.js';
import { studentTQuantile } from '../../statistics/student-t-quantile.js';
import type { Kept } from './answer.js';
import { FEWEST } from './fewest.js';
import { tooFew, type Found } from './found.js';
import { lawWritten, timeWritten, type TimeUnit } from './written.js';

/** Times that differ by less than this share of their mean are one fixed time. */
const FIXED = 0.02;

/** 95 % interval of a mean, never below 0: Student's t on the scale of the logarithm. */
export function timesInterval(mean: number, cv: number, n: number): { low: number; high: number } {
  const reach = (studentTQuantile(0.975, Math.max(1, n - 1)) * cv) / Math.sqrt(n);
  return { low: mean * exp(-reach), high: mean * exp(reach) };
}

/** @param what of the times, for messages: "timed rounds" */
export function measuredTimes(
  path: string,
  times: readonly number[],
  unit: TimeUnit,
  what: string,
  seed: string | null,
): Found | Kept | null {
  const n = times.length;
  if (n === 0) return null;
  if (n < FEWEST.times) return tooFew(path, n, FEWEST.times, what);
  const plain = times.reduce((sum, one) => sum + one, 0) / n;
  const spread = spreadOf(times) ?? 0;
  if (spread < FIXED)
    return {
      path,
      value: timeWritten(plain, unit),
      range: null,
      how: `${n} ${what}`,
      n,
      mean: plain,
      low: null,
      high: null,
      sd: plain * spread,
      unit,
      law: null,
    };
  const fit = fitLaw(times, seed);
  // The plain mean is right whatever the law.
  const mean = plain;
  const law: Law = { ...fit.chosen, mean };
  // How far the mean may be off rests on the spread that was seen: that of a fitted law is too small with few times.
  const { low, high } = timesInterval(mean, spread, n);
  return {
    path,
    value: lawWritten(law, unit),
    range: [lawWritten({ ...law, mean: low }, unit), lawWritten({ ...law, mean: high }, unit)],
    written: (to) => lawWritten({ ...law, mean: to }, unit),
    how: `${n} ${what}`,
    n,
    mean,
    low,
    high,
    sd: mean * law.cv,
    unit,
    law: { fit, times },
  };
}
