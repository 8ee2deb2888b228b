/**
 * Sections that stand open: worked out one after the other by the sure engine, and again after each change. What is asked
 * once is asked again only until it has been answered.
 */
import type { Answer } from '../questions/size/answer.js';
import type { Engine, OnReply } from './engines.js';
import type { Asked, Request } from './messages.js';

/** What an offer is asked with. */
export type Offered = Omit<Extract<Request, { kind: 'question' }>, 'kind' | 'asked' | 'answer'>;

interface Open {
  readonly offered: Offered;
  readonly onReply: OnReply;
  readonly once: boolean;
}

export class OpenQuestions {
  private readonly open = new Map<string, Open>();
  private underWay: string | null = null;
  /** Those that are not, or not yet, of the house as it stands. */
  private readonly stale = new Set<string>();
  /** Counts the houses: what an engine still says of one before is not listened to. */
  private era = 0;

  constructor(
    private readonly engine: Engine,
    private readonly asked: () => Asked,
    private readonly answer: () => Answer | undefined = () => undefined,
  ) {}

  /** Whether one that stands open is still to be worked out. */
  get areWaiting(): boolean {
    return this.stale.size > 0;
  }

  /** @returns the work to do */
  add(offered: Offered, onReply: OnReply, once = false): () => Promise<void> {
    this.open.set(offered.offer, { offered, onReply, once });
    return this.asking(offered.offer);
  }

  /** What is under way for it is given up. */
  close(offer: string): void {
    this.open.delete(offer);
    this.stale.delete(offer);
    if (this.underWay === offer) void this.engine.ask({ kind: 'stop' });
  }

  /** The house has changed: what stands of them is of the one before. */
  outdate(): void {
    this.era += 1;
    for (const [offer, { onReply }] of this.open) {
      this.stale.add(offer);
      onReply({ kind: 'anew' });
    }
  }

  /** The work to do once more for all that stand open. */
  again(): (() => Promise<void>)[] {
    return [...this.open.keys()].map((offer) => this.asking(offer));
  }

  private asking(offer: string): () => Promise<void> {
    this.stale.add(offer);
    return async () => {
      const open = this.open.get(offer);
      if (open === undefined) return;
      const { offered, onReply, once } = open;
      this.underWay = offer;
      onReply({ kind: 'anew' });
      const { era } = this;
      let isInterim = false;
      const about = { asked: this.asked(), answer: this.answer() };
      await this.engine.ask({ kind: 'question', ...about, ...offered }, (reply) => {
        if (era !== this.era) return;
        if (reply.kind === 'interim' || reply.kind === 'section')
          isInterim = reply.kind === 'interim';
        if (reply.kind !== 'progress' && reply.kind !== 'interim') {
          this.stale.delete(offer);
          if (once) this.open.delete(offer);
        }
        onReply(reply);
      });
      // Given up before it was whole.
      if (isInterim) onReply({ kind: 'interim', html: '' });
      this.underWay = null;
    };
  }
}
