import { expect, test } from 'vitest';
import { takeawayLines, type TakeawayInput } from '../../src/ordering/takeaway.js';

const input: TakeawayInput = {
  takeaway: {
    cups: {
      small: {
        name: 'Small paper cup',
        drinks: ['espresso', 'flat-white'],
        sleeve: 50,
        price: { currency: 'EUR', minor: 8 },
        lid: 'lid',
        lidded: 0.5,
      },
      large: { drinks: ['latte'], sleeve: 25, lid: 'lid' },
    },
    lids: { lid: { sleeve: 100, price: { currency: 'EUR', minor: 4 } } },
  },
  perDay: [
    { drink: 'espresso', ordered: 10, asFallBack: 0 },
    { drink: 'flat-white', ordered: 30, asFallBack: 2 },
    { drink: 'latte', ordered: 20, asFallBack: 0.5 },
  ],
  openDaysAWeek: 6,
  rushShare: 0.5,
  staffHourMinor: 2200,
};

test('cups and lids a week, fall-backs included, in whole sleeves', () => {
  const outcome = takeawayLines(input);
  if (!outcome.ok) throw new Error('no problems here');
  // A week is 6 days, and the rush is half of each: 12 rushes' worth.
  expect(outcome.value).toEqual([
    {
      id: 'small',
      name: 'Small paper cup',
      kind: 'cup',
      aWeek: 504,
      asFallBackAWeek: 24,
      sleeve: 50,
      sleevesAWeek: 11,
      minorAWeek: 11 * 50 * 8,
    },
    {
      id: 'large',
      name: 'Large',
      kind: 'cup',
      aWeek: 246,
      asFallBackAWeek: 6,
      sleeve: 25,
      sleevesAWeek: 10,
      minorAWeek: null,
    },
    {
      id: 'lid',
      name: 'Lid',
      kind: 'lid',
      aWeek: 252 + 246,
      asFallBackAWeek: 12 + 6,
      sleeve: 100,
      sleevesAWeek: 5,
      minorAWeek: 2000,
    },
  ]);
});

test('drinks without a size, in two sizes, off the menu, and unknown lids: all told at once', () => {
  const cups = {
    small: { drinks: ['espresso', 'chai'], sleeve: 50, lid: 'lids' },
    large: { drinks: ['espresso'], sleeve: 50 },
  };
  const outcome = takeawayLines({ ...input, takeaway: { ...input.takeaway, cups } });
  expect(outcome.ok).toBe(false);
  if (outcome.ok) return;
  expect(outcome.problems.map(({ path, rule }) => `${path.join('.')} ${rule}`)).toEqual([
    'supply.takeaway.cups.small.drinks.1 is not on the menu',
    'supply.takeaway.cups.small.lid is not a lid that is listed',
    'supply.takeaway.cups.large.drinks.0 is in the size small already',
    'supply.takeaway.cups is taken away in no size',
    'supply.takeaway.cups is taken away in no size',
  ]);
});
