/** Values drawn from the ranges of inputs: one to each rank between 0 and 1. */
import { splitNumber } from '../../quantities/unit-sizes.js';
import type { Input } from '../../scenario/inputs.js';
import { tidy, withRawValue } from '../../scenario/raw-paths.js';
import { isGroup } from '../../scenario/tree.js';

/** Between two values as a file writes them; where they have no common form, the nearer. */
export function between(low: unknown, high: unknown, share: number): unknown {
  if (typeof low === 'number' && typeof high === 'number') {
    const value = low + (high - low) * share;
    return Number.isInteger(low) && Number.isInteger(high) && high - low >= 1
      ? Math.round(value)
      : tidy(value);
  }
  if (typeof low === 'string' && typeof high === 'string') {
    const about = 'about ';
    if (low.startsWith(about) && high.startsWith(about))
      return `${about}${String(between(low.slice(about.length), high.slice(about.length), share))}`;
    const [a, b] = [splitNumber(low), splitNumber(high)];
    if (a !== null && b !== null && a.rest === b.rest)
      return `${moneyLike(a.rest, a.number + (b.number - a.number) * share)} ${a.rest}`.trim();
  }
  if (Array.isArray(low) && Array.isArray(high) && low.length === high.length)
    return low.map((one: unknown, i) => between(one, high[i], share));
  if (isGroup(low) && isGroup(high) && Object.keys(low).join() === Object.keys(high).join())
    return Object.fromEntries(
      Object.keys(low).map((key) => [key, between(low[key], high[key], share)]),
    );
  return share < 0.5 ? low : high;
}

/** Amounts of a currency keep two decimals at most (none where it has none is met by whole ends). */
const moneyLike = (unit: string, value: number): number =>
  /^[A-Z]{3}$/.test(unit) ? Number(value.toFixed(2)) : tidy(value);

/** The value at a rank: the one written is the middle, either half of the range is even. */
export const drawn = ({ value, range }: Input, rank: number): unknown =>
  rank < 0.5 ? between(range![0], value, rank * 2) : between(value, range![1], rank * 2 - 1);

/** The raw tree with inputs at the ranks given by path; those without a range or a rank stay. */
export function atRanks(
  raw: unknown,
  inputs: readonly Input[],
  rankOf: (path: string) => number | undefined,
): unknown {
  return inputs.reduce((tree, input) => {
    const rank = input.range === null ? undefined : rankOf(input.path);
    return rank === undefined ? tree : withRawValue(tree, input.at, drawn(input, rank));
  }, raw);
}
