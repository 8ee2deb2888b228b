/** The engines as the page sees them: ask, and receive each reply until it is done. */
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
  /** Others get ready to run days for it, one for each further core. */
  widen(): void;
}

/** Engines on a machine that has as many cores: more would be no quicker for the chunks that are handed out. */
const MOST_ENGINES = 8;

/** What is to stop and has not after this long, ms, is stuck in something that does not pause. */
const STUCK_MS = 5000;

interface Restarted extends Engine {
  /** Ends the worker and begins anew; what was asked before the last stop is given up, the rest asked again. */
  restart(): void;
  /** Asks again what stands open. */
  askAgain(): void;
}

/** @param packed the engine's program, deflated, as packed text */
export async function startEngines(packed: string, version: string): Promise<Engines> {
  const program = await inflated(packed);
  const address = URL.createObjectURL(new Blob([program], { type: 'text/javascript' }));
  const sharing = (other: Engine): Promise<unknown> => {
    const { port1, port2 } = new MessageChannel();
    return Promise.all([
      other.ask({ kind: 'join', port: port1, version }, undefined, [port1]),
      sure.ask({ kind: 'join', port: port2, version }, undefined, [port2]),
    ]);
  };
  // All, as any may wait for days that another was to run.
  const stuck = (): void => {
    for (const engine of [sure, ...others]) engine.restart();
    for (const other of others) void sharing(other);
    for (const engine of [sure, ...others]) engine.askAgain();
  };
  const [quick, sure] = [engineAt(address, stuck), engineAt(address, stuck)];
  const others = [quick];
  await sharing(quick);
  return {
    quick,
    sure,
    widen() {
      const cores = Math.min(MOST_ENGINES, navigator.hardwareConcurrency);
      while (others.length + 1 < cores) {
        const other = engineAt(address, stuck);
        others.push(other);
        void sharing(other);
      }
    },
  };
}

function engineAt(address: string, stuck: () => void): Restarted {
  const open = new Map<number, { request: Request; onReply: OnReply; done: () => void }>();
  let [asked, stopped] = [0, 0];
  const begun = (): Worker => {
    const worker = new Worker(address);
    worker.onmessage = ({ data }: MessageEvent<Answered>) => {
      const { id, reply } = data;
      const one = open.get(id);
      if (one === undefined) return;
      if (reply.kind === 'several') return reply.replies.forEach(one.onReply);
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
    return worker;
  };
  let worker = begun();
  return {
    ask(request, onReply = () => {}, transfer = []) {
      asked += 1;
      const id = asked;
      if (request.kind === 'stop') {
        stopped = id;
        const given = [...open.keys()];
        setTimeout(() => given.some((one) => open.has(one)) && stuck(), STUCK_MS);
      }
      return new Promise((done) => {
        open.set(id, { request, onReply, done });
        worker.postMessage({ id, request } satisfies Ask, transfer);
      });
    },
    restart() {
      worker.terminate();
      for (const [id, { done }] of open) {
        if (id > stopped) continue;
        open.delete(id);
        done();
      }
      worker = begun();
    },
    askAgain() {
      for (const [id, { request }] of open)
        if (request.kind !== 'join') worker.postMessage({ id, request } satisfies Ask);
    },
  };
}
