/**
 * The rules by which part racks go, in the order in which they are asked. Full racks always go before.
 * A new rule: its own file beside this one, and one line here.
 */
import type { CafeModel } from '../../model.js';
import type { LoadRule } from '../load-rule.js';
import { FixedTimes } from './fixed-times.js';
import { LoosePieces } from './loose-pieces.js';
import { LowShelf } from './low-shelf.js';
import { Waited } from './waited.js';

export function rulesInOrder(model: CafeModel): LoadRule[] {
  const { partLoadWaitMs, partLoadsEveryMs } = model.washing;
  return [
    ...(partLoadWaitMs === null ? [] : [new Waited(partLoadWaitMs)]),
    ...(partLoadsEveryMs === null ? [] : [new FixedTimes()]),
    ...(model.ware.some((ware) => ware.lowWater !== null) ? [new LowShelf(model)] : []),
    ...(model.rackKinds.some((kind) => kind.owned !== null) ? [new LoosePieces()] : []),
  ];
}

/** Whether a rule looks at the clean count: the stock can then not be read off one run with unlimited ware. */
export function looksAtTheShelf(model: CafeModel): boolean {
  return model.ware.some((ware) => ware.lowWater !== null);
}
