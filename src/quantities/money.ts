/**
 * Money as a file writes it: an amount of a currency ("4.20 EUR"), or a number of staff hours, which
 * holds in any currency ("0.3 staff hours"). Amounts are whole minor units (cents) from here on.
 */
import { power } from '../elementary/powers.js';
import { bad, good, kindOf, wrongKind, type Parsed } from './parsed.js';
import { quantity, type Quantity } from './quantity.js';
import { splitNumber } from './unit-sizes.js';
import { notFinite } from './unit-tables.js';

export type Money =
  | { readonly currency: string; readonly minor: number }
  | { readonly staffHours: number };

/** Currencies whose minor unit is not a hundredth (ISO 4217, list one: number of decimals). */
const otherDecimals: Readonly<Record<string, number>> = {
  BIF: 0,
  CLP: 0,
  DJF: 0,
  GNF: 0,
  ISK: 0,
  JPY: 0,
  KMF: 0,
  KRW: 0,
  PYG: 0,
  RWF: 0,
  UGX: 0,
  UYI: 0,
  VND: 0,
  VUV: 0,
  XAF: 0,
  XOF: 0,
  XPF: 0,
  BHD: 3,
  IQD: 3,
  JOD: 3,
  KWD: 3,
  LYD: 3,
  OMR: 3,
  TND: 3,
};

/** Decimals of a currency's minor unit: 2 for EUR, 0 for JPY. */
export const minorDigits = (currency: string): number =>
  Object.hasOwn(otherDecimals, currency) ? otherDecimals[currency]! : 2;

/** Minor units in one of the currency: 100 for EUR, 1 for JPY. */
export const minorPerUnit = (currency: string): number => power(10, minorDigits(currency));

/** Codes that are in use, as this machine's tables know them. */
const currencies = new Set(Intl.supportedValuesOf('currency'));

/** An ISO 4217 code. */
export function parseCurrency(input: unknown): Parsed<string> {
  const remedy = 'write the three letters of the currency (ISO 4217), such as EUR, GBP, USD or AUD';
  if (typeof input !== 'string')
    return wrongKind(`is ${kindOf(input)} where a currency is needed`, remedy);
  if (currencies.has(input)) return good(input);
  if (currencies.has(input.trim().toUpperCase()))
    return bad('is not written as a currency code', `write ${input.trim().toUpperCase()}`);
  return bad('is not a currency code', remedy);
}

export const currency: Quantity<string> = quantity('currency', parseCurrency, {
  type: 'string',
  pattern: '^[A-Z]{3}$',
  examples: ['EUR', 'GBP', 'USD'],
  description: 'The currency of all amounts (ISO 4217).',
});

/** Whole minor units of a decimal text, without going through binary fractions; null if it has too many decimals. */
export function toMinor(digits: string, decimals: number): number | null {
  const found = /^\+?(\d*)(?:\.(\d*))?$/.exec(digits);
  if (found === null) return null;
  const fraction = (found[2] ?? '').replace(/0+$/, '');
  if (fraction.length > decimals) return null;
  return Number((found[1] ?? '') + fraction.padEnd(decimals, '0'));
}

/** As a file writes it: 450 cents are "4.50 EUR". */
export const amountText = (minor: number, currency: string): string =>
  `${(minor / minorPerUnit(currency)).toFixed(minorDigits(currency))} ${currency}`;

/** Signs that stand for one currency; a dollar is one of many. */
const signs: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP' };

/** The same amount as a file writes it, where the sign or code beside it is clear. */
function withCode(beside: string, input: string, otherwise: string): string {
  const code = Object.hasOwn(signs, beside) ? signs[beside]! : beside;
  const amount = splitNumber(input.trim().replace(beside, ''));
  return currencies.has(code) && amount?.rest === ''
    ? `write "${amount.digits} ${code}"`
    : otherwise;
}

export function parseMoney(input: unknown): Parsed<Money> {
  const remedy = 'write an amount with its currency, such as "4.20 EUR", or "0.3 staff hours"';
  const odd = notFinite(input);
  if (odd) return odd;
  if (typeof input === 'number')
    return bad(
      'is a number without a unit where money is needed',
      `write "${Math.abs(input)} EUR" (your currency) or "${Math.abs(input)} staff hours"`,
    );
  if (typeof input !== 'string')
    return wrongKind(`is ${kindOf(input)} where money is needed`, remedy);
  const split = splitNumber(input);
  if (split === null) {
    const [, front] = /^([A-Z]{3}|[€$£])\s*\d/.exec(input.trim()) ?? [];
    return front !== undefined
      ? bad(
          'has its currency in front',
          withCode(
            front,
            input,
            'write the amount first and the code after it, such as "4.20 EUR"',
          ),
        )
      : wrongKind('is not an amount of money', remedy);
  }
  if (split.rest.startsWith(','))
    return bad('has a decimal comma', 'write the amount with a point, such as "4.20 EUR"');
  if (split.rest === '') return bad('has no currency', remedy);
  if (split.number < 0) return bad('is negative, which an amount cannot be', remedy);
  if (/^staff\s+hours?$/.test(split.rest)) {
    return Number.isFinite(split.number)
      ? good({ staffHours: split.number })
      : bad('is too large a number', remedy);
  }
  const code = parseCurrency(split.rest);
  if (!code.ok)
    return bad(
      `has the unit "${split.rest}" where money is needed (a currency code, or staff hours)`,
      code.rule.startsWith('is not written') ? code.remedy : withCode(split.rest, input, remedy),
    );
  if (/e/i.test(split.digits))
    return bad('has a power of ten', 'write the amount out, such as "1500 EUR"');
  const decimals = minorDigits(code.value);
  const minor = toMinor(split.digits, decimals);
  if (minor === null)
    return bad(`has more decimals than ${code.value} has (${decimals})`, 'round the amount');
  if (!Number.isSafeInteger(minor)) return bad('is too large a number', remedy);
  return good({ currency: code.value, minor });
}

const moneyJson = {
  type: 'string',
  pattern: '^\\s*\\+?(\\d+\\.?\\d*|\\.\\d+)\\s*([A-Z]{3}|staff\\s+hours?)\\s*$',
  examples: ['4.20 EUR', '0.3 staff hours'],
  description: 'An amount of money with its currency, or a number of staff hours.',
} as const;

/** An amount, or staff hours. */
export const money: Quantity<Money> = quantity('money', parseMoney, {
  ...moneyJson,
  examples: [...moneyJson.examples],
});

/** An amount of a currency, not in staff hours (what a staff hour itself costs). */
export const amount: Quantity<{ readonly currency: string; readonly minor: number }> = quantity(
  'amount',
  (input) => {
    const parsed = parseMoney(input);
    if (!parsed.ok) return parsed;
    if ('staffHours' in parsed.value)
      return bad(
        'is given in staff hours',
        'write an amount of money with its currency, such as "22 EUR"',
      );
    if (parsed.value.minor === 0)
      return bad('is zero', 'write what an hour of staff costs with all charges, such as "22 EUR"');
    return good(parsed.value);
  },
  {
    type: 'string',
    pattern: '^\\s*\\+?(\\d+\\.?\\d*|\\.\\d+)\\s*[A-Z]{3}\\s*$',
    examples: ['22 EUR'],
    description: 'An amount of money with its currency.',
  },
);

/** Whole minor units of `money`, staff hours turned into money at `staffHourMinor` (half a unit rounds up). */
export const inMinor = (value: Money, staffHourMinor: number): number =>
  'staffHours' in value ? Math.round(value.staffHours * staffHourMinor) : value.minor;
