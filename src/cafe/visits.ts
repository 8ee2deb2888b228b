/** Parties from the door to their first order: who sits in the house, who takes away. */
import type { Counter } from './counter.js';
import type { Day } from './day.js';
import type { Seats } from './seats.js';
import type { Tables } from './tables.js';

export class Visits {
  /** Guests who chose to take away. */
  guestsTookAway = 0;
  private day!: Day;
  /** By party: 1 once it has sat down. */
  private seatedParty = new Uint8Array(256);

  constructor(
    private readonly seats: Seats,
    private readonly tables: Tables,
    private readonly counter: Counter,
  ) {}

  open(day: Day): void {
    this.day = day;
    this.guestsTookAway = 0;
    if (day.parties > this.seatedParty.length) this.seatedParty = new Uint8Array(day.parties * 2);
  }

  arrive(party: number): void {
    if (this.day.staysIn[party] === 1) return this.seats.arrive(party);
    this.guestsTookAway += this.day.size[party]!;
    this.takesAway(party);
  }

  /** Whether a party that has come in sits in the house. */
  inHouse(party: number): boolean {
    return this.seatedParty[party] === 1;
  }

  seated(party: number): void {
    const { day } = this;
    this.seatedParty[party] = 1;
    this.tables.sit(party, day.firstSecond[party]! - day.firstDrink[party]!);
    this.orderFirstRound(party);
  }

  takesAway(party: number): void {
    this.seatedParty[party] = 0;
    this.orderFirstRound(party);
  }

  private orderFirstRound(party: number): void {
    const { day } = this;
    const to = day.firstSecond[party]!;
    for (let drink = day.firstDrink[party]!; drink < to; drink += 1) this.counter.join(drink);
    this.counter.work();
  }
}
