/** One thread of days: told once what to run, then which days; sends back what they left behind. */
import { parentPort } from 'node:worker_threads';
import { runDays, type RushTask } from '../cafe/rush.js';

/** What a thread is sent: the task when it is new, else only the days of the task last sent. */
export interface Assignment {
  readonly task: RushTask | null;
  readonly from: number;
  readonly days: number;
}

let known: RushTask | null = null;

parentPort?.on('message', ({ task, from, days }: Assignment) => {
  known = task ?? known;
  if (known === null) throw new Error('days were given before a task');
  const run = runDays({ ...known, from, days });
  parentPort?.postMessage(run, [run.peaks.buffer as ArrayBuffer, run.rackPeaks.buffer as ArrayBuffer]);
});
