/** The floor as washing rules see it: to read, never to change. */
import type { Bench } from './bench.js';
import type { Floor } from './floor.js';
import type { RuleView } from './washing/load-rule.js';

export class FloorView implements RuleView {
  constructor(private readonly floor: Floor) {}

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
    return this.floor.makers.free;
  }
}
