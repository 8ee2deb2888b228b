/**
 * Sections that stand open: worked out one after the other by the sure engine, and again after each change. What is asked
 * once is asked again only until it has been answered.
 */
import type { Engine, OnReply } from './engines.js';
import type { Asked, Request } from './messages.js';

/** What an offer is asked with. */
export type Offered = Omit<Extract<Request, { kind: 'question' }>, 'kind' | 'asked'>;

interface Open {
  readonly offered: Offered;
  readonly onReply: OnReply;
  readonly once: boolean;
}

export class OpenQuestions {
  private readonly open = new Map<string, Open>();
  private underWay: string | null = null;

  constructor(
    private readonly engine: Engine,
    private readonly asked: () => Asked,
  ) {}

  /** @returns the work to do */
  add(offered: Offered, onReply: OnReply, once = false): () => Promise<void> {
    this.open.set(offered.offer, { offered, onReply, once });
    return this.asking(offered.offer);
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
      const { offered, onReply, once } = open;
      this.underWay = offer;
      let isInterim = false;
      await this.engine.ask({ kind: 'question', asked: this.asked(), ...offered }, (reply) => {
        if (reply.kind === 'interim' || reply.kind === 'section')
          isInterim = reply.kind === 'interim';
        if (once && reply.kind !== 'progress' && reply.kind !== 'interim') this.open.delete(offer);
        onReply(reply);
      });
      // Given up before it was whole.
      if (isInterim) onReply({ kind: 'interim', html: '' });
      this.underWay = null;
    };
  }
}
