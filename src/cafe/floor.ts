/**
 * The floor: one day of the café, from opening until nothing more is to come.
 *
 * The stages hold the rules; the floor holds them together and asks the calendar what happens next.
 * Given a day of guests the run is fixed, but for the drawn times of machines, trips and drying, which
 * have streams of their own.
 */
import { Calendar, RANKS } from '../engine/calendar.js';
import type { Bench } from './bench.js';
import { Clearing } from './clearing.js';
import { Counter } from './counter.js';
import type { Day } from './day.js';
import type { Flow } from './flow.js';
import { Ledger } from './ledger.js';
import type { CafeModel } from './model.js';
import { MOMENT } from './moments.js';
import { People } from './people.js';
import { DRYING, POLISHING, SHELF } from './places.js';
import { Polishing } from './polishing.js';
import { Seats } from './seats.js';
import { Settings } from './settings.js';
import { Storage } from './storage.js';
import { Tables } from './tables.js';
import { OtherLoads } from './washing/other-loads.js';
import { Washing } from './washing/washing.js';

/** Somebody who looks on: told before each event how far the clock is about to go. */
export interface Watcher {
  /** @param nextMs moment of the coming event; Infinity once the day is over. */
  before(nextMs: number, floor: Floor): void;
}

export class Floor implements Flow {
  readonly calendar = new Calendar();
  readonly ledger: Ledger;
  readonly settings: Settings;
  readonly makers: People;
  readonly clearers: People;
  readonly hands: People;
  readonly seats: Seats;
  readonly counter: Counter;
  readonly tables: Tables;
  readonly clearing: Clearing;
  readonly bench: Bench;
  readonly washing: Washing;
  readonly polishing: Polishing;
  /** Null where the shelf is one place. */
  readonly storage: Storage | null;
  day!: Day;
  now = 0;
  /** Guests who chose to take away. */
  guestsTookAway = 0;

  private readonly others: OtherLoads | null;
  private arrived = 0;
  /** By party: 1 once it has sat down. */
  private seatedParty = new Uint8Array(256);
  /** Events in the calendar that only keep a rhythm: they are no reason to go on. */
  private rhythms = 0;
  private readonly handsAreMakers: boolean;

  constructor(
    readonly model: CafeModel,
    seed: string,
  ) {
    const { closingMs, washing } = model;
    this.ledger = new Ledger(model.ware.length);
    this.settings = new Settings(model);
    this.makers = new People(model.makers, closingMs);
    this.clearers = new People(model.clearing.clearers, closingMs);
    this.handsAreMakers = washing.hands === 'makers';
    this.hands =
      washing.hands === 'makers'
        ? this.makers
        : washing.hands === 'clearers'
          ? this.clearers
          : new People(washing.hands, closingMs);
    this.seats = new Seats(model.seats, closingMs, this);
    this.storage = model.storage
      ? new Storage(model.storage, seed, closingMs, this.makers, this.settings, this)
      : null;
    this.counter = new Counter(model, this.settings, this.makers, this.storage, this);
    this.tables = new Tables(this.settings, this);
    this.clearing = new Clearing(
      model.clearing,
      model.seats.heldUntilCleared,
      seed,
      this.tables,
      this.clearers,
      this,
    );
    this.washing = new Washing(model, seed, this.hands, this);
    this.bench = this.washing.bench;
    this.polishing = new Polishing(model, seed, this.hands, this);
    this.others = washing.otherLoads && new OtherLoads(washing.otherLoads, closingMs, seed);
  }

  /**
   * Run one day. `number` is the day's number, for the streams of machines and hands; `stock` gives
   * pieces by ware, null unlimited ware. What happened is read off the stages afterwards.
   */
  run(
    day: Day,
    number: number,
    stock: ArrayLike<number> | null,
    watcher: Watcher | null = null,
  ): void {
    this.open(day, number, stock);
    const { calendar, ledger } = this;
    let arrivalKey = this.nextArrivalKey();
    for (;;) {
      if (watcher !== null)
        watcher.before(Math.floor(Math.min(calendar.nextKey(), arrivalKey) / RANKS), this);
      if (calendar.takeBefore(arrivalKey)) {
        this.now = ledger.now = calendar.time;
        this.happen(calendar.rank, calendar.payload);
      } else {
        if (arrivalKey === Infinity) return;
        const party = this.arrived;
        this.now = ledger.now = day.arrivalMs[party]!;
        this.arrived = party + 1;
        this.arrive(party);
        arrivalKey = this.nextArrivalKey();
      }
    }
  }

  private nextArrivalKey(): number {
    return this.arrived < this.day.parties
      ? this.day.arrivalMs[this.arrived]! * RANKS + MOMENT.arrival
      : Infinity;
  }

  private open(day: Day, number: number, stock: ArrayLike<number> | null): void {
    this.day = day;
    if (day.parties > this.seatedParty.length) this.seatedParty = new Uint8Array(day.parties * 2);
    this.now = this.arrived = this.rhythms = this.guestsTookAway = 0;
    this.calendar.clear();
    this.ledger.open(stock);
    for (const people of [this.makers, this.clearers, this.hands]) people.open();
    this.seats.open();
    this.counter.open();
    this.tables.open();
    this.bench.open();
    this.storage?.open(number);
    this.polishing.open(number);
    this.washing.open(number);
    this.clearing.open(number);
    if (this.model.clearing.everyMs !== null) this.beat(MOMENT.round, this.model.clearing.everyMs);
    if (this.model.washing.partLoadsEveryMs !== null)
      this.beat(MOMENT.partLoadTime, this.model.washing.partLoadsEveryMs);
    if (this.others !== null) {
      this.others.open(number);
      this.scheduleOther(this.others);
    }
  }

  private happen(rank: number, payload: number): void {
    switch (rank) {
      case MOMENT.piecesReturn:
        return this.piecesReturn(payload);
      case MOMENT.polished:
        this.polishing.done(payload);
        this.storage?.returned(
          payload % this.model.ware.length,
          Math.floor(payload / this.model.ware.length),
        );
        return this.shelfFuller();
      case MOMENT.fetched:
        this.storage!.fetched(payload);
        return this.peopleFree();
      case MOMENT.unloaded:
        return this.washing.unloaded(payload);
      case MOMENT.cycleDone:
        return this.washing.cycleDone(payload);
      case MOMENT.loaded:
        return this.washing.loaded(payload);
      case MOMENT.machineChanges:
        return this.washing.machineChanges(payload);
      case MOMENT.tripEnds:
        return this.clearing.tripEnds(payload);
      case MOMENT.leave:
        return this.tables.leave(payload);
      case MOMENT.drinkDone:
        this.counter.done(payload);
        return this.handsAreMakers ? this.peopleFree() : this.counter.work();
      case MOMENT.round:
        this.rhythms -= 1;
        this.clearing.round();
        if (this.clearing.goesOn) this.beat(MOMENT.round, this.model.clearing.everyMs!);
        return;
      case MOMENT.partLoadWait:
        return this.washing.work();
      case MOMENT.partLoadTime:
        this.rhythms -= 1;
        if (this.washing.releasePartRacks() || this.moreToCome)
          this.beat(MOMENT.partLoadTime, this.model.washing.partLoadsEveryMs!);
        return;
      case MOMENT.seatWait:
        return this.seats.giveUp(payload);
      case MOMENT.otherLoad:
        this.scheduleOther(this.others!);
        return this.washing.otherArrives();
      case MOMENT.secondOrder:
        if (this.tables.orderSecond(payload)) this.ordered(payload);
        return;
      default:
        throw new Error(`no stage knows what to do with rank ${rank}`);
    }
  }

  private arrive(party: number): void {
    if (this.day.staysIn[party] === 1) return this.seats.arrive(party);
    this.guestsTookAway += this.day.size[party]!;
    this.seatedParty[party] = 0;
    this.orderFirstRound(party);
  }

  private orderFirstRound(party: number): void {
    const { day } = this;
    const to = day.firstSecond[party]!;
    for (let drink = day.firstDrink[party]!; drink < to; drink += 1) this.counter.join(drink);
    this.counter.work();
  }

  private scheduleOther(others: OtherLoads): void {
    const moment = others.next();
    if (moment >= 0) this.calendar.schedule(moment, MOMENT.otherLoad, 0);
  }

  private beat(rank: number, everyMs: number): void {
    this.rhythms += 1;
    this.calendar.schedule(this.now + everyMs, rank, 0);
  }

  /** What dries at one moment comes back together, before anyone is served from it. */
  private piecesReturn(payload: number): void {
    const { calendar, ledger } = this;
    const key = calendar.time * RANKS + calendar.rank;
    let lot = payload;
    for (;;) {
      const wares = this.model.ware.length;
      const ware = lot % wares;
      const pieces = (lot - ware) / wares;
      if (this.polishing.polishes(ware)) {
        ledger.move(ware, DRYING, POLISHING, pieces);
        this.polishing.join(lot);
      } else {
        ledger.move(ware, DRYING, SHELF, pieces);
        this.storage?.returned(ware, pieces);
      }
      if (calendar.nextKey() !== key) break;
      calendar.take();
      lot = calendar.payload;
    }
    this.shelfFuller();
  }

  private shelfFuller(): void {
    if (this.polishing.used) this.peopleFree();
    else this.counter.work();
  }

  // What the stages ask of one another.

  get moreToCome(): boolean {
    return this.calendar.size > this.rhythms || this.arrived < this.day.parties;
  }

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

  ordered(drink: number): void {
    this.counter.join(drink);
    this.counter.work();
  }

  served(drink: number, setting: number): void {
    if (this.inHouse(this.day.party[drink]!)) this.tables.serve(drink, setting);
  }

  seatsFree(guests: number): void {
    this.seats.giveBack(guests);
  }

  tableLeft(party: number): void {
    this.clearing.tableLeft(party);
  }

  toBench(ware: number): void {
    this.bench.receive(ware);
  }

  benchFilled(): void {
    this.peopleFree();
  }

  racksFree(): void {
    this.bench.rackLoose();
    this.washing.work();
  }

  shelfLower(): void {
    this.washing.work();
  }

  peopleFree(): void {
    this.washing.work();
    if (this.polishing.used) this.polishing.work();
    this.storage?.work();
    this.counter.work();
  }
}
