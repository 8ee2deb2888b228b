/**
 * A load rule names the next part rack that may go into a machine, or none.
 *
 * Rules are asked in the order of `rules/in-order.ts`; a rule chooses, it never moves anything.
 */
import type { Ledger } from '../ledger.js';
import type { Bench } from '../bench.js';

export const NO_RACK = -1;

/** What a rule may look at. */
export interface Yard {
  readonly bench: Bench;
  readonly ledger: Ledger;
  /** The present moment, ms. */
  readonly now: number;
}

export interface LoadRule {
  /** For messages and tests. */
  readonly name: string;
  /** The open rack that may go next under this rule, or NO_RACK. */
  next(yard: Yard): number;
}

/** Of the open racks that `mayGo`, the one whose oldest piece came first; equally old: first on the bench. */
export function oldestOpen(yard: Yard, mayGo: (rack: number) => boolean): number {
  const { bench } = yard;
  let best = NO_RACK;
  for (const rack of bench.openRack) {
    if (rack === NO_RACK || !mayGo(rack)) continue;
    if (best === NO_RACK || bench.firstPiece[rack]! < bench.firstPiece[best]!) best = rack;
  }
  return best;
}
