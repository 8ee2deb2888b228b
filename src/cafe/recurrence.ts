/**
 * What people do again and again: clearing rounds, part loads at set times.
 *
 * A constant interval is kept to the millisecond: at every multiple from opening. A varying one is drawn
 * afresh each time, at least a second; the first time falls a uniform share of an interval after opening
 * (the interval is drawn first, then the share), as nobody starts the day at a fixed point of the habit.
 */
import { Duration, wholeMs, type DurationLaw } from '../engine/durations.js';
import { Stream, streamKey } from '../engine/streams.js';

const LEAST_MS = 1000;

export class Recurrence {
  private readonly interval: Duration;
  private readonly stream: Stream;

  /** @param purpose names the stream of its own that varying intervals are drawn from */
  constructor(every: DurationLaw, seed: string, purpose: string) {
    this.interval = new Duration(every);
    this.stream = new Stream(streamKey(seed, purpose));
  }

  /** The first time of a day, ms from opening. */
  first(day: number): number {
    if (this.interval.constant) return this.interval.draw(this.stream);
    this.stream.toDay(day);
    const interval = this.drawn();
    return wholeMs(interval * this.stream.uniform());
  }

  /** The time after `now`, ms from opening. */
  next(now: number): number {
    return now + (this.interval.constant ? this.interval.draw(this.stream) : this.drawn());
  }

  private drawn(): number {
    return Math.max(LEAST_MS, this.interval.draw(this.stream));
  }
}
