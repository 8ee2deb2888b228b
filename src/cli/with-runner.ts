/** Work that runs days: on as many threads as pay, with a bar, both gone when it is done or fails. */
import { asMistake } from './parsed.js';
import { daysBar, type Bar } from './progress.js';
import { threadedRunner, type ThreadedRunner } from './workers.js';

export const withRunner = <T>(
  what: string,
  threads: number | undefined,
  work: (runner: ThreadedRunner) => Promise<T>,
): Promise<T> => withBar(daysBar(what), threads, work, true);

/**
 * The same for work whose steps are counted beforehand: the total of the bar never shifts.
 * @param word what the steps are, such as `sites`
 */
export const withSteps = <T>(
  { what, word, steps }: { readonly what: string; readonly word: string; readonly steps: number },
  threads: number | undefined,
  work: (runner: ThreadedRunner, done: () => void) => Promise<T>,
): Promise<T> =>
  withBar(
    daysBar(what, word),
    threads,
    (runner, bar) => {
      bar.ahead(steps);
      return work(runner, () => bar.add(1));
    },
    false,
  );

const SILENT = { add() {}, ahead() {}, expect() {} };

async function withBar<T>(
  made: Promise<Bar>,
  threads: number | undefined,
  work: (runner: ThreadedRunner, bar: Bar) => Promise<T>,
  countsDays: boolean,
): Promise<T> {
  const bar = await made;
  const runner = threadedRunner(countsDays ? bar : SILENT, threads);
  try {
    return await work(runner, bar);
  } catch (error) {
    throw asMistake(error);
  } finally {
    bar.end();
    await runner.close();
  }
}
