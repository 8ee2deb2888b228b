/**
 * Quantities without a unit: shares, counts, plain numbers, and moments of the clock.
 */
import { notFinite, parseWithUnit, durationUnits } from './unit-tables.js';
import { bad, clean, good, kindOf, wrongKind, type Parsed } from './parsed.js';
import { quantity, type Quantity } from './quantity.js';
import { splitNumber } from './unit-sizes.js';

/** A share, 0..1: "35 %" or 0.35. */
export function parseShare(input: unknown): Parsed<number> {
  const remedy = 'write a share of the whole, such as "35 %" or 0.35';
  const odd = notFinite(input);
  if (odd) return odd;
  let value: number;
  if (typeof input === 'number') {
    value = input;
    if (value > 1)
      return bad(
        'is more than the whole: a share without % is between 0 and 1',
        value <= 100 ? `write "${value} %"` : remedy,
      );
  } else if (typeof input === 'string') {
    const split = splitNumber(input);
    if (split === null) return wrongKind('is not a share', remedy);
    if (split.rest.startsWith(','))
      return bad('has a decimal comma', 'write the number with a point, such as "2.5 %"');
    if (split.rest === '')
      return bad('has no unit where a share is needed', `write "${split.number} %"`);
    if (/\d/.test(split.rest)) return bad('has more than one number', remedy);
    if (split.rest !== '%')
      return bad(
        `has the unit "${split.rest}" where a share is needed (%)`,
        `write "${split.number} %"`,
      );
    value = clean(split.number / 100);
    if (value > 1) return bad('is more than the whole: a share is between 0 % and 100 %', remedy);
  } else return wrongKind(`is ${kindOf(input)} where a share is needed`, remedy);
  if (!(value >= 0)) return bad('is negative, which a share cannot be', remedy);
  return good(value);
}

export const share: Quantity<number> = quantity('share', parseShare, {
  anyOf: [
    { type: 'number', minimum: 0, maximum: 1 },
    { type: 'string', pattern: '^\\s*\\+?(\\d+\\.?\\d*|\\.\\d+)\\s*%\\s*$', examples: ['35 %'] },
  ],
  description: 'A share of the whole: "35 %" or 0.35.',
});

/** More of anything a café does not have. */
const MOST = 1_000_000;

interface CountRule {
  readonly noun: string;
  readonly least: number;
  readonly most: number;
  /** The word "unlimited" may stand for the count, and is read as null. */
  readonly unlimited: boolean;
}

function parseCount(input: unknown, rule: CountRule): Parsed<number | null> {
  const also = rule.unlimited ? ', or unlimited' : '';
  const remedy =
    rule.most < MOST
      ? `write a whole number from ${rule.least} to ${rule.most}${also}`
      : `write a whole number, ${rule.least} or more${also}`;
  if (rule.unlimited && input === 'unlimited') return good(null);
  const odd = notFinite(input);
  if (odd) return odd;
  if (typeof input === 'string' && /^\s*[-+]?\d/.test(input))
    return bad(
      `is text where a count of ${rule.noun} is needed`,
      'write the number alone, without quotes or a unit',
    );
  if (typeof input !== 'number')
    return wrongKind(
      `is ${typeof input === 'string' ? 'not' : `${kindOf(input)} where`} a count of ${rule.noun}${typeof input === 'string' ? '' : ' is needed'}`,
      remedy,
    );
  if (!Number.isInteger(input)) return bad(`is not a whole number of ${rule.noun}`, remedy);
  if (input < 0) return bad(`is negative, which a count of ${rule.noun} cannot be`, remedy);
  if (input < rule.least) return bad(`is too few ${rule.noun}`, remedy);
  if (input > rule.most)
    return bad(
      `is too many ${rule.noun}`,
      `write a whole number, at most ${rule.most.toLocaleString('en')}`,
    );
  return good(input);
}

/** A whole number of something. */
export const count = (noun: string, least = 0, most = MOST): Quantity<number> =>
  quantity(
    `count`,
    (input) => parseCount(input, { noun, least, most, unlimited: false }) as Parsed<number>,
    {
      type: 'integer',
      minimum: least,
      maximum: most,
      description: `A whole number of ${noun}.`,
    },
  );

/** A whole number of something, or `unlimited`, which is read as null. */
export const countOrUnlimited = (noun: string, least = 0): Quantity<number | null> =>
  quantity('count', (input) => parseCount(input, { noun, least, most: MOST, unlimited: true }), {
    anyOf: [{ type: 'integer', minimum: least, maximum: MOST }, { const: 'unlimited' }],
    description: `A whole number of ${noun}, or unlimited.`,
  });

/** A plain number without a unit, not negative; `positive`: not zero either. */
export const plainNumber = (noun: string, positive = false): Quantity<number> =>
  quantity(
    'number',
    (input) => {
      const remedy = `write a number ${positive ? 'above' : 'not below'} 0, without a unit`;
      const odd = notFinite(input);
      if (odd) return odd;
      if (typeof input === 'string' && splitNumber(input) !== null)
        return bad(`is text where a plain number (${noun}) is needed`, remedy);
      if (typeof input !== 'number')
        return wrongKind(`is ${kindOf(input)} where a plain number (${noun}) is needed`, remedy);
      if (input < 0) return bad(`is negative: ${noun} cannot be`, remedy);
      if (positive && input === 0) return bad(`is zero: ${noun} cannot be`, remedy);
      return good(input);
    },
    {
      type: 'number',
      ...(positive ? { exclusiveMinimum: 0 } : { minimum: 0 }),
      description: `A plain number: ${noun}.`,
    },
  );

/** A time of day, in milliseconds since midnight; 24:00 is the end of the day. */
export function parseClock(input: unknown): Parsed<number> {
  const remedy = 'write hours and minutes of the 24-hour clock in quotes, such as "07:30"';
  if (typeof input === 'number')
    return bad('is a number without a unit where a time of day is needed', remedy);
  if (typeof input !== 'string')
    return wrongKind(`is ${kindOf(input)} where a time of day is needed`, remedy);
  const found = /^\s*(\d{1,2}):(\d{2})\s*$/.exec(input);
  if (found === null) return wrongKind('is not a time of day', remedy);
  const hours = Number(found[1]);
  const minutes = Number(found[2]);
  if (minutes > 59 || hours > 24 || (hours === 24 && minutes > 0))
    return bad('is not a time of day', remedy);
  return good((hours * 60 + minutes) * 60_000);
}

const clockPattern = '^\\s*([01]?\\d|2[0-3]):[0-5]\\d\\s*$|^\\s*24:00\\s*$';

export const clock: Quantity<number> = quantity('clock', parseClock, {
  type: 'string',
  pattern: clockPattern,
  examples: ['07:00'],
  description: 'A time of day on the 24-hour clock.',
});

/** A moment of the rush: a time of day, or so long after opening. */
export type Moment = { readonly clockMs: number } | { readonly sinceOpeningMs: number };

export const moment: Quantity<Moment> = quantity(
  'moment',
  (input): Parsed<Moment> => {
    if (typeof input === 'string' && input.includes(':')) {
      const parsed = parseClock(input);
      return parsed.ok ? good({ clockMs: parsed.value }) : parsed;
    }
    const parsed = parseWithUnit(input, {
      ...durationUnits,
      noun: 'a time of day, or a duration after opening,',
    });
    return parsed.ok ? good({ sinceOpeningMs: parsed.value }) : parsed;
  },
  {
    type: 'string',
    examples: ['08:10', '70 min'],
    description: 'A time of day, or a time after opening.',
  },
);
