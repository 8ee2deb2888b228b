/** At set times all part racks may go, those that then are too little filled as soon as they are filled enough. */
import { grown } from '../../day.js';
import type { CafeModel } from '../../model.js';
import { Recurrence } from '../../recurrence.js';
import { LeastFill } from '../least-fill.js';
import { NEVER, NO_RACK, OldestFirst, type RuleEntry, type RuleView } from '../load-rule.js';

class FixedTimes extends OldestFirst {
  readonly name = 'fixed times';
  private readonly times: Recurrence;
  private readonly fill: LeastFill;
  /** By rack: 1 once a time has come since it was opened. */
  private released = new Uint8Array(32);

  constructor({ washing }: CafeModel, seed: string) {
    super();
    this.times = new Recurrence(washing.partLoadsEvery!, seed, 'part-load times');
    this.fill = new LeastFill(washing.partLoadFrom);
  }

  override open(day: number): number {
    return this.times.first(day);
  }

  override rackOpened(rack: number): number {
    if (rack >= this.released.length)
      this.released = grown(this.released, new Uint8Array(rack * 2));
    this.released[rack] = 0;
    return NEVER;
  }

  override called({ bench, now, moreToCome }: RuleView): number {
    let any = false;
    for (let family = 0; family < bench.openRack.length; family += 1) {
      const rack = bench.openRack[family]!;
      if (rack === NO_RACK) continue;
      this.released[rack] = 1;
      any ||= this.fill.met(rack, bench);
    }
    // The last time of the day is one that finds no rack to wash, with nothing more to come.
    return any || moreToCome ? this.times.next(now) : NEVER;
  }

  mayGo(rack: number, { bench }: RuleView): boolean {
    return this.released[rack] === 1 && this.fill.met(rack, bench);
  }
}

export const fixedTimes: RuleEntry = {
  name: 'fixed times',
  applies: ({ washing }) => washing.partLoadsEvery !== null,
  make: (model, seed) => new FixedTimes(model, seed),
  looksAtShelf: false,
};
