/**
 * The counter: drinks wait first come first served for a maker, and take their whole setting from the
 * shelf when making starts.
 *
 * A drink that lacks a piece is short, once, and charged to the first missing piece. It falls back in
 * the order of the menu, or steps aside without holding the maker and is tried again before fresh
 * drinks whenever a maker is free. Nothing is reserved.
 */
import { grown } from './day.js';
import type { Flow } from './flow.js';
import { MOMENT } from './moments.js';
import type { CafeModel } from './model.js';
import { PLACE_COUNT, SHELF, IN_USE } from './places.js';
import type { People } from './people.js';
import { Settings, TAKEAWAY_CUP } from './settings.js';

const NONE = -1;

export class Counter {
  /** House drinks put in hand so far, and how many of them were short. */
  houseDrinks = 0;
  shortDrinks = 0;
  /** Drinks made to take away, and house drinks that fell back on a takeaway cup. */
  takeawayDrinks = 0;
  paperFallBacks = 0;
  /** Drinks short by the first missing ware. */
  readonly short: Float64Array;
  /** Moment of the first short drink, ms; -1 for none. */
  firstShort = NONE;
  /** Σ waits from order to start of making, ms, and the number of drinks started. */
  waitedMs = 0;
  started = 0;

  private queue = new Int32Array(512);
  private head = 0;
  private tail = 0;
  private aside = new Int32Array(64);
  private asideCount = 0;
  /** By drink: when it was ordered, and the setting it is made in. */
  private orderedAt = new Float64Array(512);
  private setting = new Int32Array(512);
  private readonly watchesShelf: boolean;

  constructor(model: CafeModel, readonly settings: Settings, private readonly makers: People, private readonly flow: Flow) {
    this.short = new Float64Array(model.ware.length);
    this.watchesShelf = model.ware.some((ware) => ware.lowWater !== null);
  }

  open(): void {
    this.houseDrinks = this.shortDrinks = this.takeawayDrinks = this.paperFallBacks = 0;
    this.short.fill(0);
    this.firstShort = NONE;
    this.waitedMs = this.started = 0;
    this.head = this.tail = this.asideCount = 0;
    const { drinks } = this.flow.day;
    if (drinks > this.queue.length) {
      this.queue = new Int32Array(drinks * 2);
      this.orderedAt = new Float64Array(drinks * 2);
      this.setting = new Int32Array(drinks * 2);
    }
  }

  /** Drinks waiting for a maker or for their ware. */
  get waiting(): number {
    return this.tail - this.head + this.asideCount;
  }

  /** Drinks that nobody will ever serve, once nothing more is to come. */
  get unserved(): number {
    return this.waiting;
  }

  /** A drink joins the queue; `work` puts it in hand when a maker is free. */
  join(drink: number): void {
    this.queue[this.tail] = drink;
    this.tail += 1;
    this.orderedAt[drink] = this.flow.now;
  }

  /** Free makers take up drinks: those that stepped aside first, then fresh ones. */
  work(): void {
    if (this.asideCount > 0) this.retryAside();
    while (this.makers.free > 0 && this.head < this.tail) {
      const drink = this.queue[this.head]!;
      this.head += 1;
      if (!this.flow.inHouse(this.flow.day.party[drink]!)) {
        this.takeawayDrinks += 1;
        this.make(drink, TAKEAWAY_CUP);
      } else {
        this.startHouseDrink(drink);
      }
    }
  }

  /** Making is over: the maker is free and the drink goes to its party. */
  done(drink: number): void {
    this.makers.release();
    this.flow.served(drink, this.setting[drink]!);
  }

  private startHouseDrink(drink: number): void {
    this.houseDrinks += 1;
    const wanted = this.settings.wanted[this.flow.day.kind[drink]!]!;
    const missing = this.firstMissing(wanted);
    if (missing === NONE) {
      this.take(drink, wanted);
      return;
    }
    this.shortDrinks += 1;
    this.short[missing] = this.short[missing]! + 1;
    if (this.firstShort === NONE) this.firstShort = this.flow.now;
    if (!this.fallBack(drink)) this.stepAside(drink);
  }

  private retryAside(): void {
    let kept = 0;
    for (let index = 0; index < this.asideCount; index += 1) {
      const drink = this.aside[index]!;
      if (this.makers.free <= 0 || !this.retry(drink)) {
        this.aside[kept] = drink;
        kept += 1;
      }
    }
    this.asideCount = kept;
  }

  private retry(drink: number): boolean {
    const wanted = this.settings.wanted[this.flow.day.kind[drink]!]!;
    if (this.firstMissing(wanted) !== NONE) return this.fallBack(drink);
    this.take(drink, wanted);
    return true;
  }

  private fallBack(drink: number): boolean {
    for (const setting of this.settings.fallBacks[this.flow.day.kind[drink]!]!) {
      if (this.firstMissing(setting) === NONE) {
        if (setting === TAKEAWAY_CUP) this.paperFallBacks += 1;
        this.take(drink, setting);
        return true;
      }
    }
    return false;
  }

  private stepAside(drink: number): void {
    if (this.asideCount === this.aside.length) this.aside = grown(this.aside, new Int32Array(this.asideCount * 2));
    this.aside[this.asideCount] = drink;
    this.asideCount += 1;
  }

  /** The first ware, in the order of the setting, of which the shelf holds too few; -1 if it holds all. */
  private firstMissing(setting: number): number {
    const { pieces, start } = this.settings;
    const { counts } = this.flow.ledger;
    const from = start[setting]!;
    const to = start[setting + 1]!;
    for (let at = from; at < to; at += 1) {
      const ware = pieces[at]!;
      const onShelf = counts[ware * PLACE_COUNT + SHELF]!;
      if (onShelf > to - from) continue;
      let needed = 1;
      for (let before = from; before < at; before += 1) if (pieces[before] === ware) needed += 1;
      if (onShelf < needed) return ware;
    }
    return NONE;
  }

  private take(drink: number, setting: number): void {
    const { pieces, start } = this.settings;
    const to = start[setting + 1]!;
    for (let at = start[setting]!; at < to; at += 1) this.flow.ledger.move(pieces[at]!, SHELF, IN_USE, 1);
    this.make(drink, setting);
    if (this.watchesShelf) this.flow.shelfLower();
  }

  private make(drink: number, setting: number): void {
    const { now, day, calendar } = this.flow;
    const making = day.makeMs[drink]!;
    this.setting[drink] = setting;
    this.waitedMs += now - this.orderedAt[drink]!;
    this.started += 1;
    this.makers.hold(now, making);
    calendar.schedule(now + making, MOMENT.drinkDone, drink);
  }
}
