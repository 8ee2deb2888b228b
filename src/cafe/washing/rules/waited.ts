/**
 * A part rack goes once its oldest piece has been on the bench for the part-load wait; oldest first. A wait
 * that varies is drawn when the rack takes its first piece.
 */
import { Duration } from '../../../engine/durations.js';
import { Stream, streamKey } from '../../../engine/streams.js';
import { grown } from '../../day.js';
import type { CafeModel } from '../../model.js';
import { LeastFill } from '../least-fill.js';
import { NEVER, OldestFirst, type RuleEntry, type RuleView } from '../load-rule.js';

class Waited extends OldestFirst {
  readonly name = 'waited';
  private readonly wait: Duration;
  private readonly fill: LeastFill;
  private readonly waits: Stream;
  /** By rack: when its wait is over, ms. */
  private due = new Float64Array(32);

  constructor({ washing }: CafeModel, seed: string) {
    super();
    this.wait = new Duration(washing.partLoadWait!);
    this.fill = new LeastFill(washing.partLoadFrom);
    this.waits = new Stream(streamKey(seed, 'part-load waits'));
  }

  override open(day: number): number {
    if (!this.wait.constant) this.waits.toDay(day);
    return NEVER;
  }

  override rackOpened(rack: number, { bench, now }: RuleView): number {
    if (rack >= this.due.length) this.due = grown(this.due, new Float64Array(rack * 2));
    const due = bench.since[rack]! + this.wait.draw(this.waits);
    this.due[rack] = due;
    return due > now ? due : NEVER;
  }

  mayGo(rack: number, { bench, now }: RuleView): boolean {
    return now >= this.due[rack]! && this.fill.met(rack, bench);
  }
}

export const waited: RuleEntry = {
  name: 'waited',
  applies: ({ washing }) => washing.partLoadWait !== null,
  make: (model, seed) => new Waited(model, seed),
  looksAtShelf: false,
};
