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
import { FloorView } from './floor-view.js';
import type { Flow } from './flow.js';
import { Ledger } from './ledger.js';
import type { CafeModel } from './model.js';
import { EVENT } from './events.js';
import { Polishing } from './polishing.js';
import { Returning } from './returning.js';
import { Seats } from './seats.js';
import { Settings } from './settings.js';
import { Staff } from './staff.js';
import { Storage } from './storage.js';
import { Tables } from './tables.js';
import { MOST_EVENTS, tooManyEvents } from './too-much.js';
import { Visits } from './visits.js';
import { OtherLoads } from './washing/other-loads.js';
import { wakesOf, type Wake } from './washing/load-rule.js';
import { isBreakdown, Washing } from './washing/washing.js';

/** Somebody who looks on: notified before each event how far the clock is about to go. */
export interface Watcher {
  /** @param nextMs moment of the coming event; Infinity once the day is over. */
  before(nextMs: number, floor: Floor): void;
}

export class Floor implements Flow {
  readonly calendar = new Calendar();
  readonly ledger: Ledger;
  readonly settings: Settings;
  readonly staff: Staff;
  readonly seats: Seats;
  readonly counter: Counter;
  readonly tables: Tables;
  readonly visits: Visits;
  readonly clearing: Clearing;
  readonly bench: Bench;
  readonly washing: Washing;
  readonly polishing: Polishing;
  private readonly returning: Returning;
  /** Null where the shelf is one place. */
  readonly storage: Storage | null;
  day!: Day;
  now = 0;
  /** Events of the day so far. */
  happened = 0;

  private readonly others: OtherLoads | null;
  private number = 0;
  private arrived = 0;
  /** Events in the calendar that only keep a habit going: they are no reason to go on. */
  private recurring = 0;
  /** What wakes a rule of the part racks beside the events that always do. */
  private readonly wakes: Readonly<Record<Wake, boolean>>;

  constructor(
    readonly model: CafeModel,
    seed: string,
  ) {
    const { closingMs, washing } = model;
    this.ledger = new Ledger(model.ware.length);
    this.settings = new Settings(model);
    const { makers, clearers, hands } = (this.staff = new Staff(model));
    this.seats = new Seats(model.seats, closingMs, this);
    this.storage = model.storage
      ? new Storage(model.storage, seed, closingMs, makers, this.settings, this)
      : null;
    this.counter = new Counter(model, this.settings, makers, this.storage, this);
    this.tables = new Tables(this.settings, this);
    this.visits = new Visits(this.seats, this.tables, this.counter);
    this.clearing = new Clearing(
      model.clearing,
      model.seats.heldUntilCleared,
      seed,
      this.tables,
      clearers,
      this,
    );
    this.washing = new Washing(model, seed, hands, new FloorView(this), this);
    this.bench = this.washing.bench;
    this.wakes = wakesOf(this.washing.rules);
    this.polishing = new Polishing(model, seed, hands, this);
    this.returning = new Returning(model.ware.length, this.polishing, this.storage, this);
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
    while (!this.advance(MOST_EVENTS, watcher));
  }

  /**
   * Go on with the day that was opened.
   * @param most events after which to pause
   * @returns whether the day is over
   * @throws an error that `isTooMuch` knows, for a day of more than MOST_EVENTS
   */
  advance(most: number, watcher: Watcher | null = null): boolean {
    const { calendar, ledger, day } = this;
    if (this.happened >= MOST_EVENTS) throw tooManyEvents(this.number);
    const events = Math.min(most, MOST_EVENTS - this.happened);
    let arrivalKey = this.nextArrivalKey();
    for (let event = 0; event < events; event += 1) {
      if (watcher !== null)
        watcher.before(Math.floor(Math.min(calendar.nextKey(), arrivalKey) / RANKS), this);
      if (calendar.takeBefore(arrivalKey)) {
        this.now = ledger.now = calendar.time;
        this.happen(calendar.rank, calendar.payload);
      } else {
        if (arrivalKey === Infinity) {
          this.happened += event;
          return true;
        }
        const party = this.arrived;
        this.now = ledger.now = day.arrivalMs[party]!;
        this.arrived = party + 1;
        this.visits.arrive(party);
        arrivalKey = this.nextArrivalKey();
      }
    }
    this.happened += events;
    return false;
  }

  private nextArrivalKey(): number {
    return this.arrived < this.day.parties
      ? this.day.arrivalMs[this.arrived]! * RANKS + EVENT.arrival
      : Infinity;
  }

  /** Open a day, to be gone on with by `advance`. */
  open(day: Day, number: number, stock: ArrayLike<number> | null): void {
    this.day = day;
    this.number = number;
    this.happened = 0;
    this.visits.open(day);
    this.now = this.arrived = this.recurring = 0;
    this.calendar.clear();
    this.ledger.open(stock);
    this.staff.open();
    this.seats.open();
    this.counter.open();
    this.tables.open();
    this.bench.open();
    this.storage?.open(number);
    this.polishing.open(number);
    this.washing.open(number);
    this.clearing.open(number);
    this.others?.open(number, this.calendar);
  }

  private happen(rank: number, payload: number): void {
    switch (rank) {
      case EVENT.piecesReturn:
        return this.returning.dried(payload);
      case EVENT.polished:
        return this.returning.polished(payload);
      case EVENT.fetched:
        this.storage!.fetched(payload);
        return this.dispatchStaff();
      case EVENT.unloaded:
        return this.washing.unloaded(payload);
      case EVENT.cycleDone:
        return this.washing.cycleDone(payload);
      case EVENT.loaded:
        return this.washing.loaded(payload);
      case EVENT.machineChanges:
        if (isBreakdown(payload)) this.recurring -= 1;
        return this.washing.machineChanges(payload);
      case EVENT.tripEnds:
        return this.clearing.tripEnds(payload);
      case EVENT.leave:
        this.tables.leave(payload);
        if (this.wakes['party leaves']) this.washing.work();
        return;
      case EVENT.drinkDone:
        this.counter.done(payload);
        if (this.staff.handsAreMakers) this.dispatchStaff();
        else this.counter.work();
        if (this.wakes['drink done']) this.washing.work();
        return;
      case EVENT.round:
        this.recurring -= 1;
        return this.clearing.round();
      case EVENT.partLoadWait:
        return this.washing.work();
      case EVENT.ruleCalled:
        this.recurring -= 1;
        return this.washing.ruleCalled(payload);
      case EVENT.seatWait:
        return this.seats.giveUp(payload);
      case EVENT.otherLoad:
        this.others!.scheduleNext(this.calendar);
        return this.washing.otherArrives();
      case EVENT.secondOrder:
        if (this.tables.orderSecond(payload)) this.ordered(payload);
        return;
      default:
        throw new Error(`no stage knows what to do with rank ${rank}`);
    }
  }

  // What the stages ask of one another.

  get moreToCome(): boolean {
    return this.calendar.size > this.recurring || this.arrived < this.day.parties;
  }

  inHouse(party: number): boolean {
    return this.visits.inHouse(party);
  }

  seated(party: number): void {
    this.visits.seated(party);
  }

  takesAway(party: number): void {
    this.visits.takesAway(party);
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

  racksFree(): void {
    this.bench.rackLoose();
    this.washing.work();
  }

  shelfFuller(): void {
    if (this.polishing.used) this.dispatchStaff();
    else this.counter.work();
  }

  shelfLower(): void {
    if (this.wakes['shelf lower']) this.washing.work();
  }

  dispatchStaff(): void {
    this.washing.work();
    if (this.polishing.used) this.polishing.work();
    this.storage?.work();
    this.counter.work();
  }

  handFree(): void {
    this.dispatchStaff();
    if (this.staff.handsAreClearers) this.clearing.extraRound();
  }

  recur(moment: number, rank: number, payload: number): void {
    this.recurring += 1;
    this.calendar.schedule(moment, rank, payload);
  }

  get partiesWaiting(): number {
    return this.seats.waiting;
  }

  benchFilled(): void {
    this.dispatchStaff();
  }
}
