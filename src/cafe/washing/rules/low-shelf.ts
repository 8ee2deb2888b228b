/** A part rack goes while it holds a ware of which the shelf is down to its low-water mark; oldest first. */
import type { CafeModel } from '../../model.js';
import { oldestOpen, type LoadRule } from '../load-rule.js';

export function lowShelf(model: CafeModel): LoadRule {
  const marked = model.ware.flatMap((ware, index) => (ware.lowWater === null ? [] : [{ index, mark: ware.lowWater }]));
  return {
    name: 'low shelf',
    next: ({ bench, ledger, now }) =>
      oldestOpen({ bench, ledger, now }, (rack) =>
        marked.some(({ index, mark }) => bench.pieces[rack * bench.wareCount + index]! > 0 && ledger.shelf(index) <= mark),
      ),
  };
}
