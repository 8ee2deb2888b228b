/** Amounts of money for people, from whole minor units. */
import { minorDigits, minorPerUnit } from '../quantities/money.js';

/** Minor units as whole units of the currency (420 cents are 4.2), for numbers in files. */
export const inUnits = (minor: number, currency: string): number => minor / minorPerUnit(currency);

/**
 * An amount as the locale writes it. `minor` may hold parts of a minor unit (a landed cost per piece);
 * `extraDecimals` shows that many of them.
 */
export function formatMoney(
  minor: number,
  currency: string,
  locale?: string,
  extraDecimals = 0,
): string {
  const decimals = minorDigits(currency) + extraDecimals;
  const format = new Intl.NumberFormat(locale, {
    style: 'currency',
    currency,
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
  return format.format(inUnits(minor, currency));
}

/**
 * Splits an amount in proportion to weights, to the minor unit: the parts sum to the whole. What is left
 * after rounding down goes to the largest remainders, the first of equals first. All weights zero: equal parts.
 */
export function splitMinor(minor: number, weights: readonly number[]): readonly number[] {
  if (weights.length === 0) return [];
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const exact = weights.map((weight) =>
    sum === 0 ? minor / weights.length : (minor * weight) / sum,
  );
  const parts = exact.map(Math.floor);
  let left = minor - parts.reduce((total, part) => total + part, 0);
  const byRemainder = exact
    .map((value, index) => ({ index, remainder: value - parts[index]! }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (const { index } of byRemainder) {
    if (left-- <= 0) break;
    parts[index]!++;
  }
  return parts;
}
