import { describe, expect, it } from 'vitest';
import type { OrderSheet } from '../../../src/ordering/order-sheet.js';
import { oneSupplier } from '../../../src/questions/order/one-supplier.js';

/** A sheet of 1,000.00 in all, from so many suppliers; what each would take alone, null where it does not sell all. */
const sheet = (from: number, alone: Readonly<Record<string, number | null>>): OrderSheet =>
  ({
    plan: { chosen: { totalMinor: 100_000 } },
    consignments: Array.from({ length: from }, () => ({})),
    suppliers: Object.entries(alone).map(([name, totalMinor]) => ({
      name,
      missing: [],
      alone: totalMinor === null ? null : { totalMinor },
    })),
  }) as unknown as OrderSheet;

describe('one supplier in place of several', () => {
  it('is named where it costs at most a hundredth more over the whole time', () => {
    expect(oneSupplier(sheet(2, { Quay: 101_000, Fen: null }))).toEqual({
      name: 'Quay',
      moreMinor: 1000,
    });
    expect(oneSupplier(sheet(2, { Quay: 101_001, Fen: null }))).toBeNull();
    expect(oneSupplier(sheet(2, { Quay: 100_900, Fen: 100_500 }))?.name).toBe('Fen');
  });

  it('is not named where the order has one anyway, or where none sells all', () => {
    expect(oneSupplier(sheet(1, { Quay: 100_000, Fen: 100_100 }))).toBeNull();
    expect(oneSupplier(sheet(2, { Quay: null, Fen: null }))).toBeNull();
  });
});
