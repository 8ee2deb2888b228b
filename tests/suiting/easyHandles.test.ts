import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { easyHandleVariants } from '../../src/suiting/easyHandles.js';
import { drink } from './parts.js';

const menu = [
  drink('flat-white', ['medium-cup', 'saucer'], 0.5, [
    ['large-cup', 'saucer'],
    ['easy-cup', 'saucer'],
    [],
  ]),
  drink('latte', ['tumbler'], 0.3),
  drink('espresso', ['espresso-cup', 'saucer'], 0.2, [['medium-cup', 'saucer']]),
];
const substitute = { 'medium-cup': 'easy-cup', 'large-cup': 'easy-mug' };

describe('guests who need an easy handle', () => {
  test('a drink splits into itself and a variant in the easy vessel', () => {
    const [asItIs, easy, ...rest] = easyHandleVariants(menu, 0.1, substitute);
    expect(asItIs).toMatchObject({
      id: 'flat-white',
      of: 'flat-white',
      easyHandle: false,
      share: 0.45,
      setting: ['medium-cup', 'saucer'],
    });
    expect(easy).toMatchObject({
      id: 'flat-white-easy',
      of: 'flat-white',
      easyHandle: true,
      share: 0.05,
      setting: ['easy-cup', 'saucer'],
    });
    // The substitute of the first fall-back stays; one that is now the wanted setting goes; the paper cup stays last.
    expect(easy!.fallBacks).toEqual([['easy-mug', 'saucer'], []]);
    expect(rest.map((d) => d.id)).toEqual(['latte', 'espresso']);
  });

  test('shares keep their sum, drink by drink', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const variants = easyHandleVariants(menu, share, substitute);
        for (const one of menu) {
          const sum = variants
            .filter((v) => v.of === one.id)
            .reduce((total, v) => total + v.share, 0);
          expect(sum).toBeCloseTo(one.share, 12);
        }
        expect(new Set(variants.map((v) => v.id)).size).toBe(variants.length);
      }),
      { seed: 20 },
    );
  });

  test('nobody or everybody needs one', () => {
    expect(easyHandleVariants(menu, 0, substitute).map((d) => d.id)).toEqual([
      'flat-white',
      'latte',
      'espresso',
    ]);
    expect(easyHandleVariants(menu, 1, substitute).map((d) => d.id)).toEqual([
      'flat-white-easy',
      'latte',
      'espresso',
    ]);
  });

  test('an id already on the menu is not taken twice', () => {
    const both = [...menu, drink('flat-white-easy', ['tumbler'], 0)];
    expect(easyHandleVariants(both, 0.1, substitute).map((d) => d.id)).toEqual([
      'flat-white',
      'flat-white-easy-easy',
      'latte',
      'espresso',
      'flat-white-easy',
    ]);
  });
});
