import { describe, expect, test } from 'vitest';
import { CONSEQUENCES } from '../../src/suiting/answer.js';
import { suit } from '../../src/suiting/suit.js';
import type { SuitInput } from '../../src/suiting/input.js';
import { drink, easyCup, input, mediumCup, saucer, tumbler } from './parts.js';

const yaml = `
shot: { dose: 20 g, yield: 40 g, extraction: 20 % }
coffee: 24 EUR
guests: { easyHandle: 8 %, instead: { medium-cup: easy-cup } }
machine: { underSpout: 80 mm }
papers: { small: { nominal: 8 fl oz, brim: 280 ml }, large: { nominal: 12 fl oz } }
ware:
  medium-cup: { opening: { width: 22 mm, height: 46 mm }, inside: bowl, tests: [EN 12875-1] }
  easy-cup: { opening: { width: 30 mm, height: 50 mm } }
drinks:
  flat-white: { paper: small, takeaway: { fill: 90 % } }
  latte: { paper: large, served: 64 °C }
  long-black: { top: water, paper: small, served: 80 °C }
`;
const menu = [
  drink('flat-white', ['medium-cup', 'saucer'], 0.5),
  drink('latte', ['tumbler'], 0.2),
  drink('long-black', ['easy-cup', 'saucer'], 0.2),
  drink('tea', ['easy-cup', 'saucer'], 0.1),
];
const cafe = (given: Partial<SuitInput> = {}): SuitInput =>
  input(yaml, {
    menu,
    ware: [mediumCup, { ...easyCup, footMm: 54, colour: 'blue' }, tumbler, saucer],
    drinksAWeek: { 'flat-white': { house: 500, takeaway: 700 } },
    dwellMin: 30,
    ...given,
  });

describe('the answer', () => {
  const answer = suit(cafe());

  test('has a line a drink with a recipe and one a vessel or saucer, and is plain JSON', () => {
    expect(answer.problems).toEqual([]);
    expect(answer.drinks.map((d) => d.drink)).toEqual(['flat-white', 'latte', 'long-black']);
    expect(answer.ware.map((w) => w.ware)).toEqual(['medium-cup', 'easy-cup', 'tumbler', 'saucer']);
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });

  // By hand: 4 g in 190 ml against 4 g in 252 ml.
  test('strength, ratio and parity', () => {
    const [flatWhite] = answer.drinks;
    expect(flatWhite!.house!.solidsPer100Ml).toBeCloseTo(400 / 190, 9);
    expect(flatWhite!.ratio).toBeCloseTo(190 / 252, 9);
    expect(flatWhite!.level).toBe(false);
    expect(flatWhite!.remedies.length).toBeGreaterThan(0);
    expect(flatWhite!.takeaway!.coffeeG).toBe(flatWhite!.house!.coffeeG);
  });

  test('a paper cup known by name only gives a range of ratios', () => {
    const latte = answer.drinks[1]!;
    expect(latte.paperBrim!.basis).toBe('assumed');
    expect(latte.ratioLow!).toBeLessThan(latte.ratio!);
    expect(latte.ratioHigh!).toBeGreaterThan(latte.ratio!);
    expect(latte.ratioLow! * 420).toBeCloseTo(latte.ratioHigh! * 385, 6);
  });

  test('findings come in order of consequence, the heavier first', () => {
    const order = answer.findings.map((finding) => CONSEQUENCES.indexOf(finding.consequence));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    for (let i = 1; i < answer.findings.length; i++) {
      const [before, now] = [answer.findings[i - 1]!, answer.findings[i]!];
      if (before.consequence === now.consequence)
        expect(before.weight).toBeGreaterThanOrEqual(now.weight);
    }
  });

  test('says what there is to say', () => {
    const told = answer.findings.map((finding) => `${finding.code} ${finding.about}`.trim());
    expect(told).toEqual(
      expect.arrayContaining([
        'paper-hot long-black',
        'hot-wall tumbler',
        'under-spout tumbler',
        'saucer-too-small easy-cup',
        'narrow-opening medium-cup',
        'no-easy-vessel latte',
        'not-level flat-white',
        'paper-not-measured latte',
        'tests-to-ask medium-cup',
        'brim-not-measured tumbler',
        'no-recipe',
        'colour',
      ]),
    );
    expect(told).not.toContain('no-easy-vessel flat-white');
    expect(answer.findings.find((finding) => finding.code === 'no-recipe')!.message).toContain(
      'tea',
    );
  });

  test('a house that has done its work hears little', () => {
    const good = suit(
      input(
        `
shot: { dose: 20 g, yield: 40 g, extraction: 20 % }
papers: { small: { brim: 216 ml } }
ware: { medium-cup: { opening: { width: 28 mm, height: 48 mm }, tests: [EN 12980, EN 1183, EN 12875, EN 1217, ISO 6486] }, saucer: { tests: [EN 12980, EN 1183, EN 12875, EN 1217, ISO 6486] } }
guests: { easyHandle: 8 %, instead: {} }
drinks: { flat-white: { paper: small, cup: warmed } }`,
        { ware: [mediumCup, saucer], basis: { 'ware.medium-cup.brim': 'measured' } },
      ),
    );
    expect(good.problems).toEqual([]);
    expect(good.drinks[0]!.level).toBe(true);
    expect(good.findings).toEqual([]);
  });

  test('harm is never said without deferring', () => {
    for (const finding of answer.findings.filter((f) => f.consequence === 'harm'))
      expect(finding.message).toContain('law');
    expect(answer.cautions.join(' ')).toMatch(/law/);
    expect(answer.cautions.join(' ')).toMatch(/not a guarantee/);
  });
});

describe('heat of a drink', () => {
  const warmth = (cup: string): NonNullable<ReturnType<typeof suit>['drinks'][number]['warmth']> =>
    suit(input(`drinks: { flat-white: { served: 62 °C, cup: ${cup} } }`, { dwellMin: 38 }))
      .drinks[0]!.warmth!;

  test('a warmed cup is worth degrees and minutes', () => {
    const [cold, warmed] = [warmth('cold'), warmth('warmed')];
    expect(cold.firstSipC).toBe(cold.firstSipColdC);
    expect(warmed.firstSipC).toBe(warmed.firstSipWarmedC);
    expect(cold.warmedWorthC).toBeCloseTo(warmed.firstSipC - cold.firstSipC, 9);
    // By hand: 40 g of shot, 141.1 g of milk and 13.4 g of steam hold 167.4 + 554.7 + 55.9 = 778 J/K, the cup 280 g × 0.9 = 252;
    // 29 K of warming are worth 29 × 252/1030 = 7.10 °C on pouring, and the hotter drink loses some of it until the first sip.
    expect(cold.curves.warmedC[0]! - cold.curves.coldC[0]!).toBeCloseTo(7.1, 1);
    expect(cold.warmedWorthC).toBeLessThan(7.1);
    expect(cold.warmedWorthC).toBeGreaterThan(6);
    expect(cold.warmedWorthMin!).toBeGreaterThan(5);
  });

  test('curves begin at the mixing temperature and run over the stay', () => {
    const cold = warmth('cold');
    expect(cold.curves.coldC[0]).toBe(cold.mixedC);
    expect(cold.curves.coldC).toHaveLength(39);
    expect(warmth('45 °C').mixedC).toBeGreaterThan(cold.mixedC);
  });

  test('nothing is said of a vessel of unknown mass', () => {
    const answer = suit(
      input('drinks: { flat-white: {} }', { ware: [{ ...mediumCup, massG: null }, saucer] }),
    );
    expect(answer.drinks[0]!.warmth).toBeNull();
    expect(answer.findings.map((finding) => finding.code)).toContain('no-heat');
  });
});

test('renaming changes no number', () => {
  const renamed = JSON.parse(
    JSON.stringify(cafe()).replaceAll('medium-cup', 'kobold').replaceAll('flat-white', 'velvet'),
  ) as SuitInput;
  const rename = (value: unknown): unknown =>
    JSON.parse(
      JSON.stringify(value).replaceAll('medium-cup', 'kobold').replaceAll('flat-white', 'velvet'),
    );
  expect(suit(renamed)).toEqual(rename(suit(cafe())));
});

test('findings speak metric and US units', () => {
  const said = suit(cafe())
    .findings.map(({ message }) => message)
    .join('\n');
  expect(said).toMatch(/°C \(\d+ °F\)/);
  expect(said).toMatch(/ml \(\d+\.\d fl oz\)/);
});

test('nonsense is a problem, and nothing is worked out from it', () => {
  const bad = suit(input('shot: { extraction: 45 % }\ndrinks: { flat-white: {} }'));
  expect(bad.problems).not.toEqual([]);
  expect(bad.drinks[0]!.house).toBeNull();
});

describe('cups on the machine', () => {
  const standing = {
    'medium-cup': { onTop: 14, inReserve: 21, warmed: true, coldShare: 0.125 },
  };
  const flatWhite = (given: Partial<SuitInput> = {}) => {
    const answer = suit(cafe(given));
    return { answer, drink: answer.drinks[0]! };
  };

  test('are warm, and those from the reserve cold', () => {
    const { answer, drink } = flatWhite({ standing });
    expect(drink.warmth!.firstSipC).toBe(drink.warmth!.firstSipWarmedC);
    expect(answer.findings.find(({ code }) => code === 'cold-from-reserve')!.message).toContain(
      '14 of its cups stand on the machine, 21 in the reserve',
    );
    expect(answer.findings.find(({ code }) => code === 'cold-from-reserve')!.message).toContain(
      'In the rush 13 % of its drinks get a cold cup.',
    );
    expect(answer.findings.map(({ code }) => code)).not.toContain('first-sip-cool');
    // Said once for all drinks of the cup.
    const codes = answer.findings.filter(({ code }) => code === 'cold-from-reserve');
    expect(codes).toHaveLength(1);
    expect(flatWhite().drink.warmth!.firstSipC).toBe(drink.warmth!.firstSipColdC);
  });
});

test('a drink may have its own time to the first sip, and it is cooler later', () => {
  const at = (own: string) =>
    suit(
      input(`drinks: { flat-white: { paper: small${own} } }\npapers: { small: { brim: 280 ml } }`),
    ).drinks[0]!;
  expect(at('').firstSipMin).toBe(2);
  expect(at(', firstSip: 5 min').firstSipMin).toBe(5);
  expect(at(', firstSip: 5 min').warmth!.firstSipC).toBeLessThan(at('').warmth!.firstSipC);
});
