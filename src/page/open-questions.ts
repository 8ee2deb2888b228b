/** Sections that stand open: worked out one after the other by the sure engine, and again after each change. */
import type { Engine, OnReply } from './engines.js';
import type { Asked } from './messages.js';

/** Settings as they were typed, by name. */
export type Typed = Readonly<Record<string, string>>;

export class OpenQuestions {
  private readonly open = new Map<string, { readonly onReply: OnReply; readonly typed: Typed }>();
  private underWay: string | null = null;

  constructor(
    private readonly engine: Engine,
    private readonly asked: () => Asked,
  ) {}

  /** @returns the work to do */
  add(offer: string, onReply: OnReply, typed: Typed): () => Promise<void> {
    this.open.set(offer, { onReply, typed });
    return this.asking(offer);
  }

  /** What is under way for it is given up. */
  close(offer: string): void {
    this.open.delete(offer);
    if (this.underWay === offer) void this.engine.ask({ kind: 'stop' });
  }

  /** The work to do once more for all that stand open. */
  again(): (() => Promise<void>)[] {
    return [...this.open.keys()].map((offer) => this.asking(offer));
  }

  private asking(offer: string): () => Promise<void> {
    return async () => {
      const open = this.open.get(offer);
      if (open === undefined) return;
      const { onReply, typed } = open;
      this.underWay = offer;
      await this.engine.ask({ kind: 'question', asked: this.asked(), offer, typed }, onReply);
      this.underWay = null;
    };
  }
}
