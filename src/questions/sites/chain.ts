/** Sites that were sized, as the parts of the answer about all of them need them. */
import type { LossRates } from '../../ordering/losses.js';
import type { SupplyModel } from '../../ordering/supply-model.js';
import { usesACalendarDay } from '../../ordering/sheet-line.js';
import { lossesOf } from '../order/study.js';
import type { SizedRow } from './row.js';
import type { Site } from './site.js';

export interface SizedSite {
  readonly site: Site;
  readonly row: SizedRow;
}

/** A par and the losses from it: of one site, or of several together. */
export interface Holding {
  readonly par: number;
  readonly have: number;
  readonly rates: LossRates;
}

/** What a site holds of a ware; null: it has none. */
export function holdingOf(
  { site, row }: SizedSite,
  ware: string,
  supply: SupplyModel,
): Holding | null {
  const par = row.pieces[ware];
  if (par === undefined || par === 0) return null;
  return {
    par,
    have: row.have[ware] ?? 0,
    rates: {
      ...lossesOf(site.opened.scenario, ware),
      usesADay: usesACalendarDay(row.uses[ware] ?? 0, supply),
    },
  };
}

/**
 * Several holdings as one. Loss rates are those of the base at every site, so this is exact: sums of Poisson counts, of
 * negative binomial counts with one dispersion and of binomial counts with one share are counts of the same kind.
 */
export function together(holdings: readonly Holding[]): Holding {
  const sum = (of: (one: Holding) => number): number =>
    holdings.reduce((total, one) => total + of(one), 0);
  return {
    par: sum(({ par }) => par),
    have: sum(({ have }) => have),
    rates: { ...holdings[0]!.rates, usesADay: sum(({ rates }) => rates.usesADay) },
  };
}
