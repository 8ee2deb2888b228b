/** The choice of a stock on the days of every kind, and what becomes of it on other days. */
import { costError } from './cost-error.js';
import { crossValidatedMisses } from './cross-validated-misses.js';
import { countMisses, type Peaks } from './peaks.js';
import { searchStock } from './search-stock.js';
import { providersOf, type SizingRequest } from './sizing-request.js';
import { stockForKinds } from './stock-for-kinds.js';

/** By kind: days that the stock may miss so that fresh ones meet a level. */
export const missesFor = (
  { unitCostMinor }: SizingRequest,
  kinds: readonly Peaks[],
  level: number,
): number[] => kinds.map((peaks) => crossValidatedMisses(peaks, unitCostMinor, level));

/** Standard error of the cost, the largest of any kind's own stock. */
export const largestError = (
  { unitCostMinor, level, uniform }: SizingRequest,
  kinds: readonly Peaks[],
): number => Math.max(...kinds.map((peaks) => costError(peaks, unitCostMinor, level, uniform)));

/** By kind: how many of the days from number `from` on run out of something. */
export async function missedOn(
  request: SizingRequest,
  kinds: readonly Peaks[],
  stock: readonly number[],
  from: number,
): Promise<number[]> {
  const missed: number[] = [];
  for (const [at, provider] of providersOf(request).entries())
    missed.push(
      provider.misses === undefined
        ? countMisses(kinds[at], stock)
        : await provider.misses(stock, from, kinds[at].days),
    );
  return missed;
}

export interface Chosen {
  readonly stock: readonly number[];
  readonly cost: number;
  readonly proven: boolean;
  readonly bound: number;
  /** By kind: days of those chosen on that may run out of something, and that do at this stock. */
  readonly k: readonly number[];
  readonly missed: readonly number[];
}

/** The cheapest stock that misses at most so many of these days, by kind. */
export async function choose(
  request: SizingRequest,
  kinds: readonly Peaks[],
  k: readonly number[],
): Promise<Chosen> {
  const { unitCostMinor } = request;
  const mostMissed = Math.max(...k);
  /** With as many days more, or fewer, that may be missed on every kind. */
  const byPeaks = (more: number) =>
    stockForKinds(
      kinds.map((peaks, at) => ({
        peaks,
        misses: Math.min(peaks.days, Math.max(0, k[at] + more)),
      })),
      unitCostMinor,
    );
  const read = byPeaks(0);
  const missed = (stock: readonly number[]) => missedOn(request, kinds, stock, 0);
  if (providersOf(request).every(({ misses }) => misses === undefined))
    return { ...read, k, missed: await missed(read.stock) };
  const found = await searchStock({
    byPeaks: (misses) => (misses === mostMissed ? read : byPeaks(misses - mostMissed)).stock,
    days: kinds[0].days,
    unitCostMinor,
    k: mostMissed,
    misses: async (stock) =>
      mostMissed + Math.max(...(await missed(stock)).map((count, at) => count - k[at])),
  });
  return {
    stock: found.stock,
    cost: found.cost,
    k,
    proven: false,
    bound: 0,
    missed: await missed(found.stock),
  };
}
