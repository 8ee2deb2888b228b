/**
 * The rules by which part racks go, in the order in which they are asked. Full racks always go before.
 * A new rule: its own file beside this one, and one line here.
 */
import type { CafeModel } from '../../model.js';
import type { LoadRule } from '../load-rule.js';
import { fixedTimes } from './fixed-times.js';
import { loosePieces } from './loose-pieces.js';
import { lowShelf } from './low-shelf.js';
import { waited } from './waited.js';

export function rulesInOrder(model: CafeModel): LoadRule[] {
  const { partLoadWaitMs, partLoadsEveryMs } = model.washing;
  return [
    ...(partLoadWaitMs === null ? [] : [waited(partLoadWaitMs)]),
    ...(partLoadsEveryMs === null ? [] : [fixedTimes()]),
    ...(model.ware.some((ware) => ware.lowWater !== null) ? [lowShelf(model)] : []),
    ...(model.rackKinds.some((kind) => kind.owned !== null) ? [loosePieces()] : []),
  ];
}

/** Whether a rule looks at the clean count: the stock can then not be read off one run with unlimited ware. */
export function looksAtTheShelf(model: CafeModel): boolean {
  return model.ware.some((ware) => ware.lowWater !== null);
}
