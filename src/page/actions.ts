/** What the reader can do, and how the page answers: a quick answer first, then the certified one, then what else stands open. */
import type { GivenOptions } from '../letter/live.js';
import type { LetterPart } from '../letter/letter.js';
import type { Edit } from '../scenario/edit-scenario.js';
import type { Engines, OnReply } from './engines.js';
import { fill, markOlder } from './letter.js';
import type { Asked, Look, Question, Reply } from './messages.js';
import type { PageState, Store } from './store.js';

/** Parts that only the certified answer brings. */
const UNTIL_CERTIFIED = ['pictures', 'findings'] as const;

type Task = () => Promise<void>;

export class Actions {
  /** Changes made while the quick engine is at work; they go together when it is done. */
  private edits: Edit[] = [];
  /** A whole text to take the scenario's place, not yet known to be without mistakes. */
  private candidate: Pick<PageState, 'text' | 'fileName' | 'options'> | null = null;
  private changed = false;
  private answering = false;
  /** Sections that stand open, worked out anew after each change. */
  private readonly open = new Map<Question, OnReply>();
  /** What the sure engine has yet to do, one after the other. */
  private tasks: Task[] = [];
  private working = false;

  constructor(
    private readonly store: Store,
    private readonly engines: Engines,
  ) {}

  /** The forms of the letter as it was sent, and engines that are warm when the first change comes. */
  async begin(): Promise<void> {
    const { scenario } = this.store.state.given;
    if (scenario === null) return;
    const asked = this.asked();
    await this.engines.quick.ask({ kind: 'forms', asked, sent: scenario }, (reply) =>
      this.take(reply),
    );
    void this.engines.quick.ask({ kind: 'warm', asked, pictures: false });
    this.later(() => this.engines.sure.ask({ kind: 'warm', asked, pictures: true }));
    this.later(() => this.engines.sure.ask({ kind: 'swings', asked }, (reply) => this.take(reply)));
  }

  /** Change values of the scenario. */
  edit(edits: readonly Edit[]): void {
    this.edits.push(...edits);
    this.change();
  }

  /** Take another text in place of the scenario. */
  replace(text: string, fileName: string, options: GivenOptions = {}): void {
    this.edits = [];
    this.candidate = { text, fileName, options };
    this.store.set({ swings: [] });
    this.change();
  }

  /** Ask how safe a stock is; null: ask which stock is needed. */
  tryStock(stock: Readonly<Record<string, number>> | null): void {
    const { stock: _, ...rest } = this.store.state.options;
    this.store.set({ options: stock === null ? rest : { ...rest, stock } });
    this.change();
  }

  /** Have it told in other units or another place's numbers. */
  look(look: Partial<Look>): void {
    this.store.set({ look: { ...this.store.state.look, ...look } });
    this.change();
  }

  /** A section that is worked out while it stands open, and again after each change. */
  openQuestion(question: Question, onReply: OnReply): void {
    this.open.set(question, onReply);
    this.later(this.asking(question));
  }

  closeQuestion(question: Question): void {
    this.open.delete(question);
  }

  /** One day on the floor, with so many pieces of each ware. */
  walk(day: number, stock: Readonly<Record<string, number>>, onReply: OnReply): void {
    void this.engines.quick.ask({ kind: 'walk', asked: this.asked(), day, stock }, onReply);
  }

  /** A file that an engine makes. */
  file(kind: 'workbook', onFile: (bytes: Uint8Array) => void): void {
    this.later(() =>
      this.engines.sure.ask({ kind, asked: this.asked() }, (reply) => {
        if (reply.kind === 'file') onFile(reply.bytes);
        else this.take(reply);
      }),
    );
  }

  private asked(): Asked {
    const { fileName, text, options, look } = this.store.state;
    return { fileName, text, options, look };
  }

  private change(): void {
    this.changed = true;
    this.tasks = [];
    void this.engines.sure.ask({ kind: 'stop' });
    if (!this.answering) void this.answer();
  }

  private async answer(): Promise<void> {
    this.answering = true;
    while (this.changed) {
      this.changed = false;
      const { candidate } = this;
      this.candidate = null;
      const before = this.store.state.phase;
      this.store.set({ phase: 'working' });
      const asked = { ...this.asked(), ...candidate };
      let fine = true;
      await this.engines.quick.ask(
        { kind: 'quick', asked, edits: this.edits.splice(0) },
        (reply) => {
          if (reply.kind === 'mistakes' || reply.kind === 'fault') fine = false;
          if (reply.kind === 'text' && candidate !== null)
            this.store.set({ fileName: candidate.fileName, options: candidate.options });
          this.take(reply);
        },
      );
      if (!fine) this.store.set({ phase: before });
    }
    this.answering = false;
    if (this.store.state.phase === 'provisional')
      this.later(() =>
        this.engines.sure.ask({ kind: 'sure', asked: this.asked(), pictures: true }, (reply) =>
          this.take(reply),
        ),
      );
    if (this.store.state.swings.length === 0)
      this.later(() =>
        this.engines.sure.ask({ kind: 'swings', asked: this.asked() }, (reply) => this.take(reply)),
      );
    for (const question of this.open.keys()) this.later(this.asking(question));
  }

  private asking(question: Question): Task {
    return async () => {
      const onReply = this.open.get(question);
      if (onReply !== undefined)
        await this.engines.sure.ask({ kind: 'question', asked: this.asked(), question }, onReply);
    };
  }

  private later(task: Task): void {
    this.tasks.push(task);
    if (!this.working) void this.work();
  }

  private async work(): Promise<void> {
    this.working = true;
    for (let task = this.tasks.shift(); task !== undefined; task = this.tasks.shift()) await task();
    this.working = false;
  }

  private take(reply: Reply): void {
    switch (reply.kind) {
      case 'mistakes':
        return this.store.set({ mistakes: reply.mistakes });
      case 'fault':
        return this.store.set({ fault: reply.message });
      case 'text':
        return this.store.set({ text: reply.text, groups: reply.groups });
      case 'view':
        return this.store.set({ view: reply.view });
      case 'swings':
        return this.store.set({ swings: reply.swings });
      case 'progress':
        return this.store.set({ progress: this.store.state.progress + reply.days });
      case 'answer':
        for (const [part, html] of Object.entries(reply.parts)) fill(part as LetterPart, html);
        markOlder(UNTIL_CERTIFIED, true);
        return this.store.set({
          phase: reply.certified ? 'certified' : 'provisional',
          view: reply.view,
          mistakes: [],
          fault: null,
          progress: 0,
          json: null,
        });
      case 'pictures':
        for (const part of UNTIL_CERTIFIED) fill(part, reply.parts[part]);
        markOlder(UNTIL_CERTIFIED, false);
        return this.store.set({ json: reply.json });
      default:
    }
  }
}
