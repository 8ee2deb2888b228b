/** The two engines as the page sees them: ask, and receive each reply until it is done. */
import { inflated } from './packed-text.js';
import type { Answered, Ask, Reply, Request } from './messages.js';

export type OnReply = (reply: Reply) => void;

export interface Engine {
  /** @returns resolves once the engine is done with it, given up or not */
  ask(request: Request, onReply?: OnReply, transfer?: Transferable[]): Promise<void>;
}

export interface Engines {
  /** Answers changes at once. */
  readonly quick: Engine;
  /** Works out what takes longer. */
  readonly sure: Engine;
}

/** @param packed the engine's program, deflated, as packed text */
export async function startEngines(packed: string, version: string): Promise<Engines> {
  const program = await inflated(packed);
  const address = URL.createObjectURL(new Blob([program], { type: 'text/javascript' }));
  const [quick, sure] = [engineAt(address), engineAt(address)];
  const { port1, port2 } = new MessageChannel();
  await Promise.all([
    quick.ask({ kind: 'join', port: port1, version }, undefined, [port1]),
    sure.ask({ kind: 'join', port: port2, version }, undefined, [port2]),
  ]);
  return { quick, sure };
}

function engineAt(address: string): Engine {
  const worker = new Worker(address);
  const open = new Map<number, { onReply: OnReply; done: () => void }>();
  let asked = 0;
  worker.onmessage = ({ data }: MessageEvent<Answered>) => {
    const { id, reply } = data;
    const one = open.get(id);
    if (one === undefined) return;
    if (reply.kind !== 'done') return one.onReply(reply);
    open.delete(id);
    one.done();
  };
  worker.onerror = (event) => {
    event.preventDefault();
    for (const { onReply, done } of open.values()) {
      onReply({ kind: 'fault', message: event.message });
      done();
    }
    open.clear();
  };
  return {
    ask(request, onReply = () => {}, transfer = []) {
      asked += 1;
      const id = asked;
      return new Promise((done) => {
        open.set(id, { onReply, done });
        worker.postMessage({ id, request } satisfies Ask, transfer);
      });
    },
  };
}
