/** Work that runs days: on as many threads as pay, with a bar, both gone when it is done or fails. */
import { asMistake } from './parsed.js';
import { daysBar } from './progress.js';
import { threadedRunner, type ThreadedRunner } from './workers.js';

export async function withRunner<T>(
  what: string,
  threads: number | undefined,
  work: (runner: ThreadedRunner) => Promise<T>,
): Promise<T> {
  const bar = await daysBar(what);
  const runner = threadedRunner(bar, threads);
  try {
    return await work(runner);
  } catch (error) {
    throw asMistake(error);
  } finally {
    bar.end();
    await runner.close();
  }
}
