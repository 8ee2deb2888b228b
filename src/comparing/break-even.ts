/**
 * Break-even: the price at which two alternatives cost the same, the stocks as chosen. A total is linear in each
 * price, so the answer is exact: D + (f − 1)·C = 0 for the factor f on a price that makes up C of the difference D.
 */
export interface BreakEven {
  readonly what: string;
  /** Price now, and at which the ranking flips; null: at no price above nothing. */
  readonly price: number;
  readonly flipsAt: number | null;
}

/**
 * @param difference total of the alternative − total of the base
 * @param part how much of the difference the price makes up, in the same present value
 */
export function breakEven(
  what: string,
  price: number,
  difference: number,
  part: number,
): BreakEven {
  const factor = part === 0 ? Number.NaN : 1 - difference / part;
  return { what, price, flipsAt: Number.isFinite(factor) && factor > 0 ? price * factor : null };
}
