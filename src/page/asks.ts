/** What is asked of the engines beside changes: sections, days walked, files; and the order in which the sure engine works. */
import type { GivenScenario } from '../letter/live.js';
import type { FormGroup } from '../scenario/input-forms.js';
import type { Engines, OnReply } from './engines.js';
import type { Asked, Reply, Request, View } from './messages.js';
import { OpenQuestions, type Offered } from './open-questions.js';
import { takeReply } from './take-reply.js';
import { settledOf, type Settled, type Store, type Whole } from './store.js';

type Task = () => Promise<void>;
type Reading = Pick<Settled, 'view' | 'groups'>;

export class Asks {
  protected readonly questions: OpenQuestions;
  /** What the sure engine has yet to do, one after the other. */
  protected tasks: Task[] = [];
  private working = false;
  /** What waits for the certified answer; `all`: and for the sections that stand open. */
  private waiting: { act(): void; all: boolean }[] = [];
  /** When the quick engine is free of changes. */
  protected answered: Promise<void> = Promise.resolve();

  constructor(
    protected readonly store: Store,
    protected readonly engines: Engines,
  ) {
    this.questions = new OpenQuestions(
      engines.sure,
      () => this.asked(),
      () => this.whole()?.answer,
    );
  }

  /** A section that is worked out while it stands open, and again after each change. */
  openQuestion(offered: Offered, onReply: OnReply): void {
    this.later(this.questions.add(offered, onReply));
  }

  /** Asked until it is answered, and not again after later changes. */
  askOnce(offered: Offered, onReply: OnReply): void {
    this.later(this.questions.add(offered, onReply, true));
  }

  /** What takes no days: it need not wait for the answer that is being certified. */
  askNow(offered: Offered, onReply: OnReply): void {
    const request = { kind: 'question', ...offered, alone: true } as const;
    void this.quickly(() => ({ ...request, asked: this.asked() }), onReply);
  }

  /** A table that the scenario names. */
  lay(name: string, text: string): void {
    this.store.set({ beside: { ...this.store.state.beside, [name]: text } });
    for (const task of this.questions.again()) this.later(task);
  }

  closeQuestion(offer: string): void {
    this.questions.close(offer);
    this.release();
  }

  /** One day on the floor, with so many pieces of each ware. */
  walk(
    ofDay: string | undefined,
    day: number,
    stock: Readonly<Record<string, number>>,
    onReply: OnReply,
  ): void {
    void this.quickly(() => ({ kind: 'walk', asked: this.asked(), ofDay, day, stock }), onReply);
  }

  /** A file that an engine makes. */
  file(kind: 'workbook', onFile: (ending: string, bytes: Uint8Array) => void): void {
    this.later(() =>
      this.engines.sure.ask({ kind, asked: this.asked() }, (reply) => {
        if (reply.kind === 'file') onFile(reply.ending, reply.bytes);
        else this.take(reply);
      }),
    );
  }

  /** What a saved letter shows of itself; null where this page cannot read it. */
  async read({ fileName, text, options, answer }: GivenScenario): Promise<Reading | null> {
    const asked = { ...this.asked(), fileName, text, options };
    let [view, groups]: [View | null, readonly FormGroup[] | null] = [null, null];
    await new Promise<void>((done) =>
      this.later(async () => {
        await this.engines.sure.ask({ kind: 'forms', asked, answer }, (reply) => {
          if (reply.kind === 'view') ({ view } = reply);
          if (reply.kind === 'text') ({ groups } = reply);
        });
        done();
      }),
    );
    return view === null || groups === null ? null : { view, groups };
  }

  /** Does it now, or once what was typed stands in the text or was refused. */
  onceTaken(act: () => void): void {
    if (!this.store.state.untaken) return act();
    const end = this.store.subscribe(() => {
      if (this.store.state.untaken) return;
      end();
      act();
    });
  }

  /**
   * Does it now if the answer on show is certified, else as soon as it is.
   * @param all and once the sections that stand open are of that answer too
   */
  onceCertified(act: () => void, all = false): void {
    this.waiting.push({ act, all });
    this.release();
    this.store.set({ waiting: this.waiting.length > 0 });
  }

  /** Nothing is saved or printed any more that still waits. */
  protected forgetWaiting(): void {
    this.waiting = [];
    this.store.set({ waiting: false });
  }

  private release(): void {
    if (this.waiting.length === 0 || settledOf(this.store.state) === null) return;
    const isReady = ({ all }: { all: boolean }): boolean => !all || !this.questions.areWaiting;
    const ready = this.waiting.filter(isReady);
    this.waiting = this.waiting.filter((one) => !isReady(one));
    if (this.waiting.length === 0) this.store.set({ waiting: false });
    for (const { act } of ready) act();
  }

  /** The certified answer that stands, with all that belongs to it; null: there is none. */
  protected whole(): Whole | null {
    return settledOf(this.store.state);
  }

  protected asked(): Asked {
    const { fileName, text, options, look, beside } = this.store.state;
    return { fileName, text, options, look, beside };
  }

  /** Asks the quick engine beside changes: it waits for one under way, and is asked again if one gave it up. */
  private async quickly(request: () => Request, onReply: OnReply): Promise<void> {
    for (let heard = false; !heard;) {
      await this.answered;
      await this.engines.quick.ask(request(), (reply) => {
        heard = true;
        onReply(reply);
      });
    }
  }

  protected later(task: Task): void {
    this.tasks.push(task);
    if (!this.working) void this.work();
  }

  private async work(): Promise<void> {
    this.working = true;
    for (let task = this.tasks.shift(); task !== undefined; task = this.tasks.shift()) {
      await task();
      this.release();
    }
    this.working = false;
  }

  protected take(reply: Reply): void {
    takeReply(this.store, reply);
    if (reply.kind === 'whole') this.release();
  }
}
