/**
 * Polishing by hand, before the shelf, for ware that asks for it. What dries at one moment is polished
 * as one lot by one hand; lots wait in the order in which they dried.
 */
import { Duration } from '../engine/durations.js';
import { Stream, streamKey } from '../engine/streams.js';
import type { Flow } from './flow.js';
import { EVENT } from './events.js';
import type { CafeModel } from './model.js';
import type { People } from './people.js';
import { POLISHING, SHELF } from './places.js';

export class Polishing {
  /** Hand-milliseconds of polishing. */
  handMs = 0;
  readonly used: boolean;
  private readonly times: readonly (Duration | null)[];
  private readonly stream: Stream;
  private readonly lots: number[] = [];

  constructor(
    private readonly model: CafeModel,
    seed: string,
    private readonly hands: People,
    private readonly flow: Flow,
  ) {
    this.times = model.ware.map((ware) => ware.polishing && new Duration(ware.polishing));
    this.used = this.times.some((time) => time !== null);
    this.stream = new Stream(streamKey(seed, 'polishing'));
  }

  open(day: number): void {
    this.stream.toDay(day);
    this.lots.length = 0;
    this.handMs = 0;
  }

  polishes(ware: number): boolean {
    return this.times[ware] !== null;
  }

  /** A lot (pieces × number of ware + ware) waits for a hand. */
  join(lot: number): void {
    this.lots.push(lot);
  }

  /** Free hands take up lots. */
  work(): void {
    while (this.hands.free > 0 && this.lots.length > 0) {
      const lot = this.lots.shift()!;
      const wares = this.model.ware.length;
      const time = this.times[lot % wares]!;
      let total = 0;
      for (let piece = Math.floor(lot / wares); piece > 0; piece -= 1)
        total += time.draw(this.stream);
      this.hands.hold(this.flow.now, total);
      this.handMs += total;
      this.flow.calendar.schedule(this.flow.now + total, EVENT.polished, lot);
    }
  }

  /** A lot is done: to the shelf. */
  done(lot: number): void {
    const wares = this.model.ware.length;
    this.hands.release();
    this.flow.ledger.move(lot % wares, POLISHING, SHELF, Math.floor(lot / wares));
  }
}
