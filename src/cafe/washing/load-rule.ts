/**
 * A load rule names the next part rack that may go into a machine, or none.
 *
 * Rules are asked in the order of `rules/in-order.ts`. A rule sees the floor through a view that it cannot
 * change, chooses, and says what should wake it; it never moves anything. What it remembers of its own
 * (a wait that was drawn, a rack that was released) is its own affair.
 */
import type { CafeModel } from '../model.js';
import type { Bench } from '../bench.js';

export const NO_RACK = -1;
/** In place of a moment: not at all. */
export const NEVER = -1;

/** The bench as a rule sees it: open racks, how full they are and what is in them. */
export type BenchView = Pick<Bench, 'wareCount' | 'fuller' | 'fill'> & {
  /** By family: its open rack, or NO_RACK. */
  readonly openRack: ArrayLike<number>;
  /** By family: its kind of rack. */
  readonly kindOf: ArrayLike<number>;
  /** By kind: pieces loose for want of a rack. */
  readonly looseOfKind: ArrayLike<number>;
  /** By rack: when its first piece reached the bench (ms), and which piece of the day that was. */
  readonly since: ArrayLike<number>;
  readonly firstPiece: ArrayLike<number>;
  /** By rack and ware: pieces[rack × wareCount + ware]. */
  readonly pieces: ArrayLike<number>;
};

/** The floor as a rule sees it. */
export interface RuleView {
  /** ms from opening. */
  readonly now: number;
  /** Whether the doors are closed. */
  readonly closed: boolean;
  /** Whether anything at all is still to come today. */
  readonly moreToCome: boolean;
  readonly bench: BenchView;
  /** Clean pieces of a ware on the shelf. */
  shelf(ware: number): number;
  /** Pieces of any ware at a place (of `places.ts`). */
  piecesAt(place: number): number;
  /** Drinks waiting at the counter, guests on seats, parties waiting for seats, makers without a drink. */
  readonly drinksWaiting: number;
  readonly guestsSeated: number;
  readonly partiesWaiting: number;
  readonly makersFree: number;
}

/**
 * What may wake a rule. Loads are always considered when pieces are racked, when a machine, a rack or a hand
 * comes free, and when an other load arrives; these come on top.
 */
export type Wake = 'shelf lower' | 'drink done' | 'party leaves';

export abstract class LoadRule {
  /** For messages and tests. */
  abstract readonly name: string;
  readonly wakes: readonly Wake[] = [];

  /** The open rack that may go next under this rule, or NO_RACK. */
  abstract next(view: RuleView): number;

  /** A new day begins: when this rule wants to be called (`called`) first, ms from opening, or NEVER. */
  open(_day: number): number {
    return NEVER;
  }

  /** The moment asked for has come: when it wants to be called next, or NEVER. Loads are considered afterwards. */
  called(_view: RuleView): number {
    return NEVER;
  }

  /** A rack has taken its first piece and stays open: when loads are to be considered for its sake, or NEVER. */
  rackOpened(_rack: number, _view: RuleView): number {
    return NEVER;
  }
}

/** Which of the wakes a rule of the house wants. */
export function wakesOf(rules: readonly LoadRule[]): Readonly<Record<Wake, boolean>> {
  const wanted = (wake: Wake): boolean => rules.some(({ wakes }) => wakes.includes(wake));
  return {
    'shelf lower': wanted('shelf lower'),
    'drink done': wanted('drink done'),
    'party leaves': wanted('party leaves'),
  };
}

/**
 * Rules that let single racks go: of the open racks that `mayGo`, the one whose oldest piece came first;
 * equally old: the one whose first piece reached the bench first.
 */
export abstract class OldestFirst extends LoadRule {
  abstract mayGo(rack: number, view: RuleView): boolean;

  next(view: RuleView): number {
    const { openRack, firstPiece } = view.bench;
    let best = NO_RACK;
    for (let family = 0; family < openRack.length; family += 1) {
      const rack = openRack[family]!;
      if (rack === NO_RACK || !this.mayGo(rack, view)) continue;
      if (best === NO_RACK || firstPiece[rack]! < firstPiece[best]!) best = rack;
    }
    return best;
  }
}

/** A rule as the list has it: where it applies, and how it is made. */
export interface RuleEntry {
  readonly name: string;
  readonly applies: (model: CafeModel) => boolean;
  readonly make: (model: CafeModel, seed: string) => LoadRule;
  /** Whether it looks at the clean count: the stock can then not be read off one run with unlimited ware. */
  readonly looksAtShelf: boolean;
}
