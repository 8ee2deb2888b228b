/** Prices of many pieces: what is read, what a carton then costs, and what is refused. */
import { expect, test } from 'vitest';
import { price, priceInCartons, priceInSleeves, priceMinor } from '../../src/quantities/price.js';

const says = (input: unknown): string =>
  price
    .safeParse(input)
    .error?.issues.map(({ message }) => message)
    .join() ?? 'read';

test('a price of a hundred, a thousand, a carton or a sleeve makes the same money as the pieces do', () => {
  const carton = (text: string) => priceMinor(priceInCartons.parse(text), 1800, 1800, 2200);
  expect(carton('4.50 EUR a hundred')).toBe(8100);
  expect(carton('4.50 EUR per 100')).toBe(8100);
  expect(carton('45 EUR/1000')).toBe(8100);
  expect(carton('45 EUR per 1,000')).toBe(8100);
  expect(carton('81 EUR a carton')).toBe(8100);
  expect(carton('0.05 EUR')).toBe(9000);
  expect(carton('0.05 EUR a piece')).toBe(9000);
  expect(priceMinor(priceInSleeves.parse('2.25 EUR a sleeve'), 250, 50, 2200)).toBe(1125);
  // Parts of a cent stay in the price of a piece.
  expect(priceMinor(price.parse('4.50 EUR a hundred'), 1, 1, 2200)).toBe(4.5);
  expect(priceMinor(priceInCartons.parse('0.1 staff hours'), 12, 12, 2200)).toBe(2640);
});

test('a price of a piece is what it always was', () => {
  expect(price.parse('4.20 EUR')).toEqual({ currency: 'EUR', minor: 420 });
  expect(price.parse('0.3 staff hours')).toEqual({ staffHours: 0.3 });
});

test.each([
  ['0.045 EUR', 'has more decimals than EUR has (2); write "4.50 EUR a hundred"'],
  ['0.00455 EUR', 'has more decimals than EUR has (2); write "4.55 EUR a thousand"'],
  ['4.5 JPY', 'has more decimals than JPY has (0); write "450 JPY a hundred"'],
  ['0.045678 EUR', 'has more decimals than EUR has (2); round the amount'],
  [
    '81 EUR a carton',
    'is the price of a carton, and how much a carton holds is not said here; write the price of a piece, a hundred or a thousand, such as "4.50 EUR a hundred"',
  ],
  [
    '1 staff hour a hundred',
    'is in staff hours for many pieces; write the price of a piece, a hundred or a thousand, such as "4.50 EUR a hundred"',
  ],
  ['4,50 EUR a hundred', 'has a decimal comma; write the amount with a point, such as "4.20 EUR"'],
])('refuses %j', (input, message) => expect(says(input)).toBe(message));
