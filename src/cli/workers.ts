/**
 * Days on several threads, this one among them. A task is cut into chunks; helpers take them from the
 * first on and this thread from the last back, until they meet. Helpers then go on with the days that
 * are sure to be asked for next, while this thread thinks about those it has. The bytes are the same
 * whoever runs what.
 */
import { availableParallelism } from 'node:os';
import type { Worker } from 'node:worker_threads';
import type { CafeModel } from '../cafe/model.js';
import { mergeDays, type DaysRun, type RushTask } from '../cafe/rush.js';
import { isTooMuch } from '../cafe/too-much.js';
import { runInTurns } from '../cafe/turns.js';
import { byDays, type Runner } from '../cafe/runner.js';
import { claim, claimsFor } from './claims.js';
import { clockMs } from './clock.js';
import { MistakeError } from './mistakes.js';
import type { Bar } from './progress.js';
import { holdSignals, releaseSignals } from './signals.js';
import type { Batch } from './worker.js';

/** Days in all from which helpers are called at once: whatever the house, they are worth their start. */
const MANY = 10_000;
/** Below this much work left, ms, starting helpers costs more than it saves: each has to load and warm up. */
const WORTH_STARTING = 800;
/** A command that has spent this long on its days, ms, seldom ends soon. */
const LONG = 500;
/** Days, or ms, by which a floor that has just opened is warm enough to be timed; days a look at the clock. */
const [WARM_DAYS, WARM_MS, WARM_STEP] = [200, 300, 50];
/** Days that are worth sending to helpers who are there. */
const WORTH_SHARING = 100;
/** Chunks of a batch: enough that nobody waits long for the last one, not so many that sending them tells. */
const CHUNKS = 40;
const [FEWEST, MOST] = [5, 500];

export interface ThreadedRunner extends Runner {
  /** Start the helpers now, as many days are sure to come: they load while the first are run. */
  prepare(): void;
  close(): Promise<void>;
}

interface Shared extends Batch {
  readonly whole: RushTask;
  readonly parts: DaysRun[];
  readonly waiting: { done(): void; failed(error: Error): void };
  readonly finished: Promise<void>;
}

export function threadedRunner(
  { add: progress, ahead, expect }: Pick<Bar, 'add' | 'ahead' | 'expect'>,
  threads: number = availableParallelism(),
): ThreadedRunner {
  const workers: Worker[] = [];
  const batches = new Map<number, Shared>();
  let lastModel: CafeModel | null = null;
  let number = 0;
  let [msADay, spent] = [Infinity, 0];

  const take = (batch: Shared, part: DaysRun): void => {
    batch.parts.push(part);
    progress(part.days);
    if (batch.parts.length === batch.claims.length) batch.waiting.done();
  };

  const prepare = (): void => {
    // Most commands end before they call a helper, so this is loaded here.
    const { Worker: Helper } = process.getBuiltinModule('node:worker_threads');
    while (workers.length < threads - 1) {
      const worker = new Helper(new URL('./worker.js', import.meta.url));
      worker.on('message', (sent: { number: number; part: DaysRun }) => {
        const batch = batches.get(sent.number);
        if (batch !== undefined) take(batch, sent.part);
      });
      worker.on('error', (error) => {
        for (const batch of batches.values()) batch.waiting.failed(error);
      });
      // One that ends by itself may have taken a part that nobody else will run.
      worker.on('exit', (code) => {
        const at = workers.indexOf(worker);
        if (at < 0) return;
        workers.splice(at, 1);
        for (const batch of batches.values())
          batch.waiting.failed(new Error(`a helper thread ended by itself, with ${code}`));
      });
      workers.push(worker);
    }
  };

  /** Cut a task into chunks and lay them out for all threads. */
  const share = (whole: RushTask, daysAChunk: number): Shared => {
    const { model, ...task } = whole;
    const waiting: Shared['waiting'] = { done() {}, failed() {} };
    const finished = new Promise<void>((resolve, reject) =>
      Object.assign(waiting, { done: resolve, failed: reject }),
    );
    // A batch that nobody waits for any more may fail unheard.
    finished.catch(() => {});
    number += 1;
    const batch: Batch = {
      number,
      task,
      model: lastModel === model ? null : model,
      daysAChunk,
      claims: claimsFor(Math.ceil(task.days / daysAChunk)),
    };
    const shared = { ...batch, whole, parts: [], waiting, finished };
    batches.set(number, shared);
    lastModel = model;
    for (const worker of workers) worker.postMessage(batch);
    return shared;
  };

  /** The batch of these very days if helpers are at it already; others that were laid out for nothing are taken back. */
  const laidOut = (task: RushTask): Shared | null => {
    let found: Shared | null = null;
    for (const batch of batches.values()) {
      if (same(batch.whole, task)) found = batch;
      else {
        for (let chunk = 0; chunk < batch.claims.length; chunk += 1) claim(batch.claims, chunk);
        batches.delete(batch.number);
      }
    }
    return found;
  };

  const pause = async (): Promise<void> => {
    // No day is over, but the bar may be due.
    progress(0);
    await turn();
  };

  const here = async (task: RushTask): Promise<DaysRun> => {
    const started = clockMs();
    const part = await runInTurns(task, pause);
    const ms = clockMs() - started;
    spent += ms;
    if (part.days >= FEWEST) msADay = ms / part.days;
    return part;
  };

  /** @param together days a part; null: as many as suit */
  const parts = async (
    task: RushTask,
    after: number,
    together: number | null,
  ): Promise<DaysRun[]> => {
    if (task.days < 1) throw new RangeError('a task of no days');
    ahead(task.days + after);
    const early: DaysRun[] = [];
    let left = task;
    const some = async (days: number): Promise<void> => {
      const part = await here({ ...left, days: Math.min(days, left.days) });
      progress(part.days);
      early.push(part);
      left = { ...left, from: left.from + part.days, days: left.days - part.days };
      await turn();
    };
    if (task.days + after >= MANY) prepare();
    // Without helpers, some days are run to see whether calling them pays.
    const started = clockMs();
    while (workers.length === 0 && threads > 1 && left.days > WORTH_SHARING) {
      const warm = left.from - task.from >= WARM_DAYS || clockMs() - started >= WARM_MS;
      if (spent > LONG || (warm && msADay * (left.days + after) > WORTH_STARTING)) prepare();
      else await some(together ?? WARM_STEP);
    }
    if (workers.length === 0 || left.days < WORTH_SHARING) {
      for (const days = together ?? daysAChunkOf(left); left.days > 0;) await some(days);
      return early;
    }
    const batch =
      (together === null ? laidOut(left) : null) ?? share(left, together ?? daysAChunkOf(left));
    if (after >= WORTH_SHARING) {
      const next = { ...task, from: task.from + task.days, days: after };
      share(next, daysAChunkOf(next));
    }
    for (let chunk = batch.claims.length - 1; chunk >= 0; chunk -= 1) {
      if (!claim(batch.claims, chunk)) continue;
      const done = chunk * batch.daysAChunk;
      take(
        batch,
        await here({
          ...left,
          from: left.from + done,
          days: Math.min(batch.daysAChunk, left.days - done),
        }),
      );
      await turn();
    }
    await batch.finished;
    batches.delete(batch.number);
    return byDays([...early, ...batch.parts]);
  };

  return {
    prepare,
    expect,
    pause,
    run: async (task, after = 0) => mergeDays(await asMistakes(parts(task, after, null))),
    apart: (task, together) => asMistakes(parts(task, 0, together)),
    async close() {
      await Promise.all(workers.splice(0).map((worker) => worker.terminate()));
    },
  };
}

const daysAChunkOf = ({ days }: RushTask): number =>
  Math.max(FEWEST, Math.min(MOST, Math.ceil(days / CHUNKS)));

const same = (one: RushTask, other: RushTask): boolean =>
  one.model === other.model &&
  one.seed === other.seed &&
  one.from === other.from &&
  one.days === other.days &&
  one.stock === other.stock &&
  one.listed === other.listed &&
  one.byDay === other.byDay;

/** What a scenario asks too much of is its writer's mistake, whichever thread met it. Meanwhile signals are ours to hear. */
async function asMistakes(parts: Promise<DaysRun[]>): Promise<DaysRun[]> {
  holdSignals();
  try {
    return await parts;
  } catch (error) {
    throw error instanceof Error && isTooMuch(error) ? new MistakeError(error.message) : error;
  } finally {
    await releaseSignals();
  }
}

/** Lets messages of helpers in, and signals. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
