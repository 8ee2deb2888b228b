import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { durationLaw } from '../../src/quantities/duration-law.js';
import { amount, currency, inMinor, minorDigits, money } from '../../src/quantities/money.js';
import { didYouMean, nearest } from '../../src/quantities/nearest.js';
import {
  clock,
  count,
  countOrUnlimited,
  moment,
  plainNumber,
  share,
} from '../../src/quantities/numbers.js';
import type { Quantity } from '../../src/quantities/quantity.js';

const says = (schema: Quantity<unknown>, input: unknown): string =>
  schema.safeParse(input).error?.issues[0]?.message ?? 'nothing';

describe('money', () => {
  it('is exact in minor units whatever binary fractions do', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), (cents) => {
        expect(
          money.parse(`${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')} EUR`),
        ).toEqual({ currency: 'EUR', minor: cents });
      }),
      { seed: 20 },
    );
    expect(money.parse('4.2 EUR')).toEqual(money.parse('4.20 EUR'));
  });

  it('knows currencies without a hundredth (ISO 4217, from memory)', () => {
    expect([minorDigits('JPY'), minorDigits('EUR'), minorDigits('KWD')]).toEqual([0, 2, 3]);
    expect(money.parse('480 JPY')).toEqual({ currency: 'JPY', minor: 480 });
    expect(says(money, '4.5 JPY')).toBe('has more decimals than JPY has (0); round the amount');
  });

  it('turns staff hours into money at what an hour costs', () => {
    const hour = amount.parse('22 EUR');
    expect(inMinor(money.parse('0.25 staff hours'), hour.minor)).toBe(550);
    expect(inMinor(money.parse('1 staff hour'), hour.minor)).toBe(2200);
    expect(inMinor(money.parse('4.20 EUR'), hour.minor)).toBe(420);
  });

  it.each([
    [
      4,
      'is a number without a unit where money is needed; write "4 EUR" (your currency) or "4 staff hours"',
    ],
    [
      '4',
      'has no currency; write an amount with its currency, such as "4.20 EUR", or "0.3 staff hours"',
    ],
    ['4,20 EUR', 'has a decimal comma; write the amount with a point, such as "4.20 EUR"'],
    [
      -4,
      'is a number without a unit where money is needed; write "4 EUR" (your currency) or "4 staff hours"',
    ],
    ['€4', 'has its currency in front; write "4 EUR"'],
    ['GBP 4.50', 'has its currency in front; write "4.50 GBP"'],
    [
      '$4',
      'has its currency in front; write the amount first and the code after it, such as "4.20 EUR"',
    ],
    [
      '4 £',
      'has the unit "£" where money is needed (a currency code, or staff hours); write "4 GBP"',
    ],
    ['1e3 EUR', 'has a power of ten; write the amount out, such as "1500 EUR"'],
    [
      '4 eur',
      'has the unit "eur" where money is needed (a currency code, or staff hours); write EUR',
    ],
    [
      '4 QQQ',
      'has the unit "QQQ" where money is needed (a currency code, or staff hours); write an amount with its currency, such as "4.20 EUR", or "0.3 staff hours"',
    ],
    [
      '-4 EUR',
      'is negative, which an amount cannot be; write an amount with its currency, such as "4.20 EUR", or "0.3 staff hours"',
    ],
    ['4.205 EUR', 'has more decimals than EUR has (2); round the amount'],
  ])('refuses %j', (input, message) => expect(says(money, input)).toBe(message));

  it('refuses what is no currency, and a staff hour paid in staff hours', () => {
    expect(says(currency, 'euro')).toMatch(/^is not a currency code; /);
    expect(says(amount, '1 staff hours')).toMatch(/^is given in staff hours; /);
    expect(says(amount, '0 EUR')).toMatch(/^is zero; /);
  });
});

describe('shares, counts and clocks', () => {
  it('reads a share in per cent or as a part of one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1000 }), (tenths) => {
        expect(share.parse(`${tenths / 10} %`)).toBe(
          share.parse(Number((tenths / 1000).toPrecision(15))),
        );
      }),
      { seed: 20 },
    );
  });

  it.each([
    [35, 'is more than the whole: a share without % is between 0 and 1; write "35 %"'],
    ['35', 'has no unit where a share is needed; write "35 %"'],
    ['1/2', 'has more than one number; write a share of the whole, such as "35 %" or 0.35'],
    ['40-60 %', 'has more than one number; write a share of the whole, such as "35 %" or 0.35'],
    [
      '135 %',
      'is more than the whole: a share is between 0 % and 100 %; write a share of the whole, such as "35 %" or 0.35',
    ],
    [
      -0.1,
      'is negative, which a share cannot be; write a share of the whole, such as "35 %" or 0.35',
    ],
    [Number.NaN, 'is not a number that can be used; write an ordinary number'],
  ])('%j as a share', (input, message) => expect(says(share, input)).toBe(message));

  it.each([
    [1.5, 'is not a whole number of seats; write a whole number, 1 or more'],
    [-2, 'is negative, which a count of seats cannot be; write a whole number, 1 or more'],
    [0, 'is too few seats; write a whole number, 1 or more'],
    [
      '40',
      'is text where a count of seats is needed; write the number alone, without quotes or a unit',
    ],
    ['unlimited', 'is not a count of seats; write a whole number, 1 or more'],
  ])('%j as a count', (input, message) => expect(says(count('seats', 1), input)).toBe(message));

  it('reads unlimited as null only where that is allowed', () => {
    expect(countOrUnlimited('seats', 1).parse('unlimited')).toBeNull();
    expect(countOrUnlimited('seats', 1).parse(7)).toBe(7);
  });

  it('reads the clock to the end of the day', () => {
    expect([clock.parse('00:00'), clock.parse('7:05'), clock.parse('24:00')]).toEqual([
      0, 25_500_000, 86_400_000,
    ]);
    for (const wrong of ['24:01', '07:60', '7.30', '7', 730])
      expect(clock.safeParse(wrong).success).toBe(false);
    expect(moment.parse('08:10')).toEqual({ clockMs: 29_400_000 });
    expect(moment.parse('70 min')).toEqual({ sinceOpeningMs: 4_200_000 });
  });

  it('wants plain numbers plain', () => {
    expect(says(plainNumber('drinks per guest', true), 0)).toBe(
      'is zero: drinks per guest cannot be; write a number above 0, without a unit',
    );
    expect(says(plainNumber('drinks per guest'), '1.1')).toMatch(/^is text where a plain number/);
  });
});

describe('duration laws', () => {
  it.each([
    ['90 s', { law: 'constant', ms: 90_000 }],
    [{ constant: '1.5 min' }, { law: 'constant', ms: 90_000 }],
    [{ exponential: '20 min' }, { law: 'exponential', meanMs: 1_200_000 }],
    [{ exponential: '0 s' }, { law: 'constant', ms: 0 }],
    [
      { lognormal: { mean: '42 min', sd: '18 min' } },
      { law: 'lognormal', meanMs: 2_520_000, sdMs: 1_080_000 },
    ],
    [{ gamma: { mean: '42 min', sd: '0 min' } }, { law: 'constant', ms: 2_520_000 }],
    [{ measured: ['31 min', '40 min'] }, { law: 'measured', valuesMs: [1_860_000, 2_400_000] }],
  ])('%j', (input, law) => expect(durationLaw.parse(input)).toEqual(law));

  it.each([
    [40],
    ['40'],
    [{}],
    [{ constant: '1 s', exponential: '1 s' }],
    [{ measured: [] }],
    [{ lognormal: { mean: '0 s', sd: '1 s' } }],
    [{ lognormal: { mean: '4 min' } }],
    [null],
    [['4 min']],
  ])('refuses %j', (input) => {
    expect(durationLaw.safeParse(input).success).toBe(false);
  });
});

describe('the nearest name', () => {
  it.each([
    ['sacer', ['cup', 'saucer'], 'saucer'],
    ['parts-size', ['partySize', 'staysIn'], 'partySize'],
    ['arivals', ['arrivals', 'hours'], 'arrivals'],
    ['hourse', ['hours', 'arrivals'], 'hours'],
    ['sauecr', ['saucer', 'cup'], 'saucer'],
  ])('%s', (word, known, near) => expect(nearest(word, known)).toBe(near));

  it('suggests nothing far away, but lists what there is', () => {
    expect(nearest('wineglass', ['cup', 'saucer'])).toBeNull();
    expect(didYouMean('wineglass', ['cup', 'saucer'])).toBe('choose one of cup, saucer');
    expect(nearest('x', ['cup', 'a'])).toBeNull();
  });

  it('finds a word again after any one slip', () => {
    const words = ['saucer', 'teaspoon', 'medium-cup', 'tumbler'];
    fc.assert(
      fc.property(
        fc.constantFrom(...words),
        fc.nat(),
        fc.constantFrom('drop', 'double', 'swap'),
        (word, at, slip) => {
          const i = at % (word.length - 1);
          const wrong =
            slip === 'drop'
              ? word.slice(0, i) + word.slice(i + 1)
              : slip === 'double'
                ? word.slice(0, i) + word[i]! + word.slice(i)
                : word.slice(0, i) + word[i + 1]! + word[i]! + word.slice(i + 2);
          expect(nearest(wrong, words)).toBe(word);
        },
      ),
      { seed: 20 },
    );
  });
});
