/** Amounts of money for people, from whole minor units. */
import { minorDigits, minorPerUnit } from '../quantities/money.js';

/** Minor units as whole units of the currency (420 cents are 4.2), for numbers in files. */
export const inUnits = (minor: number, currency: string): number => minor / minorPerUnit(currency);

/**
 * An amount as the locale writes it; English without one, so that an answer is the same on every machine. `minor` may hold parts of a minor unit (a landed cost per piece);
 * `extraDecimals` shows that many of them.
 */
export function formatMoney(
  minor: number,
  currency: string,
  locale: string = 'en',
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
 * Splits an amount in proportion to weights, to the minor unit: the parts sum to the whole. Each part is what the rounded
 * share of all weights up to it adds to the one before, as a spreadsheet can do too. All weights zero: equal parts.
 */
export function splitMinor(minor: number, weights: readonly number[]): readonly number[] {
  const all = weights.reduce((total, weight) => total + weight, 0);
  const even = all === 0;
  let [upTo, given] = [0, 0];
  return weights.map((weight) => {
    upTo += even ? 1 : weight;
    const before = given;
    given = Math.round((minor * upTo) / (even ? weights.length : all));
    return given - before;
  });
}
