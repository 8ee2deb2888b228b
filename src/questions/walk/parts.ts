/** What lasts in a walk through a day: visits, trips, racks, spells of machines, shortages. */

/** A party that sat down. Moments are indices into `times`. */
export interface WalkParty {
  /** Number of the party in the day, from 0. */
  readonly party: number;
  readonly size: number;
  readonly from: number;
  /** When its guests have left. */
  left: number;
  /** When nothing of it is on the table any more. */
  until: number;
  /** By piece, in the order served: ware, number of its drink in the day, when it came to the table and when it was picked up. */
  readonly ware: number[];
  readonly drink: number[];
  readonly served: number[];
  readonly picked: number[];
}

export interface WalkTrip {
  readonly clearer: number;
  readonly from: number;
  until: number;
  /** Ware of every piece, in the order picked up. */
  readonly pieces: readonly number[];
}

/** A rack from its first piece until it is given back. */
export interface WalkRack {
  readonly family: number;
  readonly from: number;
  /** When it is closed: full, or a piece did not fit, or on its way into a machine. */
  closed: number;
  /** When it goes into a machine, and which; -1 while it is in none. */
  washed: number;
  machine: number;
  until: number;
  /** By piece: ware, and when it was racked. In the order racked; those of one event in the order of ware. */
  readonly ware: number[];
  readonly racked: number[];
}

export const MACHINE_STAGES = [
  'idle',
  'loading',
  'running',
  'waiting',
  'unloading',
  'stopped',
] as const;

/** A spell of a machine; machines start idle, and spells of standing idle are left out. */
export interface WalkStage {
  readonly machine: number;
  /** Index into MACHINE_STAGES; `waiting` is for a hand to unload it, `stopped` out of order or warming up. */
  readonly stage: number;
  readonly from: number;
  until: number;
  /** Indices into `racks`; -1 a rack of food ware. */
  readonly racks: readonly number[];
}

/** A drink that lacked a piece of a ware; those of one event in the order of ware. */
export interface WalkShortage {
  readonly moment: number;
  readonly ware: number;
}
