import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { startEngines } from '../../src/page/engines.js';
import type { Ask, Asked, Reply, Request } from '../../src/page/messages.js';

/** A worker that answers at once, except walks, in which it is stuck for good; and what has been asked of it. */
class FakeWorker {
  static readonly all: FakeWorker[] = [];
  readonly asked: Request['kind'][] = [];
  onmessage: (event: { data: unknown }) => void = () => {};
  onerror: (event: unknown) => void = () => {};
  ended = false;
  private stuck = false;

  constructor() {
    FakeWorker.all.push(this);
  }

  postMessage({ id, request }: Ask): void {
    this.asked.push(request.kind);
    this.stuck ||= request.kind === 'walk';
    if (this.stuck) return;
    const say = (reply: Reply): void => this.onmessage({ data: { id, reply } });
    queueMicrotask(() => {
      if (request.kind === 'retell') say({ kind: 'progress', days: 7 });
      say({ kind: 'done' });
    });
  }

  terminate(): void {
    this.ended = true;
  }
}

/** Nothing, deflated, as packed text. */
const packed = '!"W';
const asked: Asked = {
  fileName: 'x',
  text: '',
  options: {},
  look: { units: 'metric', locale: null },
};
const walk = { kind: 'walk', asked, day: 0, stock: {} } as const;
const retell = { kind: 'retell', asked, answer: {}, curves: [] } as unknown as Request;

describe('an engine that does not stop', () => {
  beforeEach(() => {
    FakeWorker.all.length = 0;
    vi.stubGlobal('Worker', FakeWorker);
    vi.useFakeTimers({ toFake: ['setTimeout'] });
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('is ended and begun anew; what was asked since is answered', async () => {
    const { quick } = await startEngines(packed, '1');
    const stuck = quick.ask(walk);
    void quick.ask({ kind: 'stop' });
    const replies: Reply[] = [];
    const later = quick.ask(retell, (reply) => replies.push(reply));
    vi.advanceTimersByTime(4999);
    expect(FakeWorker.all).toHaveLength(2);
    vi.advanceTimersByTime(1);
    await stuck;
    await later;
    expect(replies).toEqual([{ kind: 'progress', days: 7 }]);
    expect(FakeWorker.all.map(({ ended }) => ended)).toEqual([true, true, false, false]);
    // The two begin anew in either order.
    expect(FakeWorker.all.slice(2).map((worker) => worker.asked)).toEqual(
      expect.arrayContaining([['join', 'retell'], ['join']]),
    );
  });

  it('is left alone if it was done in time', async () => {
    const { quick, sure } = await startEngines(packed, '1');
    await quick.ask(retell);
    await Promise.all([quick.ask({ kind: 'stop' }), sure.ask({ kind: 'stop' })]);
    vi.advanceTimersByTime(60_000);
    expect(FakeWorker.all).toHaveLength(2);
  });
});
