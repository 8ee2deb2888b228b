/**
 * A load rule names the next part rack that may go into a machine, or none.
 *
 * Rules are asked in the order of `rules/in-order.ts`; a rule chooses, it never moves anything.
 */
import type { Ledger } from '../ledger.js';
import type { Bench } from '../bench.js';

export const NO_RACK = -1;

/** What a rule may look at; the present moment is `ledger.now`. */
export interface Yard {
  readonly bench: Bench;
  readonly ledger: Ledger;
}

export interface LoadRule {
  /** For messages and tests. */
  readonly name: string;
  /** The open rack that may go next under this rule, or NO_RACK. */
  next(yard: Yard): number;
}

/**
 * Rules that let single racks go: of the open racks that `mayGo`, the one whose oldest piece came first;
 * equally old: the one whose first piece reached the bench first.
 */
export abstract class OldestFirst implements LoadRule {
  abstract readonly name: string;
  abstract mayGo(rack: number, yard: Yard): boolean;

  next(yard: Yard): number {
    const { openRack, firstPiece } = yard.bench;
    let best = NO_RACK;
    for (let family = 0; family < openRack.length; family += 1) {
      const rack = openRack[family]!;
      if (rack === NO_RACK || !this.mayGo(rack, yard)) continue;
      if (best === NO_RACK || firstPiece[rack]! < firstPiece[best]!) best = rack;
    }
    return best;
  }
}
