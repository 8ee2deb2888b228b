/** One thread of days: runs each task it is sent and sends back what the days left behind. */
import { parentPort } from 'node:worker_threads';
import { runDays, type RushTask } from '../cafe/rush.js';

parentPort?.on('message', (task: RushTask) => {
  const run = runDays(task);
  parentPort?.postMessage(run, [run.peaks.buffer as ArrayBuffer, run.rackPeaks.buffer as ArrayBuffer]);
});
