/** What is said of all sites together: what `cuptide sites --json` prints, and what its tables and pages are made from. */
import type { Answer } from '../size/answer.js';
import type { ChainOrder } from './chain-order.js';
import type { RollOut } from './roll-out.js';
import type { Course, SizedRow } from './row.js';
import type { SiteGuide } from './site-guide.js';
import type { SparesAnswer } from './spares.js';
import type { WareList } from './ware-list.js';

/** Figures of a site as its row has them, beside the answer. */
export interface SiteFacts {
  readonly id: string;
  readonly name: string;
  /** Where its ware is delivered; '' : with all others. */
  readonly drop: string;
  readonly opening: string | null;
  readonly seats: number | null;
  readonly guestsAnHour: number;
  /** Share of guests who take away. */
  readonly takeaway: number;
  readonly stayMinutes: number;
}

export interface SiteAnswer extends SiteFacts, Omit<SizedRow, 'unit' | 'course'> {
  /** Pieces to buy, by ware. */
  readonly add: Readonly<Record<string, number>>;
  readonly busiest: { readonly stage: keyof Answer['busy']; readonly share: number } | null;
  readonly course: Course | null;
}

export interface FailedSite extends SiteFacts {
  readonly failed: string;
}

export interface NamedWare {
  readonly id: string;
  readonly name: string;
}

export interface SitesAnswer {
  /** Name of the scenario that all sites start from. */
  readonly base: string;
  readonly seed: string;
  readonly currency: string;
  readonly level: number;
  readonly ware: readonly NamedWare[];
  readonly sites: readonly SiteAnswer[];
  /** Sites that cannot be sized, each with the reason. */
  readonly failed: readonly FailedSite[];
  readonly totals: {
    readonly pieces: Readonly<Record<string, number>>;
    readonly add: Readonly<Record<string, number>>;
    readonly cost: number;
    readonly spend: number;
  };
  readonly wareList: WareList;
  readonly spares: SparesAnswer;
  /** Null: the base names no suppliers. */
  readonly order: ChainOrder | null;
  /** Null: no site has a day of opening, or there are no suppliers. */
  readonly rollOut: RollOut | null;
  /** Null: too few sites to fit it from. */
  readonly guide: SiteGuide | null;
}
