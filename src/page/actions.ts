/** What the reader can do, and how the page answers: a quick answer first, then the certified one, then what else stands open. */
import type { GivenOptions } from '../letter/live.js';
import type { Edit } from '../scenario/edit.js';
import { alternativeOf } from './alternative.js';
import { Asks } from './asks.js';
import type { Look, Reply } from './messages.js';
import { isAsSent, settledOf, type PageState, type Settled, type Whole } from './store.js';

/** A quick answer under way for longer than this is given up for a newer change, ms. */
const PATIENCE_MS = 500;

export class Actions extends Asks {
  /** Changes made while the quick engine is at work; they go together when it is done. */
  private edits: Edit[] = [];
  /** A whole text to take the scenario's place, not yet known to be without mistakes. */
  private candidate: Pick<PageState, 'text' | 'fileName' | 'options'> | null = null;
  private changed = false;
  private answering = false;
  /** A certified answer that is being written anew; it stands, though the page has not all of it yet. */
  private restoring: Whole | null = null;
  private answeringSince = 0;
  /** What waits for the certified answer. */
  private whenCertified: (() => void)[] = [];

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

  /** Change values of the scenario. @param options what the answer is asked with from now on */
  edit(edits: readonly Edit[], options: GivenOptions = this.store.state.options): void {
    // Nothing is to change after all: only what was refused before goes.
    if (edits.length === 0) return this.store.set({ mistakes: [] });
    this.remember();
    this.store.set({ options });
    this.edits.push(...edits);
    this.change();
  }

  /** Take another text in place of the scenario. */
  replace(text: string, fileName: string, options: GivenOptions = {}): void {
    this.edits = [];
    this.candidate = { text, fileName, options };
    this.remember();
    this.change();
  }

  /** Ask how safe a stock is; null: ask which stock is needed. */
  tryStock(stock: Readonly<Record<string, number>> | null): void {
    const { stock: _, ...rest } = this.store.state.options;
    this.remember();
    this.store.set({ options: stock === null ? rest : { ...rest, stock } });
    this.change();
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
    this.edit([edit]);
  }

  /** Does it now if the answer on show is certified, else as soon as it is. */
  onceCertified(act: () => void): void {
    if (settledOf(this.store.state) !== null) return act();
    this.whenCertified.push(act);
    this.store.set({ waiting: true });
  }

  /** The certified answer that stands, with all that belongs to it; null: there is none. */
  private whole(): Whole | null {
    return settledOf(this.store.state) ?? this.restoring;
  }

  /** What stands now is what the change is compared with, if it is certified; else what was before stays so. */
  private remember(): void {
    const { phase, text, fileName, options, groups, view } = this.store.state;
    const whole = this.whole();
    this.restoring = null;
    if (whole !== null) return this.store.set({ before: whole });
    // The figures are certified, but their pictures are not there yet.
    if (phase === 'certified' && view !== null)
      this.store.set({
        before: { text, fileName, options, groups, view, answer: null, curves: [] },
      });
  }

  private drop(): void {
    this.tasks = [];
    this.edits = [];
    this.candidate = null;
    this.changed = false;
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

  private change(): void {
    this.engines.widen();
    this.changed = true;
    this.tasks = [];
    void this.engines.sure.ask({ kind: 'stop' });
    if (!this.answering) this.answered = this.answer();
    else if (performance.now() - this.answeringSince > PATIENCE_MS)
      void this.engines.quick.ask({ kind: 'stop' });
  }

  private async answer(): Promise<void> {
    this.answering = true;
    while (this.changed) {
      this.changed = false;
      this.answeringSince = performance.now();
      const { candidate } = this;
      this.candidate = null;
      const kept = this.store.state;
      this.store.set({ phase: 'working', answer: null, safety: null });
      const asked = { ...this.asked(), ...candidate };
      const edits = this.edits.splice(0);
      let [fine, heard] = [true, false];
      await this.engines.quick.ask({ kind: 'quick', asked, edits }, (reply) => {
        if (reply.kind === 'mistakes' || reply.kind === 'fault') fine = false;
        heard ||= !fine || reply.kind === 'text';
        if (reply.kind === 'text' && candidate !== null)
          this.store.set({ fileName: candidate.fileName, options: candidate.options });
        this.take(reply);
      });
      // Given up for a newer change: what it was to change stands in no text yet, and goes along with that.
      if (!heard && this.changed && this.candidate === null) {
        this.candidate = candidate;
        this.edits.unshift(...edits);
      }
      if (!fine && this.store.state.phase === 'working') {
        const { phase, text, fileName, options, groups, answer, before } = kept;
        this.store.set({ phase, text, fileName, options, groups, answer, before });
      }
    }
    this.answering = false;
    const { phase, answer } = this.store.state;
    // Also where a mistake came between a certified answer and its pictures: they are still to come.
    const lacking = (phase === 'certified' || phase === 'as-sent') && answer === null;
    if (phase === 'provisional' || (lacking && this.restoring === null))
      this.later(() => this.certify());
    for (const task of this.questions.again()) this.later(task);
  }

  private async certify(): Promise<void> {
    await this.engines.sure.ask({ kind: 'sure', asked: this.asked() }, (reply) => this.take(reply));
    const { before, view, phase } = this.store.state;
    if (phase !== 'certified' || before === null || view === null || view.stockGiven) return;
    const stock = Object.fromEntries(before.view.ware.map(({ id, pieces }) => [id, pieces]));
    if (view.ware.some(({ id }) => stock[id] === undefined)) return;
    if (view.ware.every(({ id, pieces }) => stock[id] === pieces)) return;
    this.later(() =>
      this.engines.sure.ask({ kind: 'safety', asked: this.asked(), stock }, (reply) =>
        this.take(reply),
      ),
    );
  }

  protected override take(reply: Reply): void {
    super.take(reply);
    if (reply.kind === 'whole') this.restoring = null;
    if (reply.kind === 'whole') for (const act of this.whenCertified.splice(0)) act();
  }
}
