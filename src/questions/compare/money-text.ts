/** Amounts as the comparison writes them. */
import type { ReportContext } from '../../tell/context.js';
import { asPrinted, type Formats } from '../../tell/format.js';

export type Whole = (amount: number) => string;

/** Money without decimals, for tables of large amounts. */
export function wholeMoney(
  { currency, locale }: Pick<ReportContext, 'currency' | 'locale'>,
  formats: Formats,
): Whole {
  try {
    const format = new Intl.NumberFormat(locale, {
      style: 'currency',
      currency,
      maximumFractionDigits: 0,
    });
    return (amount) => asPrinted(format.format(Math.round(amount) + 0));
  } catch {
    return (amount) => formats.money(amount);
  }
}

export const signed = (amount: number, write: (amount: number) => string): string =>
  Math.round(amount) > 0 ? `+${write(amount)}` : write(Math.round(amount) === 0 ? 0 : amount);

export const yearsText = (years: number, { decimal }: Formats): string =>
  decimal(years, Number.isInteger(years) ? 0 : 1);
