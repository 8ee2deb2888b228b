/**
 * Spares at each site against spares in one place. What is lost at one site has nothing to do with what is lost at
 * another, so a store for all needs fewer: the chances are worked out exactly, as for one house.
 */
import { power } from '../../elementary/powers.js';
import { after, smallestHolding } from '../../ordering/holding-target.js';
import { leadTimes } from '../../ordering/lead-time.js';
import { cheapestFor } from '../../ordering/plan.js';
import type { SupplyModel } from '../../ordering/supply-model.js';
import { UNQUOTED_LEAD } from '../../ordering/sheet-line.js';
import { quoteFor } from '../../ordering/supply.js';
import { holdingOf, together, type Holding, type SizedSite } from './chain.js';
import type { NamedWare } from './site-answer.js';

export interface WareSpares {
  readonly ware: string;
  /** Sites that have it. */
  readonly sites: number;
  readonly par: number;
  /** Spares in all: each site keeps its par with the chance asked for. */
  readonly each: number;
  /** So many that all sites keep their par at once with that chance. */
  readonly all: number;
  /** In one store, with that same chance of all sites at once. */
  readonly central: number;
}

export interface SparesAnswer {
  /** Chance that the par stands until the delivery of what is ordered at the next count. */
  readonly confidence: number;
  readonly reviewDays: number;
  readonly lines: readonly WareSpares[];
}

export function sparesOf(
  sites: readonly SizedSite[],
  ware: readonly NamedWare[],
  supply: SupplyModel,
): SparesAnswer {
  const lines = ware.flatMap(({ id }): WareSpares[] => {
    const holdings = sites.flatMap((site) => holdingOf(site, id, supply) ?? []);
    return holdings.length === 0 ? [] : [lineOf(id, holdings, supply)];
  });
  return { confidence: supply.confidence, reviewDays: supply.reviewDays, lines };
}

function lineOf(ware: string, holdings: readonly Holding[], supply: SupplyModel): WareSpares {
  const quoted = supply.suppliers.some((one) => quoteFor(one, ware) !== undefined);
  const lead = leadTimes(quoted ? cheapestFor(supply.suppliers, ware).leadTime : UNQUOTED_LEAD);
  const spells = after(supply.reviewDays, lead);
  const spares = ({ par, rates }: Holding, confidence: number): number =>
    smallestHolding(par, rates, spells, confidence) - par;
  const sum = (confidence: number): number =>
    holdings.reduce((total, one) => total + spares(one, confidence), 0);
  const { confidence } = supply;
  const whole = together(holdings);
  return {
    ware,
    sites: holdings.length,
    par: whole.par,
    each: sum(confidence),
    all: sum(power(confidence, 1 / holdings.length)),
    central: spares(whole, confidence),
  };
}
