/** The machine-readable answer of a comparison: what `cuptide compare --json` prints. Money in whole currency units. */
import type { NowPart, YearPart } from '../../comparing/costs.js';
import type { Warning } from '../../scenario/warning.js';
import type { Share } from '../size/answer.js';

export interface Difference {
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
  /** Variance of the difference with days of their own over that with the same days; null where the same days leave none. */
  readonly varianceCut: number | null;
}

export interface ComparedAlternative {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly changes: readonly string[];
  readonly stock: readonly {
    readonly ware: string;
    readonly name: string;
    readonly pieces: number;
  }[];
  readonly pieces: number;
  readonly stockCost: number;
  readonly certified: Share | null;
  readonly now: Readonly<Record<NowPart, number>>;
  readonly nowTotal: number;
  readonly year: Readonly<Record<YearPart, number>>;
  readonly yearTotal: number;
  /** Present value over the horizon. */
  readonly total: number;
  /** Against the base, under the same guests; null for the base. */
  readonly stockAgainstBase: Difference | null;
  readonly totalAgainstBase: Difference | null;
  /** Chance that it costs less than the base, over draws of the assumed inputs; null where none were drawn. */
  readonly chanceCheaper: Share | null;
  /** Minutes of a rush in which some ware's shelf is empty, and drinks short a rush, at this stock. */
  readonly minutesShort: number;
  readonly drinksShort: number;
  readonly staffMinutes: number;
  readonly shelfM2: number;
  readonly racks: number;
  readonly machinesBusy: number | null;
  readonly guests: {
    readonly served: number;
    readonly seated: number;
    readonly turnedAway: number;
  };
  readonly breakEven: readonly {
    readonly what: string;
    readonly price: number;
    readonly flipsAt: number | null;
  }[];
  readonly warnings: readonly Warning[];
}

/** What the one named best costs against the base with the clocks of both a little off; a quick reading, not certified. */
export interface Beat {
  readonly what: 'asWritten' | 'rounds' | 'waits';
  /** Minutes by which clearing rounds, or waits of part loads, are longer in either house. */
  readonly minutes: number;
  readonly difference: number;
}

export interface MapPoint {
  readonly machines: number;
  readonly machineClass: string;
  readonly clearingMinutes: number;
  readonly racks: number | null;
  readonly pieces: number;
  readonly stockCost: number;
  readonly total: number;
  readonly machinesBusy: number | null;
}

export interface TradeOffMap {
  readonly days: number;
  readonly points: readonly MapPoint[];
  /** What more machines save, class by class and round by round: ware in money, and as so many pieces at the mean price (near-ties swap pieces between ware, so counts alone mislead). */
  readonly machineWorth: readonly {
    readonly machineClass: string;
    readonly clearingMinutes: number;
    readonly racks: number | null;
    readonly from: number;
    readonly to: number;
    readonly pieces: number;
    readonly stockCost: number;
  }[];
  readonly cheapest: MapPoint;
}

export interface LevelAnswer {
  readonly points: readonly {
    readonly level: number;
    readonly pieces: number;
    readonly stockCost: number;
    readonly shortADay: number;
    readonly stockAYear: number;
    readonly shortAYear: number;
    readonly totalAYear: number;
    readonly perSafeRush: number;
  }[];
  readonly chosen: number;
  readonly recommended: number;
  /** Level at which a last piece of the mean price pays, by the newsvendor's ratio. */
  readonly newsvendor: number;
  readonly knee: number | null;
  readonly shortDrinkCost: number;
}

export interface MovedBy {
  readonly path: string;
  readonly basis: string;
  readonly lowValue: string;
  readonly highValue: string;
  /** Cost of the stock with the input at either end. */
  readonly low: number;
  readonly high: number;
  /** Spearman's correlation with the cost of the stock over the draws; null where none were drawn. */
  readonly correlation: {
    readonly value: number | null;
    readonly low: number | null;
    readonly high: number | null;
  } | null;
}

export interface MovesAnswer {
  readonly days: number;
  readonly stockCost: number;
  readonly inputs: readonly MovedBy[];
  /** Assumed inputs without a range: nothing is known of how far they move the order. */
  readonly withoutRange: readonly string[];
  readonly measureFirst: {
    readonly paths: readonly string[];
    readonly now: number;
    readonly left: number;
  };
  readonly draws: number;
  /** Middle 90 % of the cost of the stock over the draws; null where none were drawn. */
  readonly spread: { readonly low: number; readonly middle: number; readonly high: number } | null;
}

export interface PlanningRow {
  readonly seats: number;
  readonly stock: readonly {
    readonly ware: string;
    readonly name: string;
    readonly pieces: number;
    readonly perSeat: number;
  }[];
  readonly stockCost: number;
  readonly certified: Share | null;
  readonly machinesBusy: number | null;
}

export interface Comparison {
  readonly scenario: string;
  readonly seed: string;
  readonly currency: string;
  readonly level: number;
  /** Days each was chosen on; the leaders may have been given more. */
  readonly days: number;
  readonly mostDays: number;
  readonly equalGuests: boolean;
  readonly horizonYears: number;
  readonly discount: number;
  readonly daysAYear: number;
  readonly alternatives: readonly ComparedAlternative[];
  readonly ranking: {
    readonly order: readonly string[];
    readonly best: string;
    readonly errorProbability: number;
    readonly indifference: number;
    readonly separated: boolean;
    readonly notToldApart: readonly string[];
    /** Those with other guests: told last in the order, never recommended. */ readonly notRanked: readonly string[];
  };
  /** Empty where the base is best. */
  readonly beats: readonly Beat[];
  readonly worth: LevelAnswer | null;
  readonly map: TradeOffMap | null;
  readonly moves: MovesAnswer | null;
  readonly planning: readonly PlanningRow[] | null;
}
