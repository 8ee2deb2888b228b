/**
 * The café as the rush sees it: plain data, whole numbers where possible, no units left to convert.
 *
 * A scenario file is for people; this is what `study/` makes of it. Times are milliseconds (from
 * opening where they are moments), shares are 0..1, pieces are counts, and `null` always means
 * "unlimited" or "never". References between tables are array indices.
 */
import type { DurationLaw } from '../engine/durations.js';
import type { PartLoads } from './washing/part-loads.js';

export interface WareModel {
  readonly id: string;
  /** Index into `families`: pieces of one family may share a rack. */
  readonly family: number;
  /** Pieces that fill one rack; a piece takes 1/perRack of it. */
  readonly perRack: number;
  /** From unloaded to usable on the shelf. */
  readonly drying: DurationLaw;
  /** A part rack holding this ware may go once the shelf is down to this many pieces; null: no such mark. */
  readonly lowWater: number | null;
  /** Cost of a piece in minor units of the scenario's currency; what sizing minimises. */
  readonly unitCost: number;
  /** Polishing by hand, per piece, before the shelf; null: none. */
  readonly polishing: DurationLaw | null;
}

export interface FamilyModel {
  readonly id: string;
  readonly rackKind: number;
}

export interface RackKindModel {
  readonly id: string;
  readonly owned: number | null;
}

/** A setting is a list of ware indices, in the order in which pieces are taken; empty: a takeaway cup. */
export type Setting = readonly number[];

export interface DrinkModel {
  readonly id: string;
  /** Share of drinks ordered; the shares of the menu sum to 1. */
  readonly share: number;
  readonly setting: Setting;
  readonly fallBacks: readonly Setting[];
  readonly making: DurationLaw;
}

export interface ArrivalStep {
  /** When this step ends, from opening. Steps are in order and the last ends at closing. */
  readonly untilMs: number;
  /** Expected parties a millisecond, before the day's factor. */
  readonly partiesPerMs: number;
}

export interface GuestsModel {
  /** Weight of a party of 1, 2, 3 ... guests; sums to 1. */
  readonly partySize: readonly number[];
  readonly staysIn: number;
  readonly drinksEach: number;
  readonly secondDrink: number;
  /** By party size, from 1; larger parties use the last. */
  readonly dwell: readonly DurationLaw[];
}

export interface SeatsModel {
  readonly count: number | null;
  readonly whenFull: 'leave' | 'takeaway' | 'wait';
  readonly waitLimitMs: number;
  readonly heldUntilCleared: boolean;
}

export interface ClearingModel {
  /** Between rounds; null: cleared at once on leaving. */
  readonly every: DurationLaw | null;
  readonly clearers: number | null;
  readonly tripPieces: number | null;
  readonly trip: DurationLaw;
  /** Pieces dirty on tables that call for a round of their own; null: none does. */
  readonly whenDirty: number | null;
  /** Whether a party that waits calls for a round while dirty tables hold seats. */
  readonly forSeats: boolean;
}

export interface MachineModel {
  readonly id: string;
  /** Racks it takes at once. */
  readonly racks: number;
  readonly loading: DurationLaw;
  readonly cycle: DurationLaw;
  readonly unloading: DurationLaw;
  /** From opening until the first load may start. */
  readonly warmUpMs: number;
  /** Spells out of order, from opening: [start, end), in order; a load under way is finished first. */
  readonly down: readonly (readonly [number, number])[];
  /** Random breakdowns: running time until one, and repair; null: none. */
  readonly breakdown: { readonly until: DurationLaw; readonly repair: DurationLaw } | null;
}

export interface OtherLoadsModel {
  /** Same form as arrivals: racks a millisecond until a moment. */
  readonly steps: readonly { readonly untilMs: number; readonly racksPerMs: number }[];
  readonly arrivals: 'regular' | 'poisson';
  readonly goes: 'first' | 'inTurn' | 'last';
}

export interface WashingModel extends PartLoads {
  /** null: as many as are needed, each like `everyMachine`. */
  readonly machines: readonly MachineModel[] | null;
  readonly everyMachine: MachineModel;
  /** Hands for loading and unloading: a number of their own, null for unlimited, or people with another job. */
  readonly hands: number | null | 'clearers' | 'makers';
  readonly otherLoads: OtherLoadsModel | null;
}

/** The shelf as two places; absent or null: one place. */
export interface StorageModel {
  /** By ware: pieces that stand on the machine top; null: the ware has one place. At least 1, and at least what a setting takes. */
  readonly onTop: readonly (number | null)[];
  /** By ware: pieces left on top at which more are fetched. */
  readonly trigger: readonly number[];
  readonly trip: DurationLaw;
  readonly tripPieces: number | null;
  readonly fetchers: number | null | 'makers';
}

/** Shares that hold for parties that arrive before a moment, after those of the step before. */
export interface ShareStep {
  readonly untilMs: number;
  readonly staysIn: number;
  /** By drink on the menu; they sum to 1. */
  readonly menu: readonly number[];
}

export interface CafeModel {
  readonly closingMs: number;
  readonly arrivals: readonly ArrivalStep[];
  /** Who stays in and what is ordered where that differs by time of day; `guests.staysIn` and the menu's shares are then its means over expected parties. */
  readonly shareSteps?: readonly ShareStep[] | null;
  /** Coefficient of variation of the whole day's level; 0: every day expects the same. */
  readonly dayFactorCv: number;
  readonly guests: GuestsModel;
  readonly menu: readonly DrinkModel[];
  readonly ware: readonly WareModel[];
  readonly families: readonly FamilyModel[];
  readonly rackKinds: readonly RackKindModel[];
  readonly seats: SeatsModel;
  readonly makers: number | null;
  readonly clearing: ClearingModel;
  readonly washing: WashingModel;
  readonly storage?: StorageModel | null;
}
