/**
 * The rules by which part racks go, in the order in which they are asked. Full racks always go before.
 * A new rule: its own file beside this one, and one line here.
 */
import type { CafeModel } from '../../model.js';
import type { LoadRule, RuleEntry } from '../load-rule.js';
import { closingSweep } from './closing-sweep.js';
import { fixedTimes } from './fixed-times.js';
import { loosePieces } from './loose-pieces.js';
import { lowShelf } from './low-shelf.js';
import { waited } from './waited.js';

export const RULES: readonly RuleEntry[] = [
  waited,
  fixedTimes,
  closingSweep,
  lowShelf,
  loosePieces,
];

/** The rules of a house. */
export const rulesInOrder = (model: CafeModel, seed: string): LoadRule[] =>
  RULES.filter(({ applies }) => applies(model)).map(({ make }) => make(model, seed));

/** Whether a rule looks at the clean count: the stock can then not be read off one run with unlimited ware. */
export const looksAtTheShelf = (model: CafeModel): boolean =>
  RULES.some(({ looksAtShelf, applies }) => looksAtShelf && applies(model));
