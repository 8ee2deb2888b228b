/**
 * Days shared between the engines: the one that works out the certified answer runs chunks itself
 * and hands others to its neighbours. A chunk is short, so that each can turn to the reader in between.
 * While the first then thinks about its days, the neighbours begin with those that come next.
 */
import { mergeDays, type DaysRun, type RushTask } from '../../cafe/rush.js';
import { runInTurns } from '../../cafe/turns.js';
import type { CafeModel } from '../../cafe/model.js';
import { byDays, type Runner } from '../../cafe/runner.js';

/** A chunk that the neighbour is asked to run. */
interface Errand {
  /** Comes back with the days, so that those of a run given up are not taken for another's. */
  readonly number: number;
  readonly task: Omit<RushTask, 'model'>;
  /** The café, where it is another than that sent last: the neighbour's floor then stays warm. */
  readonly model: CafeModel | null;
}

/** Why there are no days; as plain data, for an error that is sent keeps no name of ours. */
interface Fault {
  readonly name: string;
  readonly fault: string;
}

interface Returned {
  readonly number: number;
  readonly part: DaysRun | Fault;
}

/** Time that a chunk should take: short beside the tenth of a second in which a change is answered. */
const CHUNK_MS = 20;
const FIRST_DAYS = 20;
/** Tasks of fewer days than this are not worth the post. */
const WORTH_SHARING = 150;
/** Chunks that a neighbour has at once: one to run, and one to go on with until the next comes. */
const IN_HAND = 2;
/** Chunks sent ahead to each: about as long as it takes to think about the days before; and no more than this share of them, as what was sent cannot be shared any more. */
const [AHEAD, AHEAD_SHARE] = [6, 0.25];

/** Thrown out of a run that is no longer wanted. */
export class Stopped extends Error {}

/** Run what the neighbour sends through the port, with a look at what else has come after each chunk; null takes back what waits. */
export function serveDays(port: MessagePort): void {
  let known: CafeModel | null = null;
  let waiting: { readonly number: number; readonly task: RushTask }[] = [];
  let busy = false;
  /** How often what waits was taken back. */
  let takenBack = 0;
  const runErrand = async (task: RushTask): Promise<DaysRun | Fault> => {
    const begun = takenBack;
    try {
      return await runInTurns(task, async () => {
        await turn();
        if (takenBack !== begun) throw new Stopped();
      });
    } catch (error) {
      return error instanceof Error
        ? { name: error.name, fault: error.message }
        : { name: 'Error', fault: String(error) };
    }
  };
  const work = async (): Promise<void> => {
    busy = true;
    for (let errand = waiting.shift(); errand !== undefined; errand = waiting.shift()) {
      const part = await runErrand(errand.task);
      // Copied, not handed over: once a buffer of a thread is given away, its compiled programs check every array they touch.
      port.postMessage({ number: errand.number, part } satisfies Returned);
      await turn();
    }
    busy = false;
  };
  port.onmessage = ({ data }: MessageEvent<Errand | null>) => {
    if (data === null) {
      takenBack += 1;
      waiting = [];
      return;
    }
    known = data.model ?? known;
    waiting.push({ number: data.number, task: { ...data.task, model: known! } });
    if (!busy) void work();
  };
}

/** The first days of a task, which the neighbour was sent before they were asked for. */
interface Begun {
  readonly task: RushTask;
  readonly parts: readonly Promise<DaysRun>[];
  readonly end: number;
}

/**
 * @param ports to the neighbours; none: run everything here
 * @param wanted false once the run is of no more use; it then throws `Stopped` at the next pause
 */
export function sharingRunner(
  ports: readonly MessagePort[],
  wanted: () => boolean,
  progress: (days: number) => void = () => {},
): Runner {
  const neighbours = ports.map(neighbourAt);
  const takeBack = (): void => neighbours.forEach((one) => one.takeBack());
  let ahead: Begun | null = null;
  const stopIfUnwanted = (): void => {
    if (wanted()) return;
    takeBack();
    throw new Stopped();
  };
  const pause = async (): Promise<void> => {
    await turn();
    stopIfUnwanted();
  };
  /** @param together days a part; null: as many as suit */
  const parts = async (
    task: RushTask,
    after: number,
    together: number | null,
  ): Promise<DaysRun[]> => {
    const begun = ahead !== null && same(ahead.task, task) ? ahead : null;
    if (begun === null && ahead !== null) takeBack();
    ahead = null;
    const done: DaysRun[] = [];
    const keep = (part: DaysRun): void => {
      done.push(part);
      progress(part.days);
    };
    /** What others run; what goes wrong there is met when all is awaited. */
    const away = begun?.parts.map(async (part) => keep(await part)) ?? [];
    const helpers = task.days >= WORTH_SHARING ? neighbours : [];
    const end = task.from + task.days;
    let next = begun?.end ?? task.from;
    let chunkDays = together ?? FIRST_DAYS;
    const chunk = (): { from: number; days: number } => {
      const from = next;
      const days = Math.min(chunkDays, end - from);
      next += days;
      return { from, days };
    };
    const errands = async (to: Neighbour): Promise<void> => {
      while (next < end && wanted()) keep(await to.send({ ...task, ...chunk() }));
    };
    let handedOut = false;
    while (next < end) {
      const started = performance.now();
      const own = chunk();
      keep(await runInTurns({ ...task, ...own }, pause));
      const ms = performance.now() - started;
      if (together === null)
        chunkDays = Math.max(1, Math.round(Math.min(4, CHUNK_MS / Math.max(ms, 0.1)) * own.days));
      await pause();
      // How long a day takes is known only now.
      if (!handedOut)
        for (let hand = 0; hand < IN_HAND; hand += 1) away.push(...helpers.map(errands));
      handedOut = true;
    }
    if (helpers.length > 0 && after > 0)
      ahead = sentAhead(helpers, { ...task, from: end, days: after }, chunkDays);
    await Promise.all(away);
    stopIfUnwanted();
    return byDays(done);
  };
  return {
    pause,
    run: async (task, after = 0) => mergeDays(await parts(task, after, null)),
    apart: (task, together) => parts(task, 0, together),
  };
}

function sentAhead(to: readonly Neighbour[], task: RushTask, chunkDays: number): Begun {
  const most = AHEAD * to.length * chunkDays;
  const end = task.from + Math.min(Math.ceil(task.days * AHEAD_SHARE), most);
  const parts: Promise<DaysRun>[] = [];
  for (let from = task.from; from < end; from += chunkDays)
    parts.push(
      to[parts.length % to.length]!.send({
        ...task,
        from,
        days: Math.min(chunkDays, end - from),
      }),
    );
  return { task, parts, end };
}

const same = (one: RushTask, other: RushTask): boolean =>
  one.model === other.model &&
  one.seed === other.seed &&
  one.from === other.from &&
  one.days === other.days &&
  one.stock === other.stock &&
  one.listed === other.listed;

interface Neighbour {
  send(task: RushTask): Promise<DaysRun>;
  /** Whatever was sent and has not come back is not wanted any more. */
  takeBack(): void;
}

const failed = ({ name, fault }: Fault): Promise<never> =>
  Promise.reject(Object.assign(new Error(fault), { name }));

let errandNumber = 0;
const known = new WeakMap<MessagePort, Neighbour>();

function neighbourAt(port: MessagePort): Neighbour {
  const before = known.get(port);
  if (before !== undefined) return before;
  const away = new Map<number, (part: DaysRun | Promise<never>) => void>();
  let lastModel: CafeModel | null = null;
  port.onmessage = ({ data }: MessageEvent<Returned>) => {
    const { number, part } = data;
    away.get(number)?.('fault' in part ? failed(part) : part);
    away.delete(number);
  };
  const neighbour: Neighbour = {
    send({ model, ...task }) {
      errandNumber += 1;
      const number = errandNumber;
      const errand: Errand = { number, task, model: model === lastModel ? null : model };
      lastModel = model;
      port.postMessage(errand);
      return new Promise((resolve) => away.set(number, resolve));
    },
    takeBack() {
      away.clear();
      port.postMessage(null);
    },
  };
  known.set(port, neighbour);
  return neighbour;
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
