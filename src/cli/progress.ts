/** A bar on stderr for work that takes over a second; where that is no terminal, one line for work that will take long. */
import type { Params, SingleBar } from 'cli-progress';
import { clockMs } from './clock.js';
import { widthOf } from './terminal.js';

export interface Bar {
  /** Days done since the last call. */
  add(days: number): void;
  /** Days that are sure to be run from now on, those of the present task included. */
  ahead(days: number): void;
  /** At most so many days will be run from now on, until anything else is said. */
  expect(most: number): void;
  end(): void;
}

const AFTER_MS = 1000;
/** Processor time left, s, from which a line is worth writing; the same however busy the machine is. */
const LONG_S = 10;
const WARM_S = 1;
/** Time between two looks at the processor time, ms. */
const ASK_MS = 100;
const NARROW = 60;

interface Standing {
  readonly done: number;
  readonly total: number;
  /** `total` is the most that it can be. */
  readonly most?: boolean;
  /** What is counted; days unless said. */
  readonly word?: string;
}

/** @param left time that is left, s */
function standing({ done, total, most, word = 'days' }: Standing, left: number): string {
  // A count of days may grow; that of anything else is known before.
  const sure = word !== 'days';
  const [of, about] = most === true ? ['up to ', 'up to'] : [sure ? '' : 'at least ', 'about'];
  return `${done.toLocaleString('en')} of ${total > done ? of : ''}${total.toLocaleString('en')} ${word}${left < 1 ? '' : `, ${about} ${timeText(left)} left`}`;
}

/** What is said on the line of the bar; never wider than the terminal, so that it never wraps. */
export function barLine(
  what: string,
  now: Standing & { /** Since the beginning. */ readonly seconds: number },
  columns: number,
): string {
  const { done, total, seconds } = now;
  const words = standing(now, done > 0 ? ((total - done) * seconds) / done : 0);
  const wide = Math.min(30, columns - what.length - words.length - 5);
  const filled = Math.round(wide * Math.min(1, done / total));
  const line =
    columns < NARROW || wide < 5
      ? `${what}: ${words}`
      : `${what} [${'='.repeat(filled)}${' '.repeat(wide - filled)}] ${words}`;
  return line.slice(0, columns - 1);
}

const timeText = (seconds: number): string =>
  seconds < 90 ? `${Math.ceil(seconds)} s` : `${Math.ceil(seconds / 60)} min`;

/**
 * @param what said before the bar
 * @param word what is counted: days, whose total grows as they are found, or anything whose total is set at the beginning
 */
export async function daysBar(what: string, word = 'days'): Promise<Bar> {
  const { stderr } = process;
  if (!stderr.isTTY || process.env['TERM'] === 'dumb')
    return oneLine(what, word, (line) => void stderr.write(`${line}\n`));
  const { default: progress } = await import('cli-progress');
  const started = clockMs();
  let bar: SingleBar | null = null;
  let [done, total] = [0, 0];
  let most = false;
  return {
    add(days) {
      done += days;
      total = Math.max(total, done);
      if (bar === null && clockMs() - started > AFTER_MS) {
        // Neither hides the cursor nor changes how lines wrap: then nothing is left to restore, however the command ends.
        bar = new progress.SingleBar({
          format: (_options: unknown, { value, total: whole }: Params) =>
            barLine(
              what,
              {
                done: value,
                total: whole,
                most,
                seconds: (clockMs() - started) / 1000,
                word,
              },
              widthOf(stderr),
            ),
          stream: stderr,
          hideCursor: false,
          linewrap: true,
          gracefulExit: false,
          clearOnComplete: true,
        });
        bar.start(total, done);
      }
      if (bar !== null && total !== bar.getTotal()) bar.setTotal(total);
      bar?.update(done);
    },
    ahead(days) {
      total = Math.max(total, done + days);
    },
    expect(days) {
      [most, total] = [true, done + days];
    },
    end() {
      bar?.stop();
      bar = null;
    },
  };
}

/**
 * Says once, after a second's work, how long all will take, if that is long.
 * @param used processor time since the beginning, s
 */
export function oneLine(
  what: string,
  word: string,
  write: (line: string) => void,
  used: () => number = processorSeconds(),
): Bar {
  let [done, total] = [0, 0];
  let [most, said] = [false, false];
  /** How it stood once the program was warm: the first days take many times as long. */
  let warm: { readonly done: number; readonly used: number; readonly at: number } | null = null;
  return {
    add(days) {
      done += days;
      total = Math.max(total, done);
      const [now, at] = [used(), clockMs()];
      if (said || now < WARM_S) return;
      warm ??= { done, used: now, at };
      if (done === warm.done || now < warm.used + WARM_S) return;
      const left = (total - done) / (done - warm.done);
      if (left * (now - warm.used) < LONG_S) return;
      said = true;
      write(`${what}: ${standing({ done, total, most, word }, (left * (at - warm.at)) / 1000)}`);
    },
    ahead(days) {
      total = Math.max(total, done + days);
    },
    expect(days) {
      [most, total] = [true, done + days];
    },
    end() {},
  };
}

function processorSeconds(): () => number {
  const began = process.cpuUsage();
  let [seconds, askedAt] = [0, clockMs()];
  return () => {
    // The system takes up to a millisecond to answer, and is asked after every few days.
    if (clockMs() - askedAt < ASK_MS) return seconds;
    askedAt = clockMs();
    const { user, system } = process.cpuUsage(began);
    return (seconds = (user + system) / 1e6);
  };
}
