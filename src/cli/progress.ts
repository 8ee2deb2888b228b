/** A bar on stderr for work that takes over a second; on a terminal only. */
import type { SingleBar } from 'cli-progress';

export interface Bar {
  /** Days done since the last call. */
  add(days: number): void;
  end(): void;
}

const AFTER_MS = 1000;

/** @param what said before the bar; the whole is not known beforehand, so the bar counts days */
export async function daysBar(what: string): Promise<Bar> {
  if (!process.stderr.isTTY) return { add() {}, end() {} };
  const { default: progress } = await import('cli-progress');
  const started = performance.now();
  let bar: SingleBar | null = null;
  let done = 0;
  return {
    add(days) {
      done += days;
      if (bar === null && performance.now() - started > AFTER_MS) {
        bar = new progress.SingleBar(
          {
            format: `${what} [{bar}] {value} days`,
            stream: process.stderr,
            hideCursor: true,
            clearOnComplete: true,
          },
          progress.Presets.shades_classic,
        );
        bar.start(done * 2, done);
      }
      if (bar !== null && done > bar.getTotal()) bar.setTotal(done * 2);
      bar?.update(done);
    },
    end() {
      bar?.stop();
    },
  };
}
