/**
 * What an interval of a difference in money lets one say. A procedure that selects the best always names one, also among equals;
 * so "cheaper" is said only where a two-sided interval, corrected for the looks taken and the number
 * compared, leaves no room for the contrary.
 */
export interface Interval {
  readonly difference: number;
  readonly low: number;
  readonly high: number;
}

/** Cheaper or dearer by more than the indifference amount; alike: within it either way; open: cannot be said yet. */
export type Verdict = 'cheaper' | 'dearer' | 'alike' | 'open';

/** @param indifference amount below which a difference is none; 0 where none was stated */
export function verdictOf({ low, high }: Interval, indifference: number): Verdict {
  if (high < -indifference) return 'cheaper';
  if (low > indifference) return 'dearer';
  return indifference > 0 && low >= -indifference && high <= indifference ? 'alike' : 'open';
}

/** How a difference stands at the same houses with each habit a little off, one at a time. */
export const holdsWith = (difference: number, shifted: readonly number[]): boolean =>
  shifted.every((one) => Math.sign(one) === Math.sign(difference));
