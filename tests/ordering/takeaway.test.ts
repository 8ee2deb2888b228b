import fc from 'fast-check';
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
    { drink: 'espresso', ordered: [10, 10], asFallBack: [0, 0] },
    { drink: 'flat-white', ordered: [30, 30], asFallBack: [2, 2] },
    { drink: 'latte', ordered: [20, 20], asFallBack: [0, 1] },
  ],
  confidence: 0.95,
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
      confidence: 0.95,
      forAWeek: 504,
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
      confidence: 0.95,
      // Of six days 40 or 42 cups each, five at 42 are exceeded with probability 1/64, four with 7/64.
      forAWeek: 250,
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
      confidence: 0.95,
      // 42 lids of small cups a day beside the 40 or 42 of large ones.
      forAWeek: 252 + 250,
      sleeve: 100,
      sleevesAWeek: 6,
      minorAWeek: 2400,
    },
  ]);
});

test('cups at less than a cent are priced by the hundred or by the sleeve, to the cent', () => {
  const aWeek = (price: object): unknown => {
    const { cups } = input.takeaway;
    const outcome = takeawayLines({
      ...input,
      takeaway: { ...input.takeaway, cups: { ...cups, small: { ...cups['small']!, ...price } } },
    });
    return outcome.ok ? outcome.value[0]!.minorAWeek : null;
  };
  // 11 sleeves of 50: 5.5 hundreds at 4.55 is 25.025, billed as 25.03.
  expect(aWeek({ price: { currency: 'EUR', minor: 455, per: 100 } })).toBe(2503);
  expect(aWeek({ price: { currency: 'EUR', minor: 225, per: 'sleeve' } })).toBe(11 * 225);
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
    'supply.takeaway.cups.small.lid is not one of the lids listed',
    'supply.takeaway.cups.large.drinks.0 is already in the size small',
    'supply.takeaway.cups has no takeaway size',
    'supply.takeaway.cups has no takeaway size',
  ]);
});

/** A sum of independent days is normal in the limit: mean + 1.645 standard deviations is the 95 % point (central limit theorem). */
test('a week of Poisson-like days is covered at its 95 % point, not at its mean', () => {
  // Binomial(400, 1/4) by its cumulative shares: mean 100, variance 75 a day.
  const days = Array.from({ length: 2000 }, (_, day) => {
    const share = (day + 0.5) / 2000;
    let chance = 1;
    for (let n = 0; n < 400; n++) chance *= 0.75;
    let below = chance;
    let cups = 0;
    while (below < share) {
      chance *= ((400 - cups) / (cups + 1)) * (0.25 / 0.75);
      below += chance;
      cups++;
    }
    return cups;
  });
  const outcome = takeawayLines({
    ...input,
    takeaway: { cups: { one: { drinks: ['tea'], sleeve: 50 } } },
    perDay: [{ drink: 'tea', ordered: days, asFallBack: days.map(() => 0) }],
    openDaysAWeek: 7,
    rushShare: 1,
  });
  if (!outcome.ok) throw new Error('no problems here');
  expect(Math.abs(outcome.value[0]!.forAWeek - (700 + 1.645 * Math.sqrt(7 * 75)))).toBeLessThan(2);
});

test('more confidence never takes fewer sleeves, and they hold what is needed', () => {
  fc.assert(
    fc.property(
      fc.array(fc.nat(60), { minLength: 1, maxLength: 30 }),
      fc.double({ min: 0.5, max: 0.98, noNaN: true }),
      fc.integer({ min: 1, max: 70 }),
      fc.constantFrom(1, 5, 5.5, 7),
      (days, confidence, sleeve, openDaysAWeek) => {
        const lineAt = (level: number) => {
          const outcome = takeawayLines({
            ...input,
            takeaway: { cups: { one: { drinks: ['tea'], sleeve } } },
            perDay: [{ drink: 'tea', ordered: days, asFallBack: days.map(() => 0) }],
            confidence: level,
            openDaysAWeek,
            rushShare: 1,
          });
          if (!outcome.ok) throw new Error('no problems here');
          return outcome.value[0]!;
        };
        const [line, more] = [lineAt(confidence), lineAt(confidence + 0.015)];
        expect(more.sleevesAWeek).toBeGreaterThanOrEqual(line.sleevesAWeek);
        expect(line.sleevesAWeek * sleeve).toBeGreaterThanOrEqual(line.forAWeek);
        expect(line.forAWeek).toBeLessThanOrEqual(Math.ceil(openDaysAWeek) * Math.max(...days));
      },
    ),
    { seed: 20, numRuns: 100 },
  );
});
