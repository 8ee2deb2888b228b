/** A part rack goes while it holds a ware of which the shelf is down to its low-water mark; oldest first. */
import type { CafeModel } from '../../model.js';
import { OldestFirst, type RuleEntry, type RuleView, type Wake } from '../load-rule.js';

class LowShelf extends OldestFirst {
  readonly name = 'low shelf';
  override readonly wakes: readonly Wake[] = ['shelf lower'];
  private readonly marks: readonly (number | null)[];

  constructor(model: CafeModel) {
    super();
    this.marks = model.ware.map((ware) => ware.lowWater);
  }

  mayGo(rack: number, view: RuleView): boolean {
    const { pieces, wareCount } = view.bench;
    const row = rack * wareCount;
    for (let ware = 0; ware < wareCount; ware += 1) {
      const mark = this.marks[ware]!;
      if (mark !== null && pieces[row + ware]! > 0 && view.shelf(ware) <= mark) return true;
    }
    return false;
  }
}

export const lowShelf: RuleEntry = {
  name: 'low shelf',
  applies: (model) => model.ware.some((ware) => ware.lowWater !== null),
  make: (model) => new LowShelf(model),
  looksAtShelf: true,
};
