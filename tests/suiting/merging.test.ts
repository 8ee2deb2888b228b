import { describe, expect, test } from 'vitest';
import {
  mergeCandidates,
  mergedMenu,
  poolingGains,
  saucersUnder,
} from '../../src/suiting/merging.js';
import { readSuit } from '../../src/suiting/read.js';
import type { RackFit, SuitDrink, SuitWare } from '../../src/suiting/model.js';
import { saucerFits } from '../../src/racking/saucer-fit.js';
import { drink, easyCup, input, mediumCup, piece, saucer, tumbler } from './parts.js';

const menu = [
  drink('flat-white', ['medium-cup', 'saucer'], 0.6),
  drink('cappuccino', ['easy-cup', 'saucer'], 0.4, [['medium-cup', 'saucer']]),
];
const recipes = 'drinks: { flat-white: {}, cappuccino: {} }';
const racks = (medium: number, easy: number): Record<string, RackFit> => ({
  'medium-cup': { kind: 'open', pieces: medium, slackMm: 2, narrower: null },
  'easy-cup': { kind: 'open', pieces: easy, slackMm: 2, narrower: null },
});

function candidates(
  yaml: string,
  given: {
    ware?: readonly SuitWare[];
    menu?: readonly SuitDrink[];
    racks?: Record<string, RackFit>;
  } = {},
): string[] {
  const ware = given.ware ?? [mediumCup, easyCup, tumbler, saucer];
  const drinks = given.menu ?? menu;
  const reads = readSuit(input(yaml, { ware, menu: drinks }));
  expect(reads.problems).toEqual([]);
  return mergeCandidates({
    plans: reads.plans,
    ware: reads.ware,
    menu: drinks,
    parity: reads.parity,
    racks: given.racks ?? {},
    saucerFits: saucerFits(
      ware.filter(({ shape }) => shape !== 'saucer'),
      ware.filter(({ shape }) => shape === 'saucer'),
    ),
  }).map((c) => `${c.keep} for ${c.drop}: ${c.moved.map((m) => m.how).join()}`);
}

describe('vessels that might be one', () => {
  test('two cups of much the same size, on the same saucer, with racks as good', () => {
    expect(candidates(recipes, { racks: racks(16, 16) })).toEqual([
      'easy-cup for medium-cup: as it is',
      'medium-cup for easy-cup: as it is',
    ]);
  });

  test('a rack that takes fewer rules the wider cup out', () => {
    expect(candidates(recipes, { racks: racks(16, 20) })).toEqual([
      'easy-cup for medium-cup: as it is',
    ]);
  });

  test('a foot that does not sit in the saucer rules it out', () => {
    const ware = [mediumCup, { ...easyCup, footMm: 54 }, saucer];
    expect(candidates(recipes, { ware })).toEqual(['medium-cup for easy-cup: as it is']);
    // Nor can anything be said of a well that nobody has measured.
    expect(
      candidates(recipes, { ware: [mediumCup, easyCup, { ...saucer, wellMm: null }] }),
    ).toEqual([]);
  });

  test('strength outside the tolerance needs a fill line, and a half-empty cup is no answer', () => {
    const cup = (brimMl: number): SuitWare[] => [
      mediumCup,
      { ...easyCup, rimMm: 100, footMm: 50, brimMl },
      saucer,
    ];
    // 200 × 0.95 = 190 ml in 235 ml is 81 % of the brim, 85 % of the usual fill; in 300 ml it is 63 %.
    expect(candidates(recipes, { ware: cup(235) })).toEqual(['easy-cup for medium-cup: fill line']);
    expect(candidates(recipes, { ware: cup(300) })).toEqual([]);
  });

  test('a drink without a recipe, another shape, or a vessel nobody drinks from: nothing is claimed', () => {
    expect(candidates('drinks: { cappuccino: {} }')).toEqual(['medium-cup for easy-cup: as it is']);
    expect(
      candidates(recipes, { menu: [menu[0]!, drink('cappuccino', ['tumbler', 'saucer'], 0.4)] }),
    ).toEqual([]);
    expect(candidates('drinks: { flat-white: {} }', { menu: [menu[0]!] })).toEqual([]);
  });

  test('a shot alone is as strong anywhere, and still not for a large cup', () => {
    const espressoCup = piece('espresso-cup', {
      brimMl: 70,
      rimMm: 62,
      footMm: 40,
      heightMm: 55,
      handleMm: 20,
      massG: 150,
    });
    const drinks = [menu[0]!, drink('espresso', ['espresso-cup', 'saucer'], 0.4)];
    expect(
      candidates('drinks: { flat-white: {}, espresso: { top: nothing } }', {
        ware: [mediumCup, espressoCup, saucer],
        menu: drinks,
      }),
    ).toEqual([]);
  });
});

test('saucers of any setting count', () => {
  const small = piece('small-saucer', { shape: 'saucer', wellMm: 40 });
  const drinks = [
    drink('espresso', ['espresso-cup', 'small-saucer'], 1, [['espresso-cup', 'saucer']]),
  ];
  expect(saucersUnder('espresso-cup', drinks, [saucer, small, tumbler]).map((s) => s.id)).toEqual([
    'saucer',
    'small-saucer',
  ]);
});

describe('the merged menu', () => {
  test('takes the kept vessel everywhere, and no fall-back twice', () => {
    expect(mergedMenu(menu, 'easy-cup', 'medium-cup').map((d) => [d.setting, d.fallBacks])).toEqual(
      [
        [['medium-cup', 'saucer'], []],
        [['medium-cup', 'saucer'], []],
      ],
    );
    const three = [drink('latte', ['a'], 1, [['b'], ['c'], ['b'], []])];
    expect(mergedMenu(three, 'c', 'b')[0]!.fallBacks).toEqual([['b'], []]);
  });

  test('shares and drinks stay', () => {
    expect(mergedMenu(menu, 'easy-cup', 'medium-cup').map((d) => [d.id, d.share])).toEqual([
      ['flat-white', 0.6],
      ['cappuccino', 0.4],
    ]);
  });
});

describe('what pooling saves', () => {
  /*
   * Square-root law of pooling for Poisson needs (any inventory text): a need of mean m and safety 2 √m. Two of 36 and 16
   * need 48 + 24 = 72; one of 52 needs 52 + 2 √52 = 66.4.
   */
  test('by the caller’s own sizing', async () => {
    const size = (drinks: readonly SuitDrink[]): Record<string, number> => {
      const mean: Record<string, number> = {};
      for (const d of drinks)
        for (const ware of d.setting) mean[ware] = (mean[ware] ?? 0) + d.share * 52;
      return Object.fromEntries(
        Object.entries(mean).map(([ware, m]) => [ware, Math.ceil(m + 2 * Math.sqrt(m) - 1e-9)]),
      );
    };
    const drinks = [
      drink('flat-white', ['medium-cup'], 36 / 52),
      drink('cappuccino', ['easy-cup'], 16 / 52),
    ];
    expect(await poolingGains([{ keep: 'medium-cup', drop: 'easy-cup' }], drinks, size)).toEqual([
      { keep: 'medium-cup', drop: 'easy-cup', apart: 72, pooled: 67, saved: 5 },
    ]);
  });

  test('the menu as it is is sized once, and not at all without candidates', async () => {
    let calls = 0;
    const size = (): Promise<Record<string, number>> => {
      calls++;
      return Promise.resolve({});
    };
    expect(await poolingGains([], menu, size)).toEqual([]);
    expect(calls).toBe(0);
    await poolingGains(
      [
        { keep: 'a', drop: 'b' },
        { keep: 'b', drop: 'a' },
      ],
      menu,
      size,
    );
    expect(calls).toBe(3);
  });
});
