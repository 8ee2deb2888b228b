/** Counts: the reader, the interval (Garwood, by @stdlib's Poisson), the closed form of the update, and the top-up. */
import gammaCdf from '@stdlib/stats-base-dists-gamma-cdf';
import poissonCdf from '@stdlib/stats-base-dists-poisson-cdf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCounts } from '../../src/ordering/counts-file.js';
import {
  beliefOf,
  countedRate,
  gammaQuantile,
  priorOf,
  updated,
} from '../../src/ordering/loss-evidence.js';
import { ordersForPar } from '../../src/ordering/policy.js';
import { stocktake, type StocktakeWare } from '../../src/ordering/stocktake.js';
import { DAY_MS } from './supply-samples.js';

const policy = {
  ware: 'cup',
  par: 60,
  rates: { usesADay: 300, perThousandUses: 0.3, walkOffPerYear: 0, retirementPerYear: 0 },
  leadTime: { law: 'constant', ms: 10 * DAY_MS },
  reviewDays: 28,
  coverDays: 182,
  confidence: 0.95,
  repeat: 'assured',
  horizonDays: 730,
  date: '2026-09-01',
} as const;
const cup: StocktakeWare = {
  ware: 'cup',
  lastCount: 80,
  usesSince: 54_000,
  breakageRange: [0.1, 0.8],
  walkOffRange: null,
  policy,
};
const spoon: StocktakeWare = {
  ware: 'spoon',
  lastCount: 90,
  usesSince: 54_000,
  breakageRange: null,
  walkOffRange: [0.3, 0.6],
  policy: {
    ...policy,
    ware: 'spoon',
    par: 50,
    rates: { usesADay: 300, perThousandUses: 0, walkOffPerYear: 0.45, retirementPerYear: 0 },
  },
};
const count = (more: object) => ({
  ware: 'cup',
  counted: 60,
  broken: null,
  retired: null,
  delivered: null,
  row: 2,
  ...more,
});

describe('reading counts', () => {
  test('a table with all columns, quotes, a byte-order mark and empty lines', () => {
    expect(
      readCounts(
        '\uFEFFWare,Counted,Broken,Retired,Delivered\r\n"cup",61,12,2,\r\n\r\nspoon, 40 ,,,24\r\n',
      ),
    ).toEqual({
      ok: true,
      value: [
        { ware: 'cup', counted: 61, broken: 12, retired: 2, delivered: null, row: 2 },
        { ware: 'spoon', counted: 40, broken: null, retired: null, delivered: 24, row: 4 },
      ],
    });
  });

  test.each([
    ['nothing', '', 'row.1: "" has no column "ware"'],
    ['only a header', 'ware,counted\n', 'row.2: "" is missing: there are no counts'],
    [
      'a misspelt column',
      'ware,counted,broke\ncup,3,1\n',
      'row.1.column.3: "broke" is not a column of a stocktake',
    ],
    [
      'a column twice',
      'ware,counted,counted\ncup,3,1\n',
      'row.1.column.3: "counted" is given twice',
    ],
    ['a part of a cup', 'ware,counted\ncup,3.5\n', 'row.2.counted: "3.5" is not a count of pieces'],
    ['fewer than none', 'ware,counted\ncup,-3\n', 'row.2.counted: "-3" is not a count of pieces'],
    ['no count', 'ware,counted\ncup,\n', 'row.2.counted: "" is not a count'],
    ['no ware', 'ware,counted\n,4\n', 'row.2.ware: "" is not the id of a ware'],
    [
      'a ware twice',
      'ware,counted\ncup,4\ncup,5\n',
      'row.3.ware: "cup" was counted in row 2 already',
    ],
    [
      'too many cells',
      'ware,counted\ncup,4,5\n',
      'row.2: "cup,4,5" has more cells than the first row',
    ],
    ['a quote that does not close', 'ware,counted\n"cup,4\n', 'row.2: "" is not a row of a table'],
  ])('%s', (_, text, message) => {
    const outcome = readCounts(text);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok)
      expect(outcome.problems[0]!.message.startsWith(message), outcome.problems[0]!.message).toBe(
        true,
      );
  });

  test('semicolons or tabs between cells, as some spreadsheets save them', () => {
    const plain = readCounts('ware,counted,broken\ncup,61,12\n');
    expect(plain.ok).toBe(true);
    expect(readCounts('ware;counted;broken\r\ncup;61;12\r\n')).toEqual(plain);
    expect(readCounts('ware\tcounted\tbroken\ncup\t61\t12\n')).toEqual(plain);
  });

  test('unknown ware is told with all else that is wrong, where the ware is known', () => {
    const outcome = readCounts('ware,counted\ncups,3\nspoon,x\n', ['cup', 'spoon']);
    expect(
      outcome.ok ? [] : outcome.problems.map(({ path, rule }) => [path.join('.'), rule]),
    ).toEqual([
      ['row.2.ware', 'is not a ware of this scenario'],
      ['row.3.counted', 'is not a count of pieces'],
    ]);
  });

  test('any text gives counts or problems, never a crash', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.string().map((text) => `ware,counted\n${text}`),
        ),
        (text) => {
          const outcome = readCounts(text);
          expect(outcome.ok ? outcome.value.length : outcome.problems.length).toBeGreaterThan(0);
        },
      ),
      { seed: 20, numRuns: 300 },
    );
  });
});

describe('what a count says', () => {
  test("the interval is Garwood's: each end leaves 2.5 % (Poisson by @stdlib)", () => {
    for (const events of [0, 1, 4, 17, 60]) {
      const { rate, low, high } = countedRate(events, 54);
      expect(rate).toBeCloseTo(events / 54, 12);
      expect(poissonCdf(events, high * 54)).toBeCloseTo(0.025, 9);
      expect(events === 0 ? low : 1 - poissonCdf(events - 1, low * 54)).toBeCloseTo(
        events === 0 ? 0 : 0.025,
        9,
      );
    }
    // Garwood's table, 0 events: 3.6889 at 95 %; 10 events: 4.7954 to 18.3904 (as commonly tabulated; from memory).
    expect(countedRate(0, 1).high).toBeCloseTo(3.6889, 4);
    expect(countedRate(10, 1).low).toBeCloseTo(4.7954, 4);
    expect(countedRate(10, 1).high).toBeCloseTo(18.3904, 4);
  });

  test('gamma quantiles invert the gamma distribution of @stdlib', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 80, noNaN: true }),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (shape, rate, share) => {
          expect(gammaCdf(gammaQuantile(share, shape, rate), shape, rate)).toBeCloseTo(share, 9);
        },
      ),
      { seed: 20 },
    );
  });

  test('the update is the closed form: (shape + events) / (evidence + uses)', () => {
    // Prior 0.3 (0.1–0.8): sd 0.175, so shape (0.3/0.175)² = 2.93878 and 9.79592 thousand uses.
    const prior = priorOf(0.3, [0.1, 0.8]);
    expect(prior.shape).toBeCloseTo((0.3 / 0.175) ** 2, 12);
    expect(beliefOf(prior).mean).toBeCloseTo(0.3, 12);
    expect(beliefOf(prior).sd).toBeCloseTo(0.175, 12);
    const after = updated(prior, 20, 54);
    expect(beliefOf(after).mean).toBeCloseTo(
      ((0.3 / 0.175) ** 2 + 20) / ((0.3 / 0.175) ** 2 / 0.3 + 54),
      12,
    );
    expect(beliefOf(after).low).toBeLessThan(beliefOf(after).mean);
    expect(beliefOf(after).high).toBeGreaterThan(beliefOf(after).mean);
  });

  test('two counts one after the other teach what one count of both would', () => {
    fc.assert(
      fc.property(
        fc.nat(30),
        fc.nat(30),
        fc.double({ min: 0.1, max: 90, noNaN: true }),
        fc.double({ min: 0.1, max: 90, noNaN: true }),
        (a, b, x, y) => {
          const prior = priorOf(0.3, null);
          const [twice, once] = [updated(updated(prior, a, x), b, y), updated(prior, a + b, x + y)];
          expect(twice.shape).toBeCloseTo(once.shape, 9);
          expect(twice.thousandUses).toBeCloseTo(once.thousandUses, 9);
        },
      ),
      { seed: 20 },
    );
  });
});

describe('a stocktake', () => {
  const take = (counts: object[], ware = [cup, spoon]) =>
    stocktake({ counts: counts.map((one) => count(one)), ware, days: 180 });

  test('a count at the reorder point is enough, one piece fewer is not', () => {
    // With nothing gone the rate, and so the point, hardly depends on how many there are.
    const at = (counted: number) => {
      const outcome = take([{ counted }], [{ ...cup, lastCount: counted }]);
      if (!outcome.ok) throw new Error('no problems here');
      return outcome.value.lines[0]!;
    };
    const point = at(80).policy.reorderPoint!;
    expect(at(point).policy.reorderPoint).toBe(point);
    expect(at(point)).toMatchObject({ counted: point, orderNow: false, topUp: 0 });
    expect(at(point - 1).orderNow).toBe(true);
  });

  test('spoons walk off the mean of what there was at either count', () => {
    const outcome = take([{ ware: 'spoon', counted: 70 }]);
    if (!outcome.ok) throw new Error('no problems here');
    expect(outcome.value.lines[0]!.walkOff!.exposure).toBeCloseTo((80 * 180) / 365, 9);
  });

  test('cups: all that is missing broke; the rate rises and the top-up follows it', () => {
    const outcome = take([{}]);
    if (!outcome.ok) throw new Error('no problems here');
    const line = outcome.value.lines[0]!;
    expect(line).toMatchObject({
      ware: 'cup',
      expected: 80,
      counted: 60,
      missing: 20,
      walkOff: null,
      orderNow: true,
    });
    expect(line.seen!.rate).toBeCloseTo(20 / 54, 12);
    expect(line.breakage).toMatchObject({ events: 20, exposure: 54 });
    expect(line.breakage!.posterior.mean).toBeGreaterThan(0.3);
    expect(line.breakage!.posterior.mean).toBeLessThan(20 / 54);
    expect(line.topUp).toBe(line.policy.orderUpTo - 60);
    expect(line.rates.evidence!.shape).toBeCloseTo((0.3 / 0.175) ** 2 + 20, 12);
    expect(outcome.value.uncounted).toEqual(['spoon']);
  });

  test('spoons: nothing breaks, so all walked off; the yearly share is learnt', () => {
    const outcome = take([{ ware: 'spoon', counted: 50 }]);
    if (!outcome.ok) throw new Error('no problems here');
    const line = outcome.value.lines[0]!;
    expect(line.breakage).toBeNull();
    expect(line.walkOff).toMatchObject({ events: 40 });
    // 40 of about 70 spoons gone in half a year is more than 45 % a year.
    expect(line.rates.walkOffPerYear).toBeGreaterThan(0.45);
    expect(line.rates.walkOffPerYear).toBeLessThan(1 - (50 / 90) ** 2);
  });

  test('broken and retired pieces told apart', () => {
    const both: StocktakeWare = {
      ...cup,
      policy: { ...policy, rates: { ...policy.rates, walkOffPerYear: 0.1 } },
    };
    const outcome = take([{ counted: 60, broken: 9, retired: 5, delivered: 12 }], [both]);
    if (!outcome.ok) throw new Error('no problems here');
    const line = outcome.value.lines[0]!;
    expect(line).toMatchObject({
      expected: 92,
      retired: 5,
      missing: 27,
      breakage: { events: 9 },
      walkOff: { events: 18 },
    });
    // Not reported: shared out as was expected, 54 × 0.3 = 16.2 broken against the walk-off of 92 over 180 days.
    const untold = take([{ counted: 60, retired: 5, delivered: 12 }], [both]);
    if (!untold.ok) throw new Error('no problems here');
    const walked = 92 * (1 - 0.9 ** (180 / 365));
    expect(untold.value.lines[0]!.breakage!.events).toBeCloseTo((27 * 16.2) / (16.2 + walked), 9);
  });

  test('eighteen of 42 gone where two are usual is questioned, and the order keeps the assumed rate', () => {
    const mug: StocktakeWare = { ...cup, lastCount: 42, usesSince: 7000 };
    const at = (counted: number) => {
      const outcome = take([{ counted }], [mug]);
      if (!outcome.ok) throw new Error('no problems here');
      return outcome.value.lines[0]!;
    };
    // 7 thousand uses at 0.3 in 1000 break 2.1 pieces.
    expect(at(24).usual).toBeCloseTo(2.1, 9);
    expect(at(24)).toMatchObject({ missing: 18, question: 'too many gone' });
    expect(at(24).rates.evidence).toBeUndefined();
    expect(at(24).policy.orderUpTo).toBe(ordersForPar(mug.policy).orderUpTo);
    expect(at(39).question).toBeNull();
    expect(at(39).rates.evidence).toBeDefined();
  });

  test('how likely so many are at the usual rate, by the Poisson law of what breaks', () => {
    const rates = { ...policy.rates, walkOffPerYear: 0 };
    const mug: StocktakeWare = {
      ...cup,
      lastCount: 42,
      usesSince: 7000,
      policy: { ...policy, rates },
    };
    const outcome = take([{ counted: 38 }], [mug]);
    if (!outcome.ok) throw new Error('no problems here');
    // 2.1 are usual, 4 went: 1 − P(3 or fewer), and P(4 or fewer), by hand.
    const term = (k: number): number => (Math.exp(-2.1) * 2.1 ** k) / [1, 1, 2, 6, 24][k]!;
    const three = term(0) + term(1) + term(2) + term(3);
    expect(outcome.value.lines[0]!.chance.ofAsMany).toBeCloseTo(1 - three, 6);
    expect(outcome.value.lines[0]!.chance.ofAsFew).toBeCloseTo(three + term(4), 6);
  });

  test('nothing gone where dozens are usual is questioned too', () => {
    const outcome = take([{ counted: 80 }], [{ ...cup, usesSince: 400_000 }]);
    if (!outcome.ok) throw new Error('no problems here');
    expect(outcome.value.lines[0]!.question).toBe('too few gone');
  });

  test('the rate from now on lies between the assumed and the counted, by the weight that is said', () => {
    const outcome = take([{ counted: 70 }]);
    if (!outcome.ok) throw new Error('no problems here');
    const { prior, posterior, weightOfAssumed, events, exposure } =
      outcome.value.lines[0]!.breakage!;
    expect(posterior.mean).toBeCloseTo(
      weightOfAssumed * prior.mean + (1 - weightOfAssumed) * (events / exposure),
      12,
    );
  });

  test('enough on the shelf: nothing to order', () => {
    const outcome = take([{ counted: 80 }]);
    if (!outcome.ok) throw new Error('no problems here');
    expect(outcome.value.lines[0]).toMatchObject({ missing: 0, orderNow: false, topUp: 0 });
    expect(outcome.value.lines[0]!.seen!.low).toBe(0);
  });

  test('more than was bought, more broken than missing, unknown ware: all at once, and nothing else', () => {
    const outcome = take([
      { counted: 81 },
      { ware: 'spoon', counted: 88, broken: 3, row: 3 },
      { ware: 'spon', row: 4 },
    ]);
    expect(outcome).toMatchObject({
      ok: false,
      problems: [
        { path: ['row', 2, 'counted'], rule: 'pieces are more than the 80 that there could be' },
        { path: ['row', 3, 'broken'], rule: 'pieces broken are more than the 2 missing' },
        { path: ['row', 4, 'ware'], remedy: 'did you mean "spoon"?' },
      ],
    });
    expect(stocktake({ counts: [count({})], ware: [cup], days: 0 })).toMatchObject({
      ok: false,
      problems: [{ path: ['days'] }],
    });
  });
});
