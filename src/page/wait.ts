/** How far long work has come, and about how long it still takes. */
import type { Formats } from '../tell/format.js';
import type { Reply } from './messages.js';

export interface Wait {
  /** Days run. */
  readonly done: number;
  /** No more than this will be run in all; null: nobody knows yet. */
  readonly most: number | null;
  /** When it began, ms. */
  readonly since: number;
}

export const begun = (now = performance.now()): Wait => ({ done: 0, most: null, since: now });

export const further = (
  wait: Wait,
  { days, most }: Extract<Reply, { kind: 'progress' }>,
): Wait => ({
  ...wait,
  done: wait.done + days,
  most: most === undefined ? wait.most : wait.done + days + most,
});

/** Seconds that it takes at most if it goes on as it went; null: that cannot be said yet. */
export function secondsLeft({ done, most, since }: Wait, now = performance.now()): number | null {
  return most === null || done === 0
    ? null
    : (Math.max(0, most - done) * (now - since)) / done / 1000;
}

/** Days run, of how many at most, and the time left as a text; null where not known. */
export function waitInWords(
  wait: Wait,
  { count }: Pick<Formats, 'count'>,
  now = performance.now(),
): [days: string, most: string | null, left: string | null] {
  const left = secondsLeft(wait, now);
  const time =
    left === null || left < 1
      ? null
      : left < 90
        ? `${count(Math.ceil(left))} s`
        : `${count(Math.ceil(left / 60))} min`;
  return [count(wait.done), wait.most === null ? null : count(wait.most), time];
}
