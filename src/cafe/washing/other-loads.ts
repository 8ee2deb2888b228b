/**
 * Other loads: racks of food ware that arrive from the kitchen at a rate an hour, strictly before
 * closing. Regular: the k-th when the accumulated rate reaches k. They use none of our racks.
 */
import type { Calendar } from '../../engine/calendar.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { wholeMs } from '../../engine/durations.js';
import { EVENT } from '../events.js';
import type { OtherLoadsModel } from '../model.js';

export class OtherLoads {
  private readonly gaps: Stream;
  private step = 0;
  private accumulated = 0;
  private wanted = 0;
  private from = 0;

  constructor(
    private readonly rules: OtherLoadsModel,
    private readonly closingMs: number,
    seed: string,
  ) {
    this.gaps = new Stream(streamKey(seed, 'other loads'));
  }

  open(day: number, calendar: Calendar): void {
    this.gaps.toDay(day);
    this.step = this.accumulated = this.wanted = this.from = 0;
    this.scheduleNext(calendar);
  }

  /** Put the next arrival, if one comes today, into the calendar. */
  scheduleNext(calendar: Calendar): void {
    const moment = this.next();
    if (moment >= 0) calendar.schedule(moment, EVENT.otherLoad, 0);
  }

  /** Moment of the next arrival, ms; -1 when no more come today. */
  private next(): number {
    const { steps } = this.rules;
    this.wanted += this.rules.arrivals === 'regular' ? 1 : this.gaps.exponential();
    while (this.step < steps.length) {
      const { untilMs, racksPerMs } = steps[this.step]!;
      const atEnd = this.accumulated + racksPerMs * (untilMs - this.from);
      // A whisker of tolerance, as a rate times a time is not always the whole number it stands for.
      if (racksPerMs > 0 && this.wanted <= atEnd + 1e-9) {
        const moment = wholeMs(this.from + (this.wanted - this.accumulated) / racksPerMs);
        if (moment < this.closingMs) return moment;
        return -1;
      }
      this.accumulated = atEnd;
      this.from = untilMs;
      this.step += 1;
    }
    return -1;
  }
}
