/** The supplier who could send everything for hardly more than several together: one order is less work, and that is no money. */
import type { OrderSheet } from '../../ordering/order-sheet.js';

/** Share of the money over the whole time that counts as hardly more (our choice). */
const HARDLY_MORE = 0.01;

export interface OneSupplier {
  readonly name: string;
  /** What it costs more over the whole time, minor units. */
  readonly moreMinor: number;
}

/** @returns null where one supplier has the order anyway, where none sells all, or where it costs more than a hundredth more */
export function oneSupplier({
  suppliers,
  consignments,
  plan,
}: Pick<OrderSheet, 'suppliers' | 'consignments' | 'plan'>): OneSupplier | null {
  if (plan === null || consignments.length < 2) return null;
  const { totalMinor } = plan.chosen;
  const [least] = suppliers
    .flatMap(({ name, alone }) =>
      alone === null ? [] : [{ name, moreMinor: alone.totalMinor - totalMinor }],
    )
    .toSorted((a, b) => a.moreMinor - b.moreMinor);
  return least === undefined || least.moreMinor > HARDLY_MORE * totalMinor ? null : least;
}
