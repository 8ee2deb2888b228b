/** A part rack goes while it holds a ware of which the shelf is down to its low-water mark; oldest first. */
import type { CafeModel } from '../../model.js';
import { OldestFirst, type Yard } from '../load-rule.js';

export class LowShelf extends OldestFirst {
  readonly name = 'low shelf';
  private readonly marks: readonly (number | null)[];

  constructor(model: CafeModel) {
    super();
    this.marks = model.ware.map((ware) => ware.lowWater);
  }

  mayGo(rack: number, { bench, ledger }: Yard): boolean {
    const row = rack * bench.wareCount;
    return this.marks.some(
      (mark, ware) => mark !== null && bench.pieces[row + ware]! > 0 && ledger.shelf(ware) <= mark,
    );
  }
}
