/**
 * The last loads of the day, where part racks otherwise wait until they are filled enough: once the doors are
 * closed and no piece is in use, dirty on a table or carried, every part rack goes, oldest first.
 */
import type { CafeModel } from '../../model.js';
import { CARRIED, DIRTY_TABLE, IN_USE } from '../../places.js';
import { OldestFirst, type RuleEntry, type RuleView } from '../load-rule.js';

class ClosingSweep extends OldestFirst {
  readonly name = 'closing sweep';

  constructor(private readonly closingMs: number) {
    super();
  }

  /** Later the last pieces wake it, as they reach the bench. */
  override open(): number {
    return this.closingMs;
  }

  mayGo(_rack: number, view: RuleView): boolean {
    return (
      view.closed &&
      view.piecesAt(IN_USE) === 0 &&
      view.piecesAt(DIRTY_TABLE) === 0 &&
      view.piecesAt(CARRIED) === 0
    );
  }
}

export const closingSweep: RuleEntry = {
  name: 'closing sweep',
  applies: ({ washing }) => washing.partLoadFrom !== null,
  make: ({ closingMs }: CafeModel) => new ClosingSweep(closingMs),
  looksAtShelf: false,
};
