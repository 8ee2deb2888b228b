/** What is said of all sites together: what `cuptide sites --json` prints, and what its tables and pages are made from. */
import type { ChainOrder } from './chain-order.js';
import type { RollOut } from './roll-out.js';
import type { FailedSite, NamedWare, SiteAnswer } from './site-answer.js';
import type { SiteGuide } from './site-guide.js';
import type { SparesAnswer } from './spares.js';
import type { WareList } from './ware-list.js';

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
