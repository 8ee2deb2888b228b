/** What the reader can do, and how the page answers: a quick answer first, then the certified one, then what else stands open. */
import type { GivenOptions } from '../letter/live.js';
import type { Edit } from '../scenario/edit.js';
import { alternativeOf } from './alternative.js';
import { Asks } from './asks.js';
import type { Look, Reply } from './messages.js';
import {
  isAsSent,
  sameOptions,
  settledOf,
  type PageState,
  type Settled,
  type Whole,
} from './store.js';
import { Untaken } from './untaken.js';

/** A quick answer under way for longer than this is given up for a newer change, ms. */
const PATIENCE_MS = 500;

export class Actions extends Asks {
  private readonly untaken = new Untaken();
  /** A whole text to take the scenario's place, not yet known to be without mistakes. */
  private candidate: Pick<PageState, 'text' | 'fileName' | 'options'> | null = null;
  private changed = false;
  private answering = false;
  /** What stands if what is being worked on is refused or taken back. */
  private kept: PageState = this.store.state;
  /** Counts changes: what an engine still says of what stood before one is not listened to. */
  private era = 0;
  /** What is being worked on; `off`: given up, whatever is still said of it. */
  private run = { off: true };
  /** A certified answer that is being written anew; it stands, though the page has not all of it yet. */
  private restoring: Whole | null = null;
  private answeringSince = 0;

  /** The forms of the letter as it was sent. */
  async begin(): Promise<void> {
    const { scenario } = this.store.state.given;
    if (scenario === null) return;
    const asked = this.asked();
    await this.engines.quick.ask({ kind: 'forms', asked, answer: scenario.answer }, (reply) =>
      this.take(reply),
    );
  }

  /** Engines that are quick when the first change comes; a change that is already there comes first. */
  warmUp(): void {
    this.engines.widen();
    if (this.store.state.phase !== 'as-sent' || this.answering) return;
    const asked = this.asked();
    void this.engines.quick.ask({ kind: 'warm', asked, pictures: false });
    this.later(() => this.engines.sure.ask({ kind: 'warm', asked, pictures: true }));
  }

  /**
   * Change values of the scenario.
   * @param box where it was typed: a newer change there takes the place of one that is not taken yet
   * @param options what the answer is asked with from now on
   */
  edit(
    box: string,
    edits: readonly Edit[],
    options: GivenOptions = this.store.state.options,
  ): void {
    // Nothing is to change after all: only what was refused before goes.
    if (edits.length === 0 && !this.untaken.has(box)) return this.store.set({ mistakes: [] });
    const kept = this.remember();
    this.store.set({ options });
    const isOlder = this.untaken.put(box, edits);
    this.change(kept, isOlder);
  }

  /** Take another text in place of the scenario. */
  replace(text: string, fileName: string, options: GivenOptions = {}): void {
    const kept = this.remember();
    this.untaken.drop();
    this.candidate = { text, fileName, options };
    this.change(kept);
  }

  /** Ask how safe a stock is; null: ask which stock is needed. */
  tryStock(stock: Readonly<Record<string, number>> | null): void {
    const { stock: _, ...rest } = this.store.state.options;
    const kept = this.remember();
    this.store.set({ options: stock === null ? rest : { ...rest, stock } });
    this.change(kept);
  }

  /** Other units, or another place's numbers: the answer is written anew, not worked out anew. */
  look(look: Partial<Look>): void {
    const settled = this.whole();
    this.store.set({ look: { ...this.store.state.look, ...look } });
    if (settled !== null) this.restore(settled, this.store.state.before);
    else if (this.store.state.phase !== 'blank') this.change();
  }

  /** Back to what stood before the last change. */
  undo(): void {
    const { before } = this.store.state;
    if (before !== null) this.restore(before, null);
  }

  /** The letter as it was sent, with its own answer. */
  backToSent(): void {
    const { given, groups, view } = this.store.state;
    // Its forms and figures come with the answer that is written anew.
    if (given.scenario !== null && view !== null)
      this.restore({ ...given.scenario, groups, view }, null);
  }

  /** Give up what is under way; what stood before the change stands again. */
  cancel(): void {
    const { before } = this.store.state;
    this.forgetWaiting();
    void this.engines.quick.ask({ kind: 'stop' });
    if (before !== null) return this.restore(before, null);
    if (this.store.state.given.scenario !== null) return this.backToSent();
    this.drop();
    this.store.set({ phase: 'blank', progress: 0, text: '', view: null });
  }

  /** The house as it was before the change, with the change kept as an alternative of it. */
  keepAsAlternative(name: string): void {
    const { before, groups } = this.store.state;
    if (before === null) return;
    const edit = alternativeOf(name, before, groups);
    if (edit === null) return;
    this.store.set(before);
    this.edit('alternative', [edit]);
  }

  protected override whole(): Whole | null {
    return super.whole() ?? this.restoring;
  }

  /**
   * What stands now is what the change is compared with, if it is certified; else what was before stays so.
   * @returns what stands now
   */
  private remember(): PageState {
    const kept = this.store.state;
    const { phase, text, fileName, options, groups, view } = kept;
    const whole = this.whole();
    this.restoring = null;
    if (whole !== null) this.store.set({ before: whole });
    // The figures are certified, but their pictures are not there yet.
    else if (phase === 'certified' && view !== null)
      this.store.set({
        before: { text, fileName, options, groups, view, answer: null, curves: [] },
      });
    return kept;
  }

  private drop(): void {
    this.tasks = [];
    this.untaken.drop();
    this.candidate = null;
    this.changed = false;
    this.run.off = true;
    this.era += 1;
    this.store.set({ untaken: false });
    this.questions.outdate();
    void this.engines.sure.ask({ kind: 'stop' });
  }

  /** Shows a certified answer that is known. @param before what it is compared with */
  private restore(settled: Settled, before: Settled | null): void {
    this.drop();
    const { safety, given } = this.store.state;
    const sent = given.scenario;
    const { text, fileName, options, groups, view, answer, curves } = settled;
    this.store.set({ options });
    if (answer === null) return this.again({ text, fileName, options });
    this.restoring = { ...settled, answer };
    const isSent = isAsSent({ given, text, options });
    this.store.set({ text, fileName, options, groups, view, before, mistakes: [], fault: null });
    this.store.set({ safety: before === null ? null : safety, progress: 0, answer: null });
    const asked = this.asked();
    // Habits were varied for the letter as it was sent alone, and a command made it alone.
    const { habits, made } = isSent ? sent! : {};
    const retell = { kind: 'retell', asked, answer, curves, habits, made } as const;
    void this.engines.quick.ask(retell, (reply) => {
      this.take(reply);
      if (reply.kind === 'whole' && isSent) this.store.set({ phase: 'as-sent' });
    });
    for (const task of this.questions.again()) this.later(task);
  }

  /** What stood before, worked out once more. */
  private again(candidate: NonNullable<Actions['candidate']>): void {
    this.candidate = candidate;
    this.store.set({ before: null });
    this.change();
  }

  /** @param isOlder whether what is being worked on is no longer wanted */
  private change(kept: PageState = this.store.state, isOlder = false): void {
    this.engines.widen();
    this.changed = true;
    this.tasks = [];
    this.era += 1;
    this.store.set({ untaken: true });
    this.questions.outdate();
    void this.engines.sure.ask({ kind: 'stop' });
    if (!this.answering) {
      this.kept = kept;
      this.answered = this.answer();
    } else if (isOlder || performance.now() - this.answeringSince > PATIENCE_MS) {
      this.run.off ||= isOlder;
      void this.engines.quick.ask({ kind: 'stop' });
    }
  }

  private async answer(): Promise<void> {
    this.answering = true;
    while (this.changed) {
      this.changed = false;
      this.answeringSince = performance.now();
      const { candidate } = this;
      this.candidate = null;
      const edits = this.untaken.take();
      if (candidate === null && edits.length === 0 && this.standsAgain()) continue;
      this.store.set({ phase: 'working', answer: null, safety: null });
      const asked = { ...this.asked(), ...candidate };
      const run = (this.run = { off: false });
      let [fine, heard] = [true, false];
      await this.engines.quick.ask({ kind: 'quick', asked, edits }, (reply) => {
        if (run.off) return;
        if (reply.kind === 'mistakes' || reply.kind === 'fault') fine = false;
        if (!heard && (!fine || reply.kind === 'text')) {
          heard = true;
          this.untaken.settle();
        }
        if (reply.kind === 'text' && candidate !== null)
          this.store.set({ fileName: candidate.fileName, options: candidate.options });
        this.take(reply);
        if (heard) this.store.set({ untaken: this.changed });
      });
      // Given up for a newer change: what it was to change stands in no text yet, and goes along with that.
      if (!heard && this.changed) {
        if (this.candidate === null) this.candidate = candidate;
        this.untaken.back();
      }
      if (!fine && this.store.state.phase === 'working') this.keep();
      if (this.store.state.phase !== 'working') this.kept = this.store.state;
    }
    this.store.set({ untaken: false });
    this.answering = false;
    const { phase, answer } = this.store.state;
    // Also where a mistake came between a certified answer and its pictures: they are still to come.
    const lacking = (phase === 'certified' || phase === 'as-sent') && answer === null;
    if (phase === 'provisional' || (lacking && this.restoring === null))
      this.later(() => this.certify());
    for (const task of this.questions.again()) this.later(task);
  }

  /** Back to what stood. */
  private keep(): void {
    const { phase, text, fileName, options, groups, answer, before, safety } = this.kept;
    this.store.set({ phase, text, fileName, options, groups, answer, before, safety });
  }

  /** Whether all that was typed was taken back; then the answer on show is still that of the text. */
  private standsAgain(): boolean {
    const { text, options } = this.store.state;
    const stood = this.kept;
    if (settledOf(stood) === null || stood.text !== text || !sameOptions(stood.options, options))
      return false;
    this.keep();
    this.store.set({ mistakes: [], untaken: false });
    return true;
  }

  private async certify(): Promise<void> {
    const { era } = this;
    await this.engines.sure.ask({ kind: 'sure', asked: this.asked() }, (reply) => {
      if (era === this.era) this.take(reply);
    });
    if (era !== this.era) return;
    const { before, view, phase } = this.store.state;
    if (phase !== 'certified' || before === null || view === null || view.stockGiven) return;
    const stock = Object.fromEntries(before.view.ware.map(({ id, pieces }) => [id, pieces]));
    if (view.ware.some(({ id }) => stock[id] === undefined)) return;
    if (view.ware.every(({ id, pieces }) => stock[id] === pieces)) return;
    this.later(() =>
      this.engines.sure.ask({ kind: 'safety', asked: this.asked(), stock }, (reply) => {
        if (era === this.era) this.take(reply);
      }),
    );
  }

  protected override take(reply: Reply): void {
    if (reply.kind === 'whole') this.restoring = null;
    super.take(reply);
  }
}
