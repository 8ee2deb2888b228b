/** Uncertain inputs over sites: what a site's stock may cost, and all of them together where errors are alike or each site's own. */
import { Stream, streamKey } from '../../../engine/streams.js';
import { exactBinomialInterval } from '../../../statistics/exact-binomial-interval.js';
import type { Share } from '../../size/answer.js';
import type { DrawnRow } from './rows.js';
import { spreadOf, type Spread } from '../../compare/spread.js';

/** All draws of one site: a list for each house, null where the inputs drawn make no valid house. */
export interface SiteDraws {
  readonly site: string;
  readonly houses: readonly string[];
  readonly stock: readonly (readonly (number | null)[])[];
  readonly total: readonly (readonly (number | null)[])[];
}

/** @param rows of one site, in the order of the draws */
export function siteDraws(site: string, rows: readonly DrawnRow[]): SiteDraws {
  const houses = rows[0]?.houses ?? [];
  const by = (of: (row: DrawnRow) => DrawnRow['stock']): (number | null)[][] =>
    houses.map((_, house) => rows.flatMap((row) => of(row).map((draw) => draw[house] ?? null)));
  return { site, houses, stock: by(({ stock }) => stock), total: by(({ total }) => total) };
}

const given = (values: readonly (number | null)[] | undefined): number[] =>
  (values ?? []).filter((value) => value !== null);

/** Cost of the stock of one house of a site. */
export const stockSpread = (site: SiteDraws, house: string): Spread | null =>
  spreadOf(given(site.stock[site.houses.indexOf(house)]));

/** Share of draws in which a house costs less than the site as it is; null where there are none. */
export function chanceCheaper(sites: readonly SiteDraws[], house: string): Share | null {
  const with_ = sites.filter(({ houses }) => houses.includes(house));
  const draws = with_[0]?.total[0]?.length ?? 0;
  let [valid, wins] = [0, 0];
  for (let draw = 0; draw < draws; draw += 1) {
    const differences = with_.map(({ houses, total }) => {
      const [own, other] = [total[0]![draw], total[houses.indexOf(house)]![draw]];
      return own == null || other == null ? null : other - own;
    });
    if (differences.includes(null)) continue;
    valid += 1;
    if (differences.reduce<number>((sum, one) => sum + one!, 0) < 0) wins += 1;
  }
  if (valid === 0) return null;
  const { share, ...rest } = exactBinomialInterval(wins, valid);
  return { level: share, ...rest };
}

export interface SumOfSites {
  /** What is off is off everywhere: the same draw at all sites. */
  readonly alike: Spread | null;
  /** Each site errs by itself: its draws dealt anew. */
  readonly apart: Spread | null;
}

/** Stocks of all sites as they are, added up. */
export function sumOfSites(sites: readonly SiteDraws[], seed: string): SumOfSites {
  const costs = sites.map(({ stock }) => stock[0] ?? []);
  const sums = (all: readonly (readonly (number | null)[])[]): number[] => {
    const found: number[] = [];
    for (let draw = 0; draw < (all[0]?.length ?? 0); draw += 1) {
      const each = given(all.map((site) => site[draw] ?? null));
      if (each.length === all.length) found.push(each.reduce((sum, one) => sum + one, 0));
    }
    return found;
  };
  return {
    alike: spreadOf(sums(costs)),
    apart: spreadOf(sums(costs.map((cost, at) => dealt(cost, `${seed}/${sites[at]!.site}`)))),
  };
}

/** In another order (R. A. Fisher and F. Yates). */
function dealt<T>(values: readonly T[], seed: string): T[] {
  const stream = new Stream(streamKey(seed, 'dealt'));
  const all = [...values];
  for (let at = all.length - 1; at > 0; at -= 1) {
    const other = Math.floor(stream.uniform() * (at + 1));
    [all[at], all[other]] = [all[other]!, all[at]!];
  }
  return all;
}
