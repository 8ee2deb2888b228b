/**
 * The machine-readable answer of a study: what `cuptide size --json` prints and what every table,
 * chart and page is made from. Plain data; fields may be added, none renamed.
 *
 * Money is in minor units inside the model, but in whole currency units (2 decimals for EUR) here.
 */
import type { Assured } from '../../sizing/assured-stock.js';
import type { Warning } from '../../quantities/flaw.js';
export interface Share {
  readonly level: number;
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
}

/** Code of the warning that some ware of a given stock was left out, and taken as plentiful. */
export const TAKEN_AS_PLENTIFUL = 'ware-taken-as-plentiful';

export interface StockLine {
  readonly ware: string;
  readonly pieces: number;
  /** The same as `aloneLow` and `aloneHigh`, under their first names: they belong to `alone`, not to `pieces`. */
  readonly low: number | null;
  readonly high: number | null;
  /** What this item would need if running out of the others did not matter. */
  readonly alone: number;
  readonly unitCost: number;
  /** Pieces that are there already, and those to buy. */
  readonly have: number;
  readonly add: number;
  /** Name for people; falls back to the id. */
  readonly name: string;
  /** 95 % distribution-free interval of the quantile that `alone` estimates; null where it has no end. */
  readonly aloneLow: number | null;
  readonly aloneHigh: number | null;
}

/** Where all pieces of a ware are. */
export interface WarePlaces {
  readonly ware: string;
  readonly counts: readonly number[];
}

export interface Evidence {
  /** Days that were watched for this part (the first of those chosen on). */
  readonly days: number;
  readonly stepMinutes: number;
  /** Names of places in the order of counts below: shelf is left out (it is stock minus the rest). */
  readonly places: readonly string[];
  /** Mean pieces by ware, step and place: mean[ware][step][place], over the opening hours and until all is clean. */
  readonly mean: readonly (readonly (readonly number[])[])[];
  /** For each ware the 5 %, 50 % and 95 % quantile of pieces off the shelf at each step. */
  readonly offShelf: readonly {
    readonly ware: string;
    readonly q05: readonly number[];
    readonly q50: readonly number[];
    readonly q95: readonly number[];
  }[];
  readonly guests: {
    readonly partiesArriving: readonly number[];
    /** From here on: means around each step, as time goes by. */
    readonly seatsTaken: readonly number[];
    readonly waitingForSeat: readonly number[];
    readonly drinksWaiting: readonly number[];
    readonly racksWaiting: readonly number[];
    readonly machinesBusy: readonly number[];
    readonly makersBusy: readonly number[];
    readonly handsBusy: readonly number[];
    readonly clearersBusy: readonly number[];
  };
}

/** Places of all pieces at the tightest moment: of the day nearest the chosen level, when the scarcest ware was lowest. */
export interface TightestMoment {
  readonly day: number;
  readonly minute: number;
  readonly ware: string;
  /** Names of the places in the order of counts; the shelf is left out. */
  readonly places: readonly string[];
  readonly pieces: readonly WarePlaces[];
}

export interface Overload {
  /** 'machines' | 'makers' | 'clearers' | 'hands' */
  readonly what: string;
  /** Work offered over capacity in the worst hour. */
  readonly load: number;
  /** First minute from opening at which its queue only grows. */
  readonly fromMinute: number;
  /** How many would do. */
  readonly wouldDo: number;
}

/** A difference to the answer. */
export interface Moved {
  /** Pieces by ware, in the order of `stock`. */
  readonly pieces: readonly number[];
  /** Of what is to be bought, in whole currency units. */
  readonly cost: number;
}

export interface HabitMoves {
  /** Dotted path of the habit in the scenario. */
  readonly path: string;
  /** With the habit so much shorter or less, and longer or more; null where the house cannot have that, or it is no change. */
  readonly less: Moved | null;
  readonly more: Moved | null;
}

/** How far the answer moves as habits vary one at a time. */
export interface HabitsAnswer {
  /** Share by which each habit is off. */
  readonly off: number;
  /** Days of each reading. */
  readonly days: number;
  readonly habits: readonly HabitMoves[];
  /** Pieces of the answer, and the fewest and most as any one habit varies. */
  readonly stock: readonly {
    readonly ware: string;
    readonly pieces: number;
    readonly low: number;
    readonly high: number;
  }[];
  /** Least and most difference of what is to be bought, in whole currency units; 0 lies between. */
  readonly cost: { readonly low: number; readonly high: number };
}

/** The stock that holds the level although the inputs are not known exactly. */
export interface InputsAnswer {
  /** Inputs drawn together from their ranges, how often, and days with each draw. */
  readonly inputs: number;
  readonly draws: number;
  readonly daysEach: number;
  /** Share of such days on which the answer's own stock lasts. */
  readonly plain: Share;
  /** The stock that allows for inputs, what is to be bought of it in whole currency units, and the share on which it lasts. */
  readonly stock: readonly { readonly ware: string; readonly pieces: number }[];
  readonly spend: number;
  readonly held: Share;
}

/** The answer's stock on one kind of day, and what such a day is like. */
export type KindAnswer = Pick<
  Answer,
  'busy' | 'guests' | 'loads' | 'uses' | 'drinks' | 'takeawayCups' | 'peaks'
> & {
  readonly id: string;
  readonly name: string;
  readonly daysAYear: number;
  /** Measured as the whole answer's is; null where days are listed. */
  readonly certified: Share | null;
};

/** Where the scenario lists kinds of day, all beside the stock is of the kind carried least. */
export interface Answer {
  readonly scenario: string;
  readonly seed: string;
  readonly currency: string;
  readonly level: number;
  readonly days: { readonly chosenOn: number; readonly certifiedOn: number };
  readonly certified: Share | null;
  /** Where a confidence was asked for: whether the low end of `certified` is at or above the level with it, errors of all tries included. */
  readonly assured?: Assured;
  readonly stock: readonly StockLine[];
  readonly busy: {
    readonly machines: number | null;
    readonly makers: number | null;
    readonly seats: number | null;
    readonly clearers: number | null;
    readonly hands: number | null;
  };
  /** Means a day. `served` and `turnedAway` overlap: who took away for want of a seat is in both. `parts` do not. */
  readonly guests: {
    /** Seated, or with a takeaway, planned or not. */
    readonly served: number;
    /** Found no seat: left, or took away instead. */
    readonly turnedAway: number;
    readonly left: number;
    readonly takeawayInstead: number;
    readonly seated: number;
    readonly tookAway: number;
    /** Every guest who comes is in exactly one: they add up to `arrived`. */
    readonly parts: {
      readonly servedInHouse: number;
      readonly tookAwayAsPlanned: number;
      readonly tookAwayForWantOfSeat: number;
      readonly left: number;
    };
    readonly arrived: number;
  };
  readonly warnings: readonly Warning[];
  /** Only where the scenario lists kinds of day: each of them, the file itself first, and which the stock carries least. */
  readonly kinds?: readonly KindAnswer[];
  readonly tightestKind?: string;
  /** Σ pieces × unit cost. */
  readonly cost: number;
  /** What of that is still to be paid: the pieces to add. */
  readonly spend: number;
  /** Seats of the house; null: unlimited. */
  readonly seats: number | null;
  /** Share of the seats held in the fullest quarter hour, mean over the busiest tenth of days; null: unlimited. */
  readonly seatsHeldBusiest: number | null;
  readonly overloads: readonly Overload[];
  readonly minutes: {
    /** Mean wait of a drink for a maker, house and takeaway. */
    readonly counterWait: number;
    /** Mean of a full loop of a piece by ware: off the shelf until back. */
    readonly loop: readonly {
      readonly ware: string;
      readonly minutes: number;
      /** Minutes at each place, the shelf left out. */ readonly places: readonly number[];
    }[];
  };
  readonly loads: {
    readonly aDay: number;
    readonly racksADay: number;
    readonly fill: number;
    /** Minutes a day of loading and unloading, after closing too, whoever does it. */ readonly handlingMinutes: number;
    readonly polishingMinutes: number;
    readonly racksNeeded: readonly { readonly kind: string; readonly racks: number }[];
  };
  readonly uses: readonly { readonly ware: string; readonly aDay: number }[];
  /** Drinks a day put in hand: house and takeaway. */
  readonly drinks: { readonly houseDrinks: number; readonly takeawayDrinks: number };
  readonly takeawayCups: {
    readonly ordered: number;
    readonly asFallBack: number;
    readonly byDrink: readonly {
      readonly drink: string;
      readonly ordered: number;
      readonly asFallBack: number;
    }[];
  };
  readonly tightest: TightestMoment;
  /** Only where asked for. */
  readonly habits?: HabitsAnswer;
  readonly allowingForInputs?: InputsAnswer;
  readonly evidence?: Evidence;
  readonly peaks?: readonly (readonly number[])[];
  readonly rushLevel?: Share;
  readonly fillRate?: number;
  /** Drinks a day that nobody could ever serve. */
  readonly unserved?: number;
  readonly drinksShort?: readonly { readonly ware: string; readonly aDay: number }[];
  readonly firstShortMinute?: { readonly median: number | null; readonly earliest: number | null };
  readonly perDay?: readonly {
    readonly short: Readonly<Record<string, number>>;
    readonly firstShortMinute: number | null;
    readonly turnedAway: { readonly left: number; readonly takeawayInstead: number };
    readonly unserved: number;
  }[];
}
