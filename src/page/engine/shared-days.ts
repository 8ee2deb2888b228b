/**
 * Days shared between the two engines: the one that works out the certified answer runs chunks itself
 * and hands others to its neighbour. A chunk is short, so that either can turn to the reader in between.
 */
import { mergeDays, runDays, type DaysRun, type RushTask } from '../../cafe/rush.js';
import type { CafeModel } from '../../cafe/model.js';
import type { Runner } from '../../study/runner.js';

/** A chunk that the neighbour is asked to run. */
interface Errand {
  /** Comes back with the days, so that those of a run given up are not taken for another's. */
  readonly number: number;
  readonly task: Omit<RushTask, 'model'>;
  /** The café, where it is another than that sent last: the neighbour's floor then stays warm. */
  readonly model: CafeModel | null;
}

interface Returned {
  readonly number: number;
  readonly part: DaysRun;
}

/** Time that a chunk should take: short beside the tenth of a second in which a change is answered. */
const CHUNK_MS = 20;
const FIRST_DAYS = 20;
/** Tasks of fewer days than this are not worth the post. */
const WORTH_SHARING = 150;

/** Run what the neighbour sends through the port. */
export function serveDays(port: MessagePort): void {
  let known: CafeModel | null = null;
  port.onmessage = ({ data }: MessageEvent<Errand>) => {
    known = data.model ?? known;
    const part = runDays({ ...data.task, model: known! });
    port.postMessage({ number: data.number, part } satisfies Returned, [part.peaks.buffer as ArrayBuffer, part.rackPeaks.buffer as ArrayBuffer]);
  };
}

/** Thrown out of a run that is no longer wanted. */
export class Stopped extends Error {}

/**
 * @param port to the neighbour; null: run everything here
 * @param wanted false once the run is of no more use; it then throws `Stopped` at the next pause
 */
export function sharingRunner(port: MessagePort | null, wanted: () => boolean, progress: (days: number) => void = () => {}): Runner {
  return {
    async run(task) {
      const parts: DaysRun[] = [];
      const end = task.from + task.days;
      const helper = port !== null && task.days >= WORTH_SHARING ? port : null;
      let next = task.from;
      let chunkDays = FIRST_DAYS;
      const chunk = (): { from: number; days: number } => {
        const from = next;
        const days = Math.min(chunkDays, end - from);
        next += days;
        return { from, days };
      };
      const keep = (part: DaysRun): void => {
        parts.push(part);
        progress(part.days);
      };
      let away: Promise<void> | null = null;
      const errand = async (to: MessagePort): Promise<void> => {
        while (next < end && wanted()) {
          keep(await sent(to, { ...task, ...chunk() }));
        }
      };
      while (next < end) {
        const started = performance.now();
        const own = chunk();
        keep(runDays({ ...task, ...own }));
        const ms = performance.now() - started;
        chunkDays = Math.max(1, Math.round(Math.min(4, CHUNK_MS / Math.max(ms, 0.1)) * own.days));
        await turn();
        if (!wanted()) throw new Stopped();
        if (helper !== null && away === null && next < end) away = errand(helper);
      }
      await away;
      if (!wanted()) throw new Stopped();
      return mergeDays(parts);
    },
  };
}

let errands = 0;
const sentLast = new WeakMap<MessagePort, CafeModel>();

function sent(port: MessagePort, { model, ...task }: RushTask): Promise<DaysRun> {
  errands += 1;
  const number = errands;
  const known = sentLast.get(port) === model;
  sentLast.set(port, model);
  return new Promise((resolve) => {
    port.onmessage = ({ data }: MessageEvent<Returned>) => {
      if (data.number === number) resolve(data.part);
    };
    port.postMessage({ number, task, model: known ? null : model } satisfies Errand);
  });
}

/** Lets waiting messages in. A timer would wait for milliseconds; a message to oneself does not. */
export const turn = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
