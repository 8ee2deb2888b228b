/** The middle 90 % of values that were drawn. */
export interface Spread {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** Null where there is none. */
export function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return { low: at(0.05), middle: at(0.5), high: at(0.95) };
}
