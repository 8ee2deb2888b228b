/** What the page knows at a moment, and who wants to be told when that changes. */
import type { Given, GivenOptions } from '../letter/live.js';
import type { FormGroup } from '../scenario/input-forms.js';
import type { Look, Mistake, Swing, View } from './messages.js';

/** Who reads: the letter opens differently for each. */
export type Reader = 'owner' | 'consultant' | 'trainer';

/** Whose letter it is; the logo as a data: address. */
export interface Sender {
  readonly name: string;
  readonly logo: string | null;
}

/** How far the answer on show has come. */
export type Phase = 'blank' | 'as-sent' | 'working' | 'provisional' | 'certified';

export interface PageState {
  readonly given: Given;
  readonly fileName: string;
  /** The scenario as it stands; '' while the letter is blank. */
  readonly text: string;
  readonly options: GivenOptions;
  readonly look: Look;
  readonly reader: Reader;
  readonly sender: Sender;
  readonly phase: Phase;
  /** Days run for the certified answer that is under way. */
  readonly progress: number;
  readonly view: View | null;
  readonly groups: readonly FormGroup[];
  /** Widest first; empty until it is known. */
  readonly swings: readonly Swing[];
  /** What is wrong with what was typed last; the answer on show is that before it. */
  readonly mistakes: readonly Mistake[];
  readonly fault: string | null;
  /** The answer as a file, once its pictures are drawn. */
  readonly json: string | null;
}

type Listener = () => void;

export class Store {
  private readonly listeners = new Set<Listener>();

  constructor(private current: PageState) {}

  get state(): PageState {
    return this.current;
  }

  set(changes: Partial<PageState>): void {
    this.current = { ...this.current, ...changes };
    for (const listener of this.listeners) listener();
  }

  /** @returns ends the subscription */
  subscribe(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}
