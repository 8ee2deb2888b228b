/** A part rack goes once its oldest piece has been on the bench for the part-load wait; oldest first. */
import { OldestFirst, type Yard } from '../load-rule.js';

export class Waited extends OldestFirst {
  readonly name = 'waited';

  constructor(private readonly waitMs: number) {
    super();
  }

  mayGo(rack: number, { bench, ledger }: Yard): boolean {
    return ledger.now - bench.since[rack]! >= this.waitMs;
  }
}
