/**
 * How many drinks a party has: counted where tickets are seen, worked out where only sums are.
 */
import { power } from '../elementary/powers.js';

/** So many slots held this many parties and this many drinks between them. */
export interface SizeSum {
  readonly parties: number;
  readonly drinks: number;
  readonly slots: number;
}

/** Shares of parties of 1, 2, 3 … from tickets counted by size (`counts[2]`: tickets of two). */
export function sizesCounted(counts: readonly number[]): number[] {
  const all = counts.reduce((sum, count, size) => (size === 0 ? sum : sum + (count ?? 0)), 0);
  return Array.from({ length: counts.length - 1 }, (_, at) => (counts[at + 1] ?? 0) / all);
}

/** Sums of sizes that two lots of parties can have, with their chances. */
function together(one: Float64Array, other: Float64Array, most: number): Float64Array {
  const sums = new Float64Array(Math.min(most, one.length + other.length - 2) + 1);
  for (let j = 0; j < other.length; j += 1) {
    const q = other[j]!;
    if (q === 0) continue;
    for (let i = 0; i < one.length && i + j < sums.length; i += 1) sums[i + j]! += one[i]! * q;
  }
  return sums;
}

/** Sums cannot tell sizes beyond this apart; a slot that needs larger ones counts as of this size. */
const LARGEST_WORKED_OUT = 40;
const MOST_ROUNDS = 500;
/** Products in all: with hundreds of parties a slot the sums say little of sizes, and fewer rounds lose little. */
const MOST_WORK = 1e8;
/** A share that has sunk so low stays away: it would be less than one party in the longest report. */
const GONE = 1e-9;

/**
 * Shares of parties of 1, 2, 3 … where a report gives only parties and drinks a slot: the most likely
 * ones, if parties are of independent sizes, by expectation and maximisation (Dempster, Laird and
 * Rubin, J. R. Stat. Soc. B 39, 1977). Each round keeps the mean of the report exactly.
 *
 * @param sums Slots with at least one party, joined where both numbers are the same.
 */
export function sizesFromSums(sums: readonly SizeSum[]): number[] {
  const parties = sums.reduce((sum, s) => sum + s.parties * s.slots, 0);
  const mean = sums.reduce((sum, s) => sum + s.drinks * s.slots, 0) / parties;
  const extra = Math.max(...sums.map((s) => s.drinks - s.parties));
  // Where tickets without a drink are counted too, a slot may have fewer drinks than parties: a party has one at least.
  const largest = Math.max(1, Math.min(1 + extra, LARGEST_WORKED_OUT));
  let shares = Float64Array.from({ length: largest + 1 }, (_, size) =>
    size === 0 ? 0 : power(Math.max(GONE, 1 - 1 / mean), size - 1) / mean,
  );
  const mostParties = Math.max(...sums.map((s) => s.parties));
  const mostDrinks = Math.max(...sums.map((s) => s.drinks));

  const rounds = Math.min(MOST_ROUNDS, Math.ceil(MOST_WORK / (mostParties * mostDrinks * largest)));

  for (let round = 0; round < rounds; round += 1) {
    const ofMany: Float64Array[] = [Float64Array.of(1)];
    for (let n = 1; n <= mostParties; n += 1)
      ofMany.push(together(ofMany[n - 1]!, shares, mostDrinks));
    const next = new Float64Array(largest + 1);
    for (const { parties: n, drinks, slots } of sums) {
      const whole = ofMany[n]![drinks] ?? 0;
      if (whole === 0) {
        next[largest]! += n * slots;
        continue;
      }
      for (let size = 1; size <= largest; size += 1) {
        const others = ofMany[n - 1]![drinks - size] ?? 0;
        next[size]! += (slots * n * shares[size]! * others) / whole;
      }
    }
    const fresh = next.map((count) => (count < GONE * parties ? 0 : count / parties));
    const moved = fresh.reduce(
      (most, share, size) => Math.max(most, Math.abs(share - shares[size]!)),
      0,
    );
    shares = fresh;
    if (moved < 1e-6) break;
  }
  const kept = [...shares].slice(1);
  while (kept.length > 1 && kept[kept.length - 1]! < 1e-6) kept.pop();
  const all = kept.reduce((sum, share) => sum + share, 0);
  return kept.map((share) => share / all);
}
