/** Collections side by side: plain data. Money is whole minor units, over all ware of the house. */
import type { SaucerFit } from '../../racking/saucer-fit.js';

export interface Collections {
  readonly title: string;
  readonly date: string;
  readonly currency: string;
  readonly locale: string | null;
  readonly level: number;
  readonly horizonDays: number;
  /** The house as it is first. */
  readonly collections: readonly CollectionLine[];
}

export interface CollectionLine {
  readonly id: string;
  readonly name: string;
  /** Pieces that must be clean at opening, all ware. */
  readonly pieces: number;
  /** Pieces of the order now, spares and whole cartons with them. */
  readonly ordered: number;
  /** Landed, own handling with it; null where something is not sold. */
  readonly nowMinor: number | null;
  /** Now and later orders over the horizon, for all that breaks and walks off, and what holding it costs. */
  readonly overMinor: number | null;
  readonly horizonDays: number;
  readonly proved: boolean;
  /** Names of ware that no supplier sells. */
  readonly unsold: readonly string[];
  /** Racks a day if all were full. */
  readonly fullRacksADay: number;
  /** Drinks as strong in the house as in paper, of those compared. */
  readonly alike: number;
  readonly compared: number;
  readonly saucerKinds: number;
  /** Saucers saved because cups share one. */
  readonly saucersSaved: number;
  /** Cups served on a saucer that does not fit. */
  readonly misfits: number;
  /** Cups and saucers served together whose colours are both known, and of these those that differ. */
  readonly colourPairs: number;
  readonly otherColours: number;
  /** Hot cups on the machine, of how many. */
  readonly onTop: { readonly pieces: number; readonly of: number } | null;
  readonly discontinued: Discontinued | null;
  readonly vessels: readonly VesselLine[];
  readonly warnings: readonly string[];
}

export interface Discontinued {
  readonly names: readonly string[];
  /** First day after which one of them is not sold; null: already. */
  readonly until: string | null;
  /** Spares for the whole horizon, bought now, and what that costs over a line that stays on sale. */
  readonly spares: number;
  readonly sparesMinor: number;
  /** Pieces of the par to buy anew when the lines end, landed at today's prices. */
  readonly replacedPieces: number;
  readonly replacedMinor: number;
}

export interface VesselLine {
  readonly ware: string;
  readonly name: string;
  /** Ids of the menu's cups it stands in for. */
  readonly standsFor: readonly string[];
  readonly pieces: number;
  readonly perRack: number;
  readonly brimMl: number | null;
  readonly filledG: number | null;
  readonly momentNm: number | null;
  readonly easy: boolean | null;
  readonly heavy: boolean;
  /** The coolest first sip of its drinks. */
  readonly firstSipC: number | null;
  /** Strength to take away over strength in it, by drink. */
  readonly ratios: readonly { readonly drink: string; readonly ratio: number }[];
  /** On the first saucer that the menu puts under it. */
  readonly fit: SaucerFit | null;
  readonly until: string | null;
}
