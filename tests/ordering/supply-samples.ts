/** Suppliers for the tests, from a few numbers; places and prices are invented. */
import type { FreightStep, Quote, Supplier } from '../../src/ordering/supply.js';

export const DAY_MS = 86_400_000;

export function quoteOf(
  ware: string,
  cartonPieces: number,
  pieceMinor: number,
  more: Partial<Quote> = {},
): Quote {
  return {
    ware,
    cartonPieces,
    minimumCartons: 1,
    cartonMassG: 5000,
    prices: [{ fromCartons: 1, cartonMinor: cartonPieces * pieceMinor }],
    repeat: 'assured',
    ...more,
  };
}

export const stepOf = (
  fromCartons: number,
  fixedMinor: number,
  perCartonMinor = 0,
  perKgMinor = 0,
): FreightStep => ({
  fromCartons,
  name: `from ${fromCartons}`,
  fixedMinor,
  perCartonMinor,
  perKgMinor,
});

export function supplierOf(
  id: string,
  quotes: readonly Quote[],
  more: Partial<Supplier> = {},
): Supplier {
  return {
    id,
    name: id,
    leadTime: { law: 'constant', ms: 7 * DAY_MS },
    minimumOrderMinor: 0,
    freight: [stepOf(1, 0)],
    freeFromMinor: null,
    taxRate: 0,
    quotes,
    ...more,
  };
}
