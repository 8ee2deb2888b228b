/** One thread of days: takes chunks that nobody has taken yet, from the first on, and sends back what each left behind. */
import { parentPort } from 'node:worker_threads';
import type { CafeModel } from '../cafe/model.js';
import { runDays } from '../cafe/run-days.js';
import type { RushTask } from '../cafe/rush.js';
import { claim, type Claims } from './claims.js';

/** Days to run, shared among threads. */
export interface Batch {
  readonly number: number;
  readonly task: Omit<RushTask, 'model'>;
  /** The café, where it is another than that sent last: this thread's floor then stays warm. */
  readonly model: CafeModel | null;
  readonly daysAChunk: number;
  readonly claims: Claims;
}

/** The café sent last. */
const last: { model: CafeModel | null } = { model: null };

parentPort?.on('message', ({ number, task, model, daysAChunk, claims }: Batch) => {
  last.model = model ?? last.model;
  for (let chunk = 0; chunk < claims.length; chunk += 1) {
    if (!claim(claims, chunk)) continue;
    const done = chunk * daysAChunk;
    const part = runDays({
      ...task,
      model: last.model!,
      from: task.from + done,
      days: Math.min(daysAChunk, task.days - done),
    });
    // Copied, not handed over: once a buffer of a thread is given away, its compiled programs check every array they touch.
    parentPort!.postMessage({ number, part });
  }
});
