/**
 * Days on several threads. A task is timed on its first chunk; when what is left would take long enough
 * to be worth starting threads, the rest is shared out in chunks. The bytes are the same either way.
 */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { mergeDays, runDays, type DaysRun, type RushTask } from '../cafe/rush.js';
import type { Assignment } from './worker.js';
import { chunksOf, type Progress, type Runner } from '../study/runner.js';

/** Below this much work left, ms, starting threads costs more than it saves: each has to load and warm up. */
const WORTH_STARTING = 1500;
const CHUNK_MS = 100;
/** Days to get warm, and days to time, before the rest is shared out. */
const WARM_UP = 200;
const TIMED = 100;

export interface ThreadedRunner extends Runner {
  close(): Promise<void>;
}

export function threadedRunner(progress: Progress, threads: number = availableParallelism()): ThreadedRunner {
  const workers: Worker[] = [];
  return {
    async run(task) {
      if (task.days < 1) throw new RangeError('a task of no days');
      const timed = (from: number, most: number): { part: DaysRun; ms: number } => {
        const started = performance.now();
        const part = runDays({ ...task, from, days: Math.min(most, task.from + task.days - from) });
        progress(part.days);
        return { part, ms: performance.now() - started };
      };
      const warm = timed(task.from, WARM_UP).part;
      if (warm.days === task.days) return warm;
      const { part, ms } = timed(task.from + warm.days, TIMED);
      const msADay = ms / part.days;
      const first = mergeDays([warm, part]);
      const rest: RushTask = { ...task, from: task.from + first.days, days: task.days - first.days };
      if (rest.days === 0) return first;
      const most = Math.max(10, Math.min(5000, Math.round(CHUNK_MS / msADay)));
      const chunks = chunksOf(rest, most);
      if (threads < 2 || msADay * rest.days < WORTH_STARTING) {
        const parts = chunks.map((chunk) => {
          const part = runDays(chunk);
          progress(part.days);
          return part;
        });
        return mergeDays([first, ...parts]);
      }
      while (workers.length < threads) workers.push(new Worker(new URL('./worker.js', import.meta.url)));
      return mergeDays([first, ...(await shareOut(workers, rest, chunks, progress))]);
    },
    async close() {
      await Promise.all(workers.splice(0).map((worker) => worker.terminate()));
    },
  };
}

function shareOut(workers: readonly Worker[], task: RushTask, chunks: readonly RushTask[], progress: Progress): Promise<DaysRun[]> {
  const done: DaysRun[] = [];
  let next = 0;
  return new Promise((resolve, reject) => {
    for (const worker of workers) {
      // The café is sent once a thread, so that its floor stays warm from chunk to chunk.
      let told = false;
      const give = (): void => {
        const chunk = chunks[next];
        if (chunk === undefined) return;
        next += 1;
        const assignment: Assignment = { task: told ? null : task, from: chunk.from, days: chunk.days };
        told = true;
        worker.postMessage(assignment);
      };
      worker.removeAllListeners('message');
      worker.removeAllListeners('error');
      worker.on('error', reject);
      worker.on('message', (part: DaysRun) => {
        done.push(part);
        progress(part.days);
        if (done.length === chunks.length) resolve(done);
        else give();
      });
      give();
    }
  });
}
