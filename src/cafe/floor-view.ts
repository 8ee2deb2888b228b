/** The floor as washing rules see it: to read, never to change. */
import type { Bench } from './bench.js';
import type { Ledger } from './ledger.js';
import type { RuleView } from './washing/load-rule.js';

/** What of the floor is looked at. */
interface Seen {
  readonly now: number;
  readonly moreToCome: boolean;
  readonly model: { readonly closingMs: number };
  readonly bench: Bench;
  readonly ledger: Ledger;
  readonly counter: { readonly waiting: number };
  readonly seats: { readonly guestsInHouse: number; readonly waiting: number };
  readonly staff: { readonly makers: { readonly free: number } };
}

export class FloorView implements RuleView {
  constructor(private readonly floor: Seen) {}

  get now(): number {
    return this.floor.now;
  }

  get closed(): boolean {
    return this.floor.now >= this.floor.model.closingMs;
  }

  get moreToCome(): boolean {
    return this.floor.moreToCome;
  }

  get bench(): Bench {
    return this.floor.bench;
  }

  shelf(ware: number): number {
    return this.floor.ledger.shelf(ware);
  }

  piecesAt(place: number): number {
    return this.floor.ledger.at(place);
  }

  get drinksWaiting(): number {
    return this.floor.counter.waiting;
  }

  get guestsSeated(): number {
    return this.floor.seats.guestsInHouse;
  }

  get partiesWaiting(): number {
    return this.floor.seats.waiting;
  }

  get makersFree(): number {
    return this.floor.staff.makers.free;
  }
}
