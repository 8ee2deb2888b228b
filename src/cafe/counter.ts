/**
 * The counter: drinks wait first come first served for a maker, and take their whole setting from the
 * shelf when making starts.
 *
 * A drink that lacks a piece is short, once, and charged to the first missing piece. It falls back in
 * the order of the menu, or steps aside without holding the maker and is tried again before fresh
 * drinks whenever a maker is free. Nothing is reserved.
 */
import type { Flow } from './flow.js';
import { EVENT } from './events.js';
import type { CafeModel } from './model.js';
import { PLACE_COUNT, SHELF, IN_USE } from './places.js';
import type { People } from './people.js';
import { Settings, TAKEAWAY_CUP } from './settings.js';
import type { Storage } from './storage.js';

const NONE = -1;

export class Counter {
  /** House drinks put in hand so far, and how many of them were short. */
  houseDrinks = 0;
  shortDrinks = 0;
  /** Drinks made to take away, and house drinks that fell back on a takeaway cup. */
  takeawayDrinks = 0;
  paperFallBacks = 0;
  /** By drink on the menu: takeaway cups ordered, and takeaway cups that stood in for house ware. */
  readonly awayByKind: Float64Array;
  readonly paperByKind: Float64Array;
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
  /** Drinks that stepped aside: a chain for each kind, in counter order, as drinks of a kind fare alike. */
  private asideCount = 0;
  private readonly firstAside: Int32Array;
  private readonly lastAside: Int32Array;
  private nextAside = new Int32Array(512);
  /** By drink: its turn among those that stepped aside. */
  private turn = new Int32Array(512);
  private turns = 0;
  /** By kind: 1 once the shelf has been found too empty for it in the present round of trying. */
  private readonly noUse: Uint8Array;
  /** By drink: when it was ordered, and the setting it is made in. */
  private orderedAt = new Float64Array(512);
  private setting = new Int32Array(512);

  constructor(
    model: CafeModel,
    readonly settings: Settings,
    private readonly makers: People,
    private readonly storage: Storage | null,
    private readonly flow: Flow,
  ) {
    this.short = new Float64Array(model.ware.length);
    this.awayByKind = new Float64Array(model.menu.length);
    this.paperByKind = new Float64Array(model.menu.length);
    this.firstAside = new Int32Array(model.menu.length);
    this.lastAside = new Int32Array(model.menu.length);
    this.noUse = new Uint8Array(model.menu.length);
  }

  open(): void {
    this.houseDrinks = this.shortDrinks = this.takeawayDrinks = this.paperFallBacks = 0;
    this.short.fill(0);
    this.awayByKind.fill(0);
    this.paperByKind.fill(0);
    this.firstShort = NONE;
    this.waitedMs = this.started = 0;
    this.head = this.tail = this.asideCount = this.turns = 0;
    this.firstAside.fill(NONE);
    const { drinks } = this.flow.day;
    if (drinks > this.queue.length) {
      this.queue = new Int32Array(drinks * 2);
      this.orderedAt = new Float64Array(drinks * 2);
      this.setting = new Int32Array(drinks * 2);
      this.nextAside = new Int32Array(drinks * 2);
      this.turn = new Int32Array(drinks * 2);
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
        const kind = this.flow.day.kind[drink]!;
        this.takeawayDrinks += 1;
        this.awayByKind[kind] = this.awayByKind[kind]! + 1;
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
      if (!this.waitsForFetch(wanted)) this.take(drink, wanted);
      else {
        this.storage!.waits += 1;
        this.stepAside(drink);
      }
      return;
    }
    this.shortDrinks += 1;
    this.short[missing] = this.short[missing]! + 1;
    if (this.firstShort === NONE) this.firstShort = this.flow.now;
    this.flow.ledger.observer?.short(missing);
    if (!this.fallBack(drink)) this.stepAside(drink);
  }

  /** Try those aside in counter order. While we try, the shelf only gets emptier: a kind that failed fails again. */
  private retryAside(): void {
    this.noUse.fill(0);
    while (this.makers.free > 0) {
      let kind = NONE;
      for (let one = 0; one < this.firstAside.length; one += 1) {
        const drink = this.firstAside[one]!;
        if (drink === NONE || this.noUse[one] === 1) continue;
        if (kind === NONE || this.turn[drink]! < this.turn[this.firstAside[kind]!]!) kind = one;
      }
      if (kind === NONE) return;
      const drink = this.firstAside[kind]!;
      if (this.retry(drink)) {
        this.firstAside[kind] = this.nextAside[drink]!;
        this.asideCount -= 1;
      } else {
        this.noUse[kind] = 1;
      }
    }
  }

  private retry(drink: number): boolean {
    const wanted = this.settings.wanted[this.flow.day.kind[drink]!]!;
    if (this.firstMissing(wanted) !== NONE) return this.fallBack(drink);
    if (this.waitsForFetch(wanted)) return false;
    this.take(drink, wanted);
    return true;
  }

  private fallBack(drink: number): boolean {
    const kind = this.flow.day.kind[drink]!;
    for (const setting of this.settings.fallBacks[kind]!) {
      if (this.firstMissing(setting) === NONE && !this.waitsForFetch(setting)) {
        if (setting === TAKEAWAY_CUP) {
          this.paperFallBacks += 1;
          this.paperByKind[kind] = this.paperByKind[kind]! + 1;
        }
        this.take(drink, setting);
        return true;
      }
    }
    return false;
  }

  /** Whether a setting that the shelf has is not on the machine top; somebody is then sent for it. */
  private waitsForFetch(setting: number): boolean {
    if (this.storage === null || !this.storage.lacks(setting)) return false;
    this.storage.work();
    return true;
  }

  private takeFromTop(storage: Storage, setting: number): void {
    const { pieces, start } = this.settings;
    for (let at = start[setting]!; at < start[setting + 1]!; at += 1) storage.taken(pieces[at]!);
    storage.work();
  }

  private stepAside(drink: number): void {
    const kind = this.flow.day.kind[drink]!;
    this.turn[drink] = this.turns;
    this.turns += 1;
    this.nextAside[drink] = NONE;
    if (this.firstAside[kind] === NONE) this.firstAside[kind] = drink;
    else this.nextAside[this.lastAside[kind]!] = drink;
    this.lastAside[kind] = drink;
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
    for (let at = start[setting]!; at < to; at += 1)
      this.flow.ledger.move(pieces[at]!, SHELF, IN_USE, 1);
    if (this.storage !== null) this.takeFromTop(this.storage, setting);
    this.make(drink, setting);
    // A takeaway cup takes nothing from the shelf.
    if (setting !== TAKEAWAY_CUP) this.flow.shelfLower();
  }

  private make(drink: number, setting: number): void {
    const { now, day, calendar } = this.flow;
    const making = day.makeMs[drink]!;
    this.setting[drink] = setting;
    this.waitedMs += now - this.orderedAt[drink]!;
    this.started += 1;
    this.makers.hold(now, making);
    calendar.schedule(now + making, EVENT.drinkDone, drink);
  }
}
