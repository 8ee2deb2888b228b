import seedrandom from 'seedrandom';
import stdlibPoissonCdf from '@stdlib/stats-base-dists-poisson-cdf';
import type { Peaks } from '../../src/sizing/peaks.js';

/** A reproducible source of numbers in [0, 1) for tests. */
export function uniforms(seed: string): () => number {
  return seedrandom.tychei(seed);
}

/** Peaks from rows written out by hand. */
export function peaksOf(rows: readonly (readonly number[])[]): Peaks {
  return { days: rows.length, ware: rows[0]?.length ?? 0, data: Uint16Array.from(rows.flat()) };
}

export function rowsOf(peaks: Peaks): number[][] {
  return Array.from({ length: peaks.days }, (_, day) =>
    Array.from(peaks.data.subarray(day * peaks.ware, (day + 1) * peaks.ware)),
  );
}

/**
 * Peaks whose joint distribution is known exactly: a day is quiet, usual or busy, and given that the peaks of the
 * ware are independent Poisson numbers.
 */
export interface KnownDays {
  readonly means: readonly number[];
  readonly kinds: readonly { readonly chance: number; readonly factor: number }[];
}

export const ONE_KIND = [{ chance: 1, factor: 1 }];
export const THREE_KINDS = [
  { chance: 0.3, factor: 0.85 },
  { chance: 0.5, factor: 1 },
  { chance: 0.2, factor: 1.2 },
];
export const EIGHT_WARE = [60, 40, 25, 90, 15, 110, 35, 20];
export const EIGHT_COSTS = [450, 620, 380, 250, 900, 90, 540, 310];

export function drawDays({ means, kinds }: KnownDays, days: number, seed: string): Peaks {
  const u = uniforms(seed);
  const data = new Uint16Array(days * means.length);
  for (let day = 0; day < days; day++) {
    let left = u();
    const kind = kinds.find(({ chance }) => (left -= chance) < 0) ?? kinds[kinds.length - 1];
    means.forEach((mean, w) => {
      data[day * means.length + w] = poisson(mean * (kind?.factor ?? 1), u);
    });
  }
  return { days, ware: means.length, data };
}

/** Knuth's method: arrivals of a unit-rate process before `mean`. */
function poisson(mean: number, u: () => number): number {
  let count = 0;
  for (let time = -Math.log(1 - u()); time < mean; time -= Math.log(1 - u())) count++;
  return count;
}

/** The exact share of days on which nothing runs out, with the Poisson distribution of @stdlib. */
export function exactLevel({ means, kinds }: KnownDays, stock: readonly number[]): number {
  let level = 0;
  for (const { chance, factor } of kinds) {
    level += means.reduce(
      (share, mean, w) => share * stdlibPoissonCdf(stock[w] ?? 0, mean * factor),
      chance,
    );
  }
  return level;
}
