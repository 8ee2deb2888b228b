/**
 * Who runs the days: this thread, or several. A runner is given a task of any number of days and gives
 * the same bytes however it splits them.
 */
import { mergeDays, runDays, type DaysRun, type RushTask } from '../cafe/rush.js';

export interface Runner {
  /** @param after days right after the task's that are sure to be asked for next, as a task of their own: whoever is idle may begin with them */
  run(task: RushTask, after?: number): Promise<DaysRun>;
}

/** Days done so far of a task under way, for a progress bar. */
export type Progress = (daysDone: number) => void;

const DAYS_A_CHUNK = 250;

/** Parts of a task, each of at most `most` days. */
export function chunksOf(task: RushTask, most: number = DAYS_A_CHUNK): RushTask[] {
  const chunks: RushTask[] = [];
  for (let done = 0; done < task.days; done += most) chunks.push({ ...task, from: task.from + done, days: Math.min(most, task.days - done) });
  return chunks;
}

/**
 * Runs in this thread, letting others in between chunks.
 * @param pause awaited between chunks; a page gives its event loop a turn and may throw to cancel
 */
export function inThisThread(progress: Progress = () => {}, pause: () => Promise<void> = async () => {}): Runner {
  return {
    async run(task) {
      const parts: DaysRun[] = [];
      for (const chunk of chunksOf(task)) {
        parts.push(runDays(chunk));
        progress(chunk.days);
        await pause();
      }
      return mergeDays(parts);
    },
  };
}
