/**
 * Days on several threads. A task is timed on its first chunk; when what is left would take long enough
 * to be worth starting threads, the rest is shared out in chunks. The bytes are the same either way.
 */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { mergeDays, runDays, type DaysRun, type RushTask } from '../cafe/rush.js';
import { chunksOf, type Progress, type Runner } from '../study/runner.js';

/** Below this much work left, ms, starting threads costs more than it saves. */
const WORTH_STARTING = 600;
const CHUNK_MS = 100;

export interface ThreadedRunner extends Runner {
  close(): Promise<void>;
}

export function threadedRunner(progress: Progress, threads: number = availableParallelism()): ThreadedRunner {
  const workers: Worker[] = [];
  return {
    async run(task) {
      const probe = chunksOf({ ...task, days: Math.min(task.days, 50) })[0];
      if (probe === undefined) throw new RangeError('a task of no days');
      const started = performance.now();
      const first = runDays(probe);
      progress(first.days);
      const msADay = (performance.now() - started) / first.days;
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
      return mergeDays([first, ...(await shareOut(workers, chunks, progress))]);
    },
    async close() {
      await Promise.all(workers.splice(0).map((worker) => worker.terminate()));
    },
  };
}

function shareOut(workers: readonly Worker[], chunks: readonly RushTask[], progress: Progress): Promise<DaysRun[]> {
  const done: DaysRun[] = [];
  let next = 0;
  return new Promise((resolve, reject) => {
    for (const worker of workers) {
      const give = (): void => {
        if (next < chunks.length) {
          worker.postMessage(chunks[next]);
          next += 1;
        }
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
