/** Charges: what a consignment costs beside its goods and the tax, so that every output, the proof too, reads them from one list. */
import { cartonsIn, massOf, type Consignment } from '../supply.js';

/** What a charge costs, minor units: so much a consignment, a carton, a kilogram, and every so many cartons begun. */
export interface Rates {
  readonly fixedMinor: number;
  readonly perCartonMinor: number;
  readonly perKgMinor: number;
  /** Such as a pallet. */
  readonly lot?: { readonly cartons: number; readonly minor: number };
}

/** Whom a consignment comes from, and what placing it costs whatever it holds. */
export type Terms = Omit<Consignment, 'lines'>;

export interface Charge {
  readonly id: string;
  readonly name: string;
  /** Part of what pieces cost as they stand on the shelf, and shared between them; otherwise the house's own. */
  readonly landed: boolean;
  readonly taxed: boolean;
  /** Whole minor units, before tax. */
  readonly minor: (consignment: Consignment) => number;
  /** What it comes from; null: it goes by steps, which the programme writes out itself. */
  readonly rates: ((terms: Terms) => Rates) | null;
}

/** Rates applied to so many cartons and grams, minor units (half a unit rounds up). */
export const atRates = (
  { fixedMinor, perCartonMinor, perKgMinor, lot }: Rates,
  cartons: number,
  massG: number,
): number =>
  fixedMinor +
  cartons * perCartonMinor +
  Math.round((massG * perKgMinor) / 1000) +
  (lot === undefined ? 0 : Math.ceil(cartons / lot.cartons) * lot.minor);

/** A charge that follows from its rates; nothing sent costs nothing. */
export const chargeAt = (
  charge: Omit<Charge, 'minor' | 'rates'> & { readonly rates: (terms: Terms) => Rates },
): Charge => ({
  ...charge,
  minor: (consignment) =>
    consignment.lines.length === 0
      ? 0
      : atRates(charge.rates(consignment), cartonsIn(consignment), massOf(consignment)),
});

/** Rates of a charge as an order carries them, to price another size of it with. */
export interface ChargeRates extends Pick<Charge, 'id' | 'taxed'> {
  readonly rates: Rates;
}
