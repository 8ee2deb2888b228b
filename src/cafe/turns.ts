/** Days with pauses, so that signals, messages and cancelling get through within a long one. */
import type { Day } from './day.js';
import type { Floor, Watcher } from './floor.js';
import { RunningDays } from './run-days.js';
import type { DaysRun, RushTask } from './rush.js';

/** Events between two pauses: some hundredths of a second. */
const EVENTS_A_TURN = 50_000;

type Pause = () => Promise<void>;

/** Run the days of a task. The same bytes as `runDays`. */
export async function runInTurns(task: RushTask, pause: Pause): Promise<DaysRun> {
  const run = new RunningDays(task);
  while (!run.advance(EVENTS_A_TURN)) await pause();
  return run.result();
}

/** Runs single days under the eyes of somebody, pausing after so many events of however many days. */
export class Turns {
  private left = EVENTS_A_TURN;

  constructor(private readonly pause: Pause) {}

  /** As `Floor.run`. */
  async run(
    floor: Floor,
    day: Day,
    number: number,
    stock: ArrayLike<number> | null,
    watcher: Watcher,
  ): Promise<void> {
    floor.open(day, number, stock);
    for (let over = false; !over;) {
      const before = floor.happened;
      over = floor.advance(this.left, watcher);
      this.left -= floor.happened - before;
      if (this.left > 0) continue;
      this.left = EVENTS_A_TURN;
      await this.pause();
    }
  }
}
