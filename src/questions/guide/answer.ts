/** The planning guide as data: what `cuptide guide --json` prints, and what its page, table and text are made from. */
import type { Answer, Share } from '../size/answer.js';

/** What a drink is served in; null: not known from the file. */
export interface DrinkVessels {
  readonly drink: string;
  readonly name: string;
  readonly share: number;
  readonly house: {
    readonly ware: string;
    readonly name: string;
    readonly brimMl: number | null;
    readonly rimMm: number | null;
    /** Names of what goes with it. */
    readonly with: readonly string[];
  } | null;
  readonly takeaway: {
    readonly name: string;
    readonly nominalMl: number | null;
    readonly brimMl: number | null;
    readonly rimMm: number | null;
  } | null;
}

export interface GuideStock {
  readonly ware: string;
  readonly name: string;
  readonly pieces: number;
  /** 95 % interval of the pieces: the error of the days drawn; null where a rule looks at the clean count. */
  readonly low: number | null;
  readonly high: number | null;
  readonly perSeat: number;
  readonly unitCost: number;
  /** Of saucers and spoons: pieces for each cup or glass that is served with one; else null. */
  readonly aCup: number | null;
}

export interface GuideHouse {
  readonly seats: number;
  /** Share of guests who take away. */
  readonly takeaway: number;
  /** All guests in the busiest hour, and those of them who come to sit. */
  readonly guestsAnHour: number;
  readonly inHouseAnHour: number;
  /** null: as many as are needed, or none of their own. */
  readonly makers: number | null;
  readonly clearers: number | null;
  readonly hands: number | null;
  readonly machines: number | null;
  readonly busy: Answer['busy'];
  /** Days its stock is chosen on; as many fresh ones, at least 1,000, measure it. */
  readonly days: number;
  readonly stock: readonly GuideStock[];
  readonly certified: Share | null;
  /** What the ware costs, and the 95 % interval of that. */
  readonly cost: number;
  readonly costLow: number | null;
  readonly costHigh: number | null;
  readonly racks: readonly {
    readonly kind: string;
    readonly name: string;
    readonly racks: number;
  }[];
  readonly racksCost: number;
  /** Room that the pieces take side by side in one layer. */
  readonly shelfM2: number;
  /** Paper cups a rush, planned and for want of a seat or a piece. */
  readonly paperCups: number;
  readonly overloads: Answer['overloads'];
  readonly warnings: Answer['warnings'];
}

/** What the house of the file would need if something were otherwise, against as it is. */
export interface GuideChange {
  readonly id: string;
  readonly name: string;
  readonly pieces: number;
  /** Half of the 95 % interval of the difference, on the same days; null where a rule looks at the clean count. */
  readonly piecesError: number | null;
  readonly cost: number;
  /** Guests a rush who find no seat, more than as it is. */
  readonly turnedAway: number;
}

export interface Guide {
  readonly scenario: string;
  readonly seed: string;
  readonly currency: string;
  readonly level: number;
  readonly changeDays: number;
  /** The house of the file. */
  readonly file: {
    readonly seats: number;
    readonly takeaway: number;
    readonly guestsAnHour: number;
    readonly inHouseASeat: number;
    readonly stayMinutes: number;
    readonly busy: Answer['busy'];
    /** It owns something already, which the guide leaves out. */
    readonly owns: boolean;
  };
  readonly drinks: readonly DrinkVessels[];
  readonly houses: readonly GuideHouse[];
  readonly changes: readonly GuideChange[];
  readonly inputs: { readonly all: number; readonly assumed: number };
  /** Paths of those assumed inputs that usually move the answer most. */
  readonly assumed: readonly string[];
}
