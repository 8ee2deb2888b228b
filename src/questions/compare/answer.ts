/** The machine-readable answer of a comparison: what `cuptide compare --json` prints. Money in whole currency units. */
import type { Verdict } from '../../comparing/verdict.js';
import type { NowPart, YearPart } from '../../comparing/costs.js';
import type { Warning } from '../../quantities/flaw.js';
import type { Share } from '../size/answer.js';

export interface Difference {
  readonly difference: number;
  /** Of the total, corrected for the looks taken and the number compared; of the ware, the ordinary interval. */
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
  /** The ordinary interval of this difference alone. */
  readonly alone: { readonly low: number; readonly high: number };
  /** Variance of the difference with days of their own over that with the same days; null where the same days leave none. */
  readonly varianceCut: number | null;
}

/**
 * What can be said of an alternative against the house as it is. `cheaper` and `dearer`: by more than the
 * indifference amount; `alike`: within it; `open`: too close to call on these days; `habits`: the sign turns with a habit
 * a fifth off, or with the habits of both at their best; `staff`: it turns with what staff time is worth.
 */
export type Said = Verdict | 'habits' | 'staff';

/** The difference to the house as it is with one habit of both a fifth off; quick readings on the same days. */
export interface HabitOff {
  readonly habit: 'rounds' | 'waits' | 'fill';
  /** Factor on the habit's time or share. */
  readonly times: number;
  readonly difference: number;
}

/** What changes beside the house as it is: pieces, money of the ware, staff minutes a day, what else is bought, cash a year. */
export interface Changes {
  readonly pieces: number;
  readonly ware: number;
  readonly staff: number;
  /** Bought beside the ware. */
  readonly now: number;
  /** Of that, racks. */
  readonly racks: number;
  readonly year: number;
}

/** A house at its best habits of the grid, chosen on some days and judged on others. */
export interface AtBest {
  readonly waitMinutes: number | null;
  /** Least filled share at which a part rack goes; null: as it is. */
  readonly from: number | null;
  /** Which of the two is the largest or the least that was tried, so that one farther off might be better still. */
  readonly edges: readonly ('longestWait' | 'shortestWait' | 'fullest')[];
  readonly total: number;
  /** Against the house as it is at its best habits; null for itself. */
  readonly againstBase: Difference | null;
}

export interface ComparedAlternative {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly changes: readonly string[];
  readonly said: Said | null;
  /** Days that the difference is read on. */
  readonly days: number;
  readonly stock: readonly {
    readonly ware: string;
    readonly name: string;
    readonly pieces: number;
  }[];
  /** Of all ware: the certified answer of the house as it is, and for others that plus their difference. */
  readonly pieces: number;
  readonly stockCost: number;
  readonly certified: Share | null;
  readonly now: Readonly<Record<NowPart, number>>;
  readonly nowTotal: number;
  readonly year: Readonly<Record<YearPart, number>>;
  readonly yearTotal: number;
  /** Present value over the horizon, and what of it recurs every year. */
  readonly total: number;
  readonly yearWorth: number;
  /** A year of all staff time, whatever share of it is counted. */
  readonly staffAYear: number;
  /** Against the base, under the same guests; null for the base. */
  readonly stockAgainstBase: Difference | null;
  readonly totalAgainstBase: Difference | null;
  /** What an hour of staff would have to be worth for the verdict to turn; null where it does not. */
  readonly staffHourAtWhichItTurns: number | null;
  /** Money that a day without one machine costs less than in the house as it is; null where it has no more machines than that. */
  readonly failureSpares: number | null;
  /** Of what is to be planned for: the share of such days on which the stock of the house as it is lasts; null for the rest. */
  readonly asItIsLasts: Share | null;
  readonly machines: number | null;
  readonly atBest: AtBest | null;
  /** Whether it is no more than a part of the better habits that are recommended. */
  readonly withinHabits: boolean;
  readonly habitsOff: readonly HabitOff[];
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
  /** Cost of the ware in the house as it is, and all its money over the horizon, on the days of the map. */
  readonly own: number;
  readonly ownTotal: number;
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

export interface Comparison {
  readonly scenario: string;
  readonly seed: string;
  readonly currency: string;
  readonly level: number;
  /** Days at the first look, and at the last one taken. */
  readonly days: number;
  readonly mostDays: number;
  readonly equalGuests: boolean;
  /** Usual questions that were tried and hardly matter in this house, by name. */
  readonly hardlyMatter: readonly string[];
  readonly horizonYears: number;
  readonly discount: number;
  readonly daysAYear: number;
  /** Null where all days are of one kind. */
  readonly kinds: readonly { readonly name: string; readonly daysAYear: number }[] | null;
  readonly staffCounted: number;
  readonly alternatives: readonly ComparedAlternative[];
  readonly ranking: {
    /** By total, the cheapest first; what is to be planned for last. */
    readonly order: readonly string[];
    /** What is recommended; the base where nothing can be. */
    readonly best: string;
    /** Those that may do as well as the recommended one. */
    readonly asGood: readonly string[];
    readonly indifference: number;
    /** Differences that hold together, at all looks, with this confidence. */
    readonly confidence: number;
    readonly differences: number;
    /** What is to be planned for, such as other guests or a machine that fails: no choice, so no verdict. */
    readonly notRanked: readonly string[];
  };
  /** The house as it is, at its best habits against itself at the present ones; null where no habits were tried. */
  readonly habits:
    | (Changes & {
        readonly difference: Difference;
        readonly said: Said;
      })
    | null;
  readonly worth: LevelAnswer | null;
  readonly map: TradeOffMap | null;
  readonly moves: MovesAnswer | null;
}
