/** A part rack goes if a fixed time has come since it was opened; the floor releases racks at those times. */
import { OldestFirst, type Yard } from '../load-rule.js';

export class FixedTimes extends OldestFirst {
  readonly name = 'fixed times';

  mayGo(rack: number, { bench }: Yard): boolean {
    return bench.released[rack] === 1;
  }
}
