/**
 * Tables: a party's visit from its first cup to its last, and the pieces it leaves.
 *
 * The dwell runs from the moment the last drink of the first round is served. Pieces stay in use until
 * the party leaves; then they lie dirty on the table, in the order in which they were served.
 */
import { wholeMs } from '../engine/durations.js';
import { grown } from './day.js';
import type { Flow } from './flow.js';
import { EVENT } from './events.js';
import { DIRTY_TABLE, IN_USE } from './places.js';
import type { Settings } from './settings.js';

const NONE = -1;
const DWELLS = 0;
const STAYS_ON = 1;
const LEFT = 2;

export class Tables {
  /** Parties that sit. */
  parties = 0;
  /** By party: drinks of the first round, and second drinks, still on order. */
  private firstsOpen = new Int32Array(256);
  private secondsOpen = new Int32Array(256);
  /** By party: whether it is within its dwell, stays on for a drink on order, or has left. */
  private state = new Uint8Array(256);
  /** By party and by drink: the drinks served, in order, as a chain; and what each stands in. */
  private firstServed = new Int32Array(256);
  private lastServed = new Int32Array(256);
  private nextServed = new Int32Array(512);
  private standsIn = new Int32Array(512);
  /** By party: how many pieces of the first drink in its chain have been picked up. */
  private pickedUp = new Int32Array(256);

  constructor(
    private readonly settings: Settings,
    private readonly flow: Flow,
  ) {}

  open(): void {
    const { parties, drinks } = this.flow.day;
    if (parties > this.firstsOpen.length) {
      this.firstsOpen = new Int32Array(parties * 2);
      this.secondsOpen = new Int32Array(parties * 2);
      this.state = new Uint8Array(parties * 2);
      this.firstServed = new Int32Array(parties * 2);
      this.lastServed = new Int32Array(parties * 2);
      this.pickedUp = new Int32Array(parties * 2);
    }
    if (drinks > this.nextServed.length) {
      this.nextServed = grown(this.nextServed, new Int32Array(drinks * 2));
      this.standsIn = new Int32Array(drinks * 2);
    }
    this.parties = 0;
  }

  /** A party sits down and is about to order `firsts` drinks. */
  sit(party: number, firsts: number): void {
    this.parties += 1;
    this.firstsOpen[party] = firsts;
    this.secondsOpen[party] = 0;
    this.state[party] = DWELLS;
    this.firstServed[party] = NONE;
    this.pickedUp[party] = 0;
    this.flow.ledger.observer?.seated(party);
    if (firsts === 0) this.startDwell(party);
  }

  /** The moment of a second order: the drink is on order from now, unless its party has left in this very millisecond. */
  orderSecond(drink: number): boolean {
    const party = this.flow.day.party[drink]!;
    if (this.state[party] === LEFT) return false;
    this.secondsOpen[party] = this.secondsOpen[party]! + 1;
    return true;
  }

  /** A drink reaches the table. */
  serve(drink: number, setting: number): void {
    const party = this.flow.day.party[drink]!;
    this.standsIn[drink] = setting;
    this.nextServed[drink] = NONE;
    if (this.firstServed[party] === NONE) this.firstServed[party] = drink;
    else this.nextServed[this.lastServed[party]!] = drink;
    this.lastServed[party] = drink;
    this.flow.ledger.observer?.served(party, drink, this.settings.of(setting));
    if (drink < this.flow.day.firstSecond[party]!) {
      const open = (this.firstsOpen[party] = this.firstsOpen[party]! - 1);
      if (open === 0) this.startDwell(party);
    } else {
      const open = (this.secondsOpen[party] = this.secondsOpen[party]! - 1);
      if (open === 0 && this.state[party] === STAYS_ON)
        this.flow.calendar.schedule(this.flow.now, EVENT.leave, party);
    }
  }

  /** The dwell of a party is over, or its last late drink has come: it leaves unless a drink is on order. */
  leave(party: number): void {
    if (this.secondsOpen[party]! > 0) {
      this.state[party] = STAYS_ON;
      return;
    }
    this.state[party] = LEFT;
    this.parties -= 1;
    const { pieces, start } = this.settings;
    for (let drink = this.firstServed[party]!; drink !== NONE; drink = this.nextServed[drink]!) {
      const setting = this.standsIn[drink]!;
      const to = start[setting + 1]!;
      for (let at = start[setting]!; at < to; at += 1)
        this.flow.ledger.move(pieces[at]!, IN_USE, DIRTY_TABLE, 1);
    }
    this.dropEmptyDrinks(party);
    this.flow.ledger.observer?.left(party);
    this.flow.tableLeft(party);
  }

  /** Whether pieces still lie on the table of a party that has left. */
  hasPieces(party: number): boolean {
    return this.firstServed[party] !== NONE;
  }

  /** Pick up the next piece from a left table, in the order served; its ware. Only while `hasPieces`. */
  pickUp(party: number): number {
    const { pieces, start } = this.settings;
    const drink = this.firstServed[party]!;
    const setting = this.standsIn[drink]!;
    const at = start[setting]! + this.pickedUp[party]!;
    if (at + 1 === start[setting + 1]!) {
      this.firstServed[party] = this.nextServed[drink]!;
      this.pickedUp[party] = 0;
      this.dropEmptyDrinks(party);
    } else {
      this.pickedUp[party] = this.pickedUp[party]! + 1;
    }
    this.flow.ledger.observer?.pickedUp(party);
    return pieces[at]!;
  }

  /** Drinks in takeaway cups leave no piece behind. */
  private dropEmptyDrinks(party: number): void {
    const { start } = this.settings;
    let drink = this.firstServed[party]!;
    while (drink !== NONE && start[this.standsIn[drink]!]! === start[this.standsIn[drink]! + 1]!)
      drink = this.nextServed[drink]!;
    this.firstServed[party] = drink;
  }

  private startDwell(party: number): void {
    const { day, calendar, now } = this.flow;
    const dwell = day.dwellMs[party]!;
    calendar.schedule(now + dwell, EVENT.leave, party);
    const end = day.firstDrink[party + 1]!;
    for (let drink = day.firstSecond[party]!; drink < end; drink += 1) {
      calendar.schedule(now + wholeMs(dwell * day.shareOfDwell[drink]!), EVENT.secondOrder, drink);
    }
  }
}
