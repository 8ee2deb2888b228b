import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupDrinks, itemReader } from '../../src/till/items.js';

const groups = groupDrinks([
  ['Latte', ['latte']],
  ['* latte', ['latte', 'flavoured']],
  ['Tea*', ['tea']],
  ['Tea cake', ['cake']],
  ['Chai', ['latte']],
]);
const kindOf = itemReader(groups, ['Tea towel', '*beans*']);
const drinksOf = (item: string): readonly string[] | string => {
  const kind = kindOf(item);
  return typeof kind === 'number' ? groups[kind]!.drinks : kind;
};

describe('items', () => {
  it('of several lines of the map that mean the same drinks are one group', () => {
    expect(groups.find((group) => group.drinks.join() === 'latte')!.items).toEqual([
      'Latte',
      'Chai',
    ]);
  });

  it.each([
    ['latte', ['latte']],
    ['  LATTE ', ['latte']],
    ['Iced  Latte', ['latte', 'flavoured']],
    ['teapot for two', ['tea']],
    // A whole name goes before one with a star, though it comes later in the map.
    ['Tea Cake', ['cake']],
    ['tea towel', 'ignored'],
    ['Coffee Beans 1 kg', 'ignored'],
    ['Latte art class', 'other'],
    ['constructor', 'other'],
  ])('%s', (item, drinks) => {
    expect(drinksOf(item)).toEqual(drinks);
  });

  it('with stars fit just what the same regular expression fits', () => {
    const letters = fc.string({ unit: fc.constantFrom('a', 'b'), maxLength: 7 });
    const pattern = fc.string({ unit: fc.constantFrom('a', 'b', '*'), minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(letters, pattern, (item, stars) => {
        const expression = new RegExp(`^${stars.replaceAll('*', '.*')}$`);
        expect(itemReader(groupDrinks([[stars, ['x']]]), [])(item) === 0).toBe(
          expression.test(item),
        );
      }),
      { seed: 20, numRuns: 500 },
    );
  });
});
