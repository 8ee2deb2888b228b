/** Measured values as a scenario file writes them. */
import type { Law } from '../../measuring/fit-law.js';
import type { DurationLaw } from '../../engine/durations.js';
import { meanMs } from '../../engine/durations.js';

const MS = { min: 60_000, s: 1000 } as const;
export type TimeUnit = keyof typeof MS;

const short = (value: number, unit: TimeUnit): string =>
  `${Number(value.toFixed(unit === 's' ? 0 : 1)) || Number(value.toFixed(2))} ${unit}`;

/** @param law mean in `unit` */
export function lawWritten({ law, mean, cv }: Law, unit: TimeUnit): unknown {
  return law === 'exponential'
    ? { exponential: short(mean, unit) }
    : { [law]: { mean: short(mean, unit), sd: short(mean * cv, unit) } };
}

export const timeWritten = (value: number, unit: TimeUnit): string => short(value, unit);

export const shareWritten = (share: number): string => `${Number((100 * share).toFixed(1))} %`;

/** Shares by size as percentages of two decimals that add up; the largest takes what rounding leaves. */
export function sizesWritten(shares: readonly number[]): Record<string, string> {
  const units = shares.map((share) => Math.round(share * 10_000));
  const largest = units.indexOf(Math.max(...units));
  units[largest] = units[largest]! + 10_000 - units.reduce((sum, one) => sum + one, 0);
  return Object.fromEntries(
    units.flatMap((unit, at) => (unit > 0 ? [[String(at + 1), `${unit / 100} %`]] : [])),
  );
}

/** A law of the model as one that can be fitted beside; a constant has next to no spread. */
export function lawOf(law: DurationLaw, unit: TimeUnit): Law {
  const mean = meanMs(law) / MS[unit];
  if (law.law === 'exponential') return { law: 'exponential', mean, cv: 1 };
  if (law.law === 'lognormal' || law.law === 'gamma')
    return {
      law: law.law,
      mean,
      cv: law.meanMs === 0 ? 0.01 : Math.max(0.01, law.sdMs / law.meanMs),
    };
  return { law: 'lognormal', mean, cv: law.law === 'constant' ? 0.01 : 0.5 };
}
