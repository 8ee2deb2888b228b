/**
 * Clearing: at once on leaving, or in rounds.
 *
 * A round is walked by one free clearer, trip after trip, until no table is dirty; a timed round that finds
 * no free clearer is skipped. Tables are cleared in the order of leaving and a table may be split. Beside the
 * timed rounds there is at most one extra round at a time, when enough lies dirty or a party waits for seats
 * that a dirty table holds: looked at when a party leaves and when a clearer becomes free.
 */
import { Duration } from '../engine/durations.js';
import { Stream, streamKey } from '../engine/streams.js';
import { grown } from './day.js';
import type { Flow } from './flow.js';
import { EVENT } from './events.js';
import type { ClearingModel } from './model.js';
import type { People } from './people.js';
import { BENCH, CARRIED, DIRTY_TABLE } from './places.js';
import { Recurrence } from './recurrence.js';
import type { Tables } from './tables.js';

const NOBODY: readonly number[] = [];
const NONE = -1;

/** What one clearer carries: pieces in the order picked up, and parties whose last piece is among them. */
interface Trip {
  pieces: Int32Array;
  count: number;
  readonly parties: number[];
}

export class Clearing {
  /** Trips walked, and the pieces carried on them. */
  trips = 0;
  private dirty = new Int32Array(256);
  private head = 0;
  private tail = 0;
  private readonly carrying: Trip[] = [];
  private readonly idle: number[] = [];
  private readonly duration: Duration;
  private readonly most: number;
  private readonly durations: Stream;
  private readonly rounds: Recurrence | null;
  /** The clearer on an extra round. */
  private extra = NONE;
  private readonly extras: boolean;

  constructor(
    private readonly rules: ClearingModel,
    private readonly heldUntilCleared: boolean,
    seed: string,
    private readonly tables: Tables,
    private readonly clearers: People,
    private readonly flow: Flow,
  ) {
    this.duration = new Duration(rules.trip);
    this.most = rules.tripPieces ?? Infinity;
    this.durations = new Stream(streamKey(seed, 'clearing trips'));
    this.rounds = rules.every && new Recurrence(rules.every, seed, 'clearing rounds');
    this.extras = rules.whenDirty !== null || rules.forSeats;
  }

  open(day: number): void {
    const { parties } = this.flow.day;
    if (parties > this.dirty.length) this.dirty = new Int32Array(parties * 2);
    this.head = this.tail = 0;
    this.trips = 0;
    this.idle.length = 0;
    for (let clearer = this.carrying.length - 1; clearer >= 0; clearer -= 1)
      this.idle.push(clearer);
    if (!this.duration.constant) this.durations.toDay(day);
    this.extra = NONE;
    if (this.rounds !== null) this.flow.recur(this.rounds.first(day), EVENT.round, 0);
  }

  /** A party has left: its seats, and its pieces if there are any. */
  tableLeft(party: number): void {
    const { tables, flow } = this;
    const guests = flow.day.size[party]!;
    if (!tables.hasPieces(party)) {
      flow.seatsFree(guests);
      this.extraRound();
      return;
    }
    if (this.rounds === null) {
      do {
        const ware = tables.pickUp(party);
        flow.ledger.move(ware, DIRTY_TABLE, BENCH, 1);
        flow.toBench(ware);
      } while (tables.hasPieces(party));
      flow.benchFilled();
      flow.seatsFree(guests);
      return;
    }
    this.dirty[this.tail] = party;
    this.tail += 1;
    if (!this.heldUntilCleared) flow.seatsFree(guests);
    this.extraRound();
  }

  /** The moment of a timed round. Rounds go on, also after closing, while there is anything to clear or that may become so. */
  round(): void {
    if (this.head < this.tail && this.clearers.free > 0) this.sendOut();
    if (this.head < this.tail || this.flow.moreToCome)
      this.flow.recur(this.rounds!.next(this.flow.now), EVENT.round, 0);
  }

  /** A party has left or a clearer has become free: an extra round, if it is called for and nobody is on one. */
  extraRound(): void {
    if (!this.extras || this.extra !== NONE) return;
    if (this.head === this.tail || this.clearers.free === 0) return;
    const { whenDirty, forSeats } = this.rules;
    if (
      (whenDirty !== null && this.flow.ledger.at(DIRTY_TABLE) >= whenDirty) ||
      (forSeats && this.flow.partiesWaiting > 0)
    )
      this.extra = this.sendOut();
  }

  /** A clearer puts the pieces on the bench and, if tables are dirty, sets out again. */
  tripEnds(clearer: number): void {
    const { flow } = this;
    const trip = this.carrying[clearer]!;
    this.clearers.release();
    flow.ledger.observer?.tripEnded(clearer);
    for (let at = 0; at < trip.count; at += 1) {
      const ware = trip.pieces[at]!;
      flow.ledger.move(ware, CARRIED, BENCH, 1);
      flow.toBench(ware);
    }
    // The same clearer goes on before anyone else asks for a hand.
    const cleared = this.heldUntilCleared ? trip.parties.splice(0) : NOBODY;
    if (this.head < this.tail) this.setOut(clearer);
    else {
      this.idle.push(clearer);
      if (this.extra === clearer) this.extra = NONE;
    }
    flow.benchFilled();
    for (const party of cleared) flow.seatsFree(flow.day.size[party]!);
  }

  /** A free clearer sets out on a round; its number. */
  private sendOut(): number {
    const clearer =
      this.idle.pop() ??
      this.carrying.push({ pieces: new Int32Array(64), count: 0, parties: [] }) - 1;
    this.setOut(clearer);
    return clearer;
  }

  private setOut(clearer: number): void {
    const { flow, tables } = this;
    const trip = this.carrying[clearer]!;
    trip.count = 0;
    while (trip.count < this.most && this.head < this.tail) {
      const party = this.dirty[this.head]!;
      const ware = tables.pickUp(party);
      if (trip.count === trip.pieces.length)
        trip.pieces = grown(trip.pieces, new Int32Array(trip.count * 2));
      trip.pieces[trip.count] = ware;
      trip.count += 1;
      flow.ledger.move(ware, DIRTY_TABLE, CARRIED, 1);
      if (!tables.hasPieces(party)) {
        if (this.heldUntilCleared) trip.parties.push(party);
        this.head += 1;
      }
    }
    this.trips += 1;
    flow.ledger.observer?.tripBegan(clearer, trip.pieces.subarray(0, trip.count));
    const time = this.duration.draw(this.durations);
    this.clearers.hold(flow.now, time);
    flow.calendar.schedule(flow.now + time, EVENT.tripEnds, clearer);
  }
}
