/**
 * Who runs the days: this thread, or several. A runner is given a task of any number of days and gives
 * the same bytes however it splits them.
 */
import { DaysTogether, type DaysRun, type RushTask } from './rush.js';
import { runInTurns } from './turns.js';

export interface Runner {
  /** @param after days right after the task's that are sure to be asked for next, as a task of their own: whoever is idle may begin with them */
  run(task: RushTask, after?: number): Promise<DaysRun>;
  /** The days of a task in order, so many together, the last perhaps fewer. */
  apart(task: RushTask, together: number): Promise<readonly DaysRun[]>;
  /** Many days are sure to come: whoever helps may get ready. */
  prepare?(): void;
  /** Awaited now and then by whoever runs days on their own; may throw to cancel. */
  pause?(): Promise<void>;
  /** No more than so many days follow in all, for a progress bar; what was said before no longer counts. */
  expect?(most: number): void;
}

/** Days done so far of a task under way, for a progress bar. */
export type Progress = (daysDone: number) => void;

const DAYS_A_CHUNK = 250;

/** Parts of a task, each of at most `most` days. */
function chunksOf(task: RushTask, most: number): RushTask[] {
  const chunks: RushTask[] = [];
  for (let done = 0; done < task.days; done += most)
    chunks.push({ ...task, from: task.from + done, days: Math.min(most, task.days - done) });
  return chunks;
}

/** Parts by their days, whoever was done first. */
export const byDays = (parts: readonly DaysRun[]): DaysRun[] =>
  parts.toSorted((one, other) => one.from - other.from);

/**
 * Runs in this thread, letting others in between chunks, and within long ones.
 * @param pause awaited then; a page gives its event loop a turn and may throw to cancel
 */
export function inThisThread(
  progress: Progress = () => {},
  pause: () => Promise<void> = async () => {},
): Runner {
  const each = async (
    task: RushTask,
    together: number,
    keep: (part: DaysRun) => void,
  ): Promise<void> => {
    for (const chunk of chunksOf(task, together)) {
      keep(await runInTurns(chunk, pause));
      progress(chunk.days);
      await pause();
    }
  };
  return {
    pause,
    apart: async (task, together) => {
      const parts: DaysRun[] = [];
      await each(task, together, (part) => parts.push(part));
      return parts;
    },
    run: async (task) => {
      const whole = new DaysTogether(task.from, task.days);
      await each(task, DAYS_A_CHUNK, (part) => whole.add(part));
      return whole.result();
    },
  };
}
