/**
 * Looking on at a day: what a picture needs that sums cannot give. Watchers of the floor; they read and
 * never change anything, so a watched day is the same day.
 */
import { Floor, type Watcher } from './floor.js';
import { PLACE_COUNT, SHELF } from './places.js';

/** Counts of things on the floor at one moment. */
export interface Glance {
  readonly seatsTaken: number;
  readonly partiesInLine: number;
  readonly drinksWaiting: number;
  readonly racksWaiting: number;
  readonly machinesBusy: number;
  readonly makersBusy: number;
  readonly handsBusy: number;
  readonly clearersBusy: number;
}

export function glance(floor: Floor): Glance {
  const { seats, counter, washing, model } = floor;
  const { makers, hands, clearers } = floor.staff;
  return {
    seatsTaken: model.seats.count === null ? seats.guestsInHouse : model.seats.count - seats.free,
    partiesInLine: seats.waiting,
    drinksWaiting: counter.waiting,
    racksWaiting: washing.waiting,
    machinesBusy: washing.machines.working,
    makersBusy: makers.working,
    handsBusy: hands.working,
    clearersBusy: clearers.working,
  };
}

/** Calls `look` at first, first + step, ... with the state after all events up to that moment, up to `untilMs`. */
export class EveryStep implements Watcher {
  private nextLook: number;
  private step = 0;

  constructor(
    private readonly stepMs: number,
    private readonly untilMs: number,
    private readonly look: (step: number, floor: Floor) => void,
    private readonly firstMs = 0,
  ) {
    this.nextLook = firstMs;
  }

  before(nextMs: number, floor: Floor): void {
    while (this.nextLook < nextMs && this.nextLook <= this.untilMs) {
      this.look(this.step, floor);
      this.step += 1;
      this.nextLook += this.stepMs;
    }
  }

  /** Ready for the next day. */
  rewind(): void {
    this.nextLook = this.firstMs;
    this.step = 0;
  }
}

/** Two that look on at the same day. */
export class Both implements Watcher {
  constructor(
    private readonly one: Watcher,
    private readonly other: Watcher,
  ) {}

  before(nextMs: number, floor: Floor): void {
    this.one.before(nextMs, floor);
    this.other.before(nextMs, floor);
  }
}

/** Remembers where all pieces were when most of one ware were off the shelf for the first time. */
export class Tightest implements Watcher {
  atMs = 0;
  counts: Int32Array = new Int32Array(0);
  private fewest = Infinity;

  constructor(private readonly ware: number) {}

  before(_nextMs: number, floor: Floor): void {
    const onShelf = floor.ledger.counts[this.ware * PLACE_COUNT + SHELF]!;
    if (onShelf >= this.fewest) return;
    this.fewest = onShelf;
    this.atMs = floor.now;
    this.counts = floor.ledger.counts.slice();
  }
}
