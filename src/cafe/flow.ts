/**
 * What one stage may ask of the others. The floor implements it; a stage sees nothing else of its
 * neighbours, so that each can be read on its own.
 */
import type { Calendar } from '../engine/calendar.js';
import type { Day } from './day.js';
import type { Ledger } from './ledger.js';

export interface Flow {
  readonly calendar: Calendar;
  readonly ledger: Ledger;
  /** The day under way. */
  readonly day: Day;
  /** The present moment, ms from opening. */
  readonly now: number;

  /** Whether a party that has come in sits in the house; otherwise it takes away. */
  inHouse(party: number): boolean;
  /** A party that stays in has its seats. */
  seated(party: number): void;
  /** A party takes its drinks away. */
  takesAway(party: number): void;
  /** A drink goes to the counter. */
  ordered(drink: number): void;
  /** A drink has been made and served; `setting` is what it stands in. */
  served(drink: number, setting: number): void;
  /** Seats of a party are free again. */
  seatsFree(guests: number): void;
  /** A party has left a dirty table. */
  tableLeft(party: number): void;
  /** A piece reaches the bench; racked at once if there is a rack for it. */
  toBench(ware: number): void;
  /** After the last piece of an event has reached the bench. */
  benchFilled(): void;
  /** Racks have come back empty. */
  racksFree(): void;
  /** Pieces have come back to the shelf, or dry for somebody to polish. */
  shelfFuller(): void;
  /** Pieces were taken from the shelf. */
  shelfLower(): void;
  /** People may have become free: give them their next work. */
  dispatchStaff(): void;
  /** A hand at the dishwasher has become free: give it its next work. */
  handFree(): void;
  /** Schedule an event that only keeps a habit going: by itself it is no reason to go on with the day. */
  recur(moment: number, rank: number, payload: number): void;
  /** Parties waiting for seats. */
  readonly partiesWaiting: number;
  /** Whether anything at all is still to come. */
  readonly moreToCome: boolean;
}
