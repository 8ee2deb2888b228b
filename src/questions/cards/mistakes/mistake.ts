/** A mistake at the rack: the wrong way and the right way as pictures that can be checked, and why it matters. */
import type { RackView } from '../../../tell/drawings/rack-view.js';
import type { CardDesk } from '../card.js';

export interface Mistake {
  readonly id: string;
  readonly title: string;
  /** One or two short sentences: what goes wrong, and what to do. */
  readonly text: string;
  readonly wrong: RackView;
  readonly right: RackView;
  /** Ware of the house that is drawn; null: a typical piece. */
  readonly ware: string | null;
}

/** What a mistake is told from. */
export type MistakeDesk = Pick<CardDesk, 'scenario' | 'formats'>;
