/** What the page knows at a moment, and who wants to be notified when that changes. */
import type { Counts, Given, GivenOptions } from '../letter/live.js';
import type { Answer } from '../questions/size/answer.js';
import type { RiskCurve } from '../questions/size/charts/risk-against-stock.js';
import type { FormGroup } from '../scenario/input-forms.js';
import type { Look, Mistake, View } from './messages.js';

/** Who reads: the letter opens differently for each. */
export type Reader = 'owner' | 'consultant' | 'trainer';

/** Whose letter it is; the logo as a data: address. */
export interface Sender {
  readonly name: string;
  readonly logo: string | null;
}

/** How far the answer on show has come. */
export type Phase = 'blank' | 'as-sent' | 'working' | 'provisional' | 'certified';

/** A scenario with its certified answer: what a change is compared with, and what undo goes back to. */
export interface Settled {
  readonly text: string;
  readonly fileName: string;
  readonly options: GivenOptions;
  readonly groups: readonly FormGroup[];
  readonly view: View;
  /** Null where a newer change came before all of it was there: it is then worked out again. */
  readonly answer: Answer | null;
  readonly curves: readonly RiskCurve[];
}

/** A scenario whose certified answer is there with all that belongs to it. */
export type Whole = Settled & { readonly answer: Answer };

/** Work on a letter that the browser keeps. */
export interface Kept {
  readonly text: string;
  readonly fileName: string;
  readonly options: GivenOptions;
  /** When, in ms. */
  readonly at: number;
  /** The scenario that it was changed from; another letter at the same address is not its own. */
  readonly from: string;
  readonly beside?: PageState['beside'];
  readonly counts?: Counts | null;
}

export interface PageState {
  readonly given: Given;
  readonly fileName: string;
  /** The scenario as it stands; '' while the letter is blank. */
  readonly text: string;
  readonly options: GivenOptions;
  readonly look: Look;
  /** Tables that the scenario names, as text by name. */
  readonly beside: Readonly<Record<string, string>>;
  readonly reader: Reader;
  readonly sender: Sender;
  readonly phase: Phase;
  /** Something was typed that does not stand in the text yet. */
  readonly untaken: boolean;
  /** Days run for the certified answer that is under way. */
  readonly progress: number;
  readonly view: View | null;
  readonly groups: readonly FormGroup[];
  /** What is wrong with what was typed last; the answer on show is that before it. */
  readonly mistakes: readonly Mistake[];
  readonly fault: string | null;
  /** The certified answer and its curves; null until they are those of the text as it stands. */
  readonly answer: Answer | null;
  readonly curves: readonly RiskCurve[];
  /** What stood before the last change. */
  readonly before: Settled | null;
  /** Share of safe days with the stock of before in the house as it now is; null: not known yet. */
  readonly safety: number | null;
  /** The text as it was last sent or saved: what differs would be lost on leaving. */
  readonly kept: string;
  /** Likewise the tables. */
  readonly keptBeside: Readonly<Record<string, string>>;
  readonly counts: Counts | null;
  /** Likewise the counts. */
  readonly keptCounts: Counts | null;
  /** Work on this letter that was kept in the browser and not taken up yet. */
  readonly restorable: Kept | null;
  /** Something is to be saved or printed as soon as the certified answer is there. */
  readonly waiting: boolean;
}

/** What would be lost on leaving. */
export const isUnsaved = (state: PageState): boolean =>
  state.text !== state.kept ||
  state.untaken ||
  state.counts !== state.keptCounts ||
  state.beside !== state.keptBeside;

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

/** The scenario and answer on show, where the answer is certified and belongs to the text; else null. */
export function settledOf(state: PageState): Whole | null {
  const { phase, text, fileName, options, groups, view, answer, curves } = state;
  if ((phase !== 'as-sent' && phase !== 'certified') || view === null || answer === null)
    return null;
  return { text, fileName, options, groups, view, answer, curves };
}

/** Whether the same was asked on the command's line, or by the page in its place. */
export function sameOptions(one: GivenOptions, other: GivenOptions): boolean {
  const inOrder = (options: GivenOptions): string =>
    JSON.stringify(
      Object.entries(options)
        .filter(([, value]) => value !== undefined)
        .toSorted(([a], [b]) => (a < b ? -1 : 1)),
    );
  return one === other || inOrder(one) === inOrder(other);
}

/** Whether the letter stands as it was sent. */
export const isAsSent = ({
  given,
  text,
  options,
}: Pick<PageState, 'given' | 'text' | 'options'>): boolean =>
  given.scenario !== null &&
  text === given.scenario.text &&
  sameOptions(options, given.scenario.options);
