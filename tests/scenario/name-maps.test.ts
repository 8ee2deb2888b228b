/** One list of the places that hold names: that of the schema, and what follows from it. */
import { describe, expect, test } from 'vitest';
import type * as z from 'zod';
import { quantities } from '../../src/quantities/quantity.js';
import { generalPath, holdsNames, isMark, NAME_MAPS } from '../../src/scenario/name-maps.js';
import { scenarioSchema } from '../../src/scenario/scenario.js';
import { defOf } from '../../src/scenario/schema-walk.js';
import { unwrap } from '../../src/scenario/tree.js';

/** Every place of the schema that takes any key; what is one value, such as shares by party size, is none. */
function mapsIn(schema: z.core.$ZodType, path = ''): string[] {
  if (quantities.has(schema)) return [];
  const { innerType, in: input, options, shape, valueType, element } = defOf(schema);
  const step = (key: string): string => (path === '' ? key : `${path}.${key}`);
  return [
    ...[innerType, input, element].flatMap((one) => (one ? mapsIn(one, path) : [])),
    ...(options ?? []).flatMap((one) => mapsIn(one, path)),
    ...Object.entries(shape ?? {}).flatMap(([key, one]) => mapsIn(one, step(key))),
    ...(valueType ? [path, ...mapsIn(valueType, step('*'))] : []),
  ];
}

test('the places that hold names are those of the schema', () => {
  const found = new Set(mapsIn(scenarioSchema));
  // One value by itself, though its law may differ by size.
  found.add('guests.dwell.bySize');
  found.delete('guests.partySize');
  expect([...found].sort()).toEqual([...NAME_MAPS].sort());
});

describe('a path without its names', () => {
  test.each([
    [['ware', 'cup', 'price'], 'ware.*.price'],
    [
      ['supply', 'suppliers', 'value', 'quotes', 'cup', 'breaks', 0, 'price'],
      'supply.suppliers.*.quotes.*.breaks.price',
    ],
    [['washing', 'machines', 1, 'cycle'], 'washing.machines.cycle'],
    [['washing', 'machines', 'unlimited', 'cycle'], 'washing.machines.cycle'],
    [['guests', 'dwell'], 'guests.dwell'],
  ] as const)('%j', (at, general) => expect(generalPath(at)).toBe(general));

  test('names stand where the schema takes any', () => {
    expect(holdsNames(['ware'])).toBe(true);
    expect(holdsNames(['ware', 'cup'])).toBe(false);
    expect(holdsNames(['racks', 'families'])).toBe(true);
  });
});

describe('ware, a family, a supplier or a rack may be called "value"', () => {
  test.each([
    [['ware'], { value: { price: '4 EUR' } }],
    [['racks', 'families'], { value: 'open' }],
    [['racks', 'owned'], { value: 4, open: 2 }],
    [['supply', 'onHand'], { value: 12 }],
    [['supply', 'suppliers', 'one', 'quotes'], { value: { price: '4 EUR', carton: 6 } }],
  ] as const)('in %j', (at, group) => {
    expect(isMark(group, at)).toBe(false);
    const { tree, wraps, flaws } = unwrap(group, at);
    expect([tree, wraps, flaws]).toEqual([group, [], []]);
  });

  test('while a whole map may still be vouched for', () => {
    const marked = { value: { open: 4 }, basis: 'measured', source: 'counted' };
    expect(unwrap(marked, ['racks', 'owned']).tree).toEqual({ open: 4 });
    expect(isMark({ value: '22 min' }, ['guests', 'dwell'])).toBe(true);
  });
});
