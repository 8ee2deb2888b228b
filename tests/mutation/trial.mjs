// One run of test files on the copy as it stands: a fresh process with limits of processor time and memory.
import { fork } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const LOOK_EVERY_MS = 100;
const MOST_MEMORY = 900e6;
/** A process that asks for no processor time for so long waits for what will not come, ms. */
const STILL_MS = 90_000;
const PAGE = 4096;

/** A changed program may be in a loop and not notice that nobody waits for it any more. */
let running = null;
process.on('exit', () => running?.kill('SIGKILL'));
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => process.exit(1));

/** Processor time of a process and its threads, s; and the memory it holds, bytes. */
function usedBy(pid) {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1).split(' ');
  return { seconds: (Number(fields[11]) + Number(fields[12])) / 100, bytes: fields[21] * PAGE };
}

/**
 * @param copy folder of the built copy
 * @param list files of tests, in order
 * @param limitOf processor time that the nth part of a file may take, s: part 0 loads it, the others are its tests
 * @returns how it ended: `caught` is null where all passed, else 'assertion', 'error', 'time' or 'memory'; `by` the file that
 *   failed; `parts` of each file that passed, the processor time of each, s
 */
export function trial(copy, list, limitOf) {
  const child = fork(join(copy, 'tests/mutation/inside.mjs'), list, {
    cwd: copy,
    execArgv: ['--max-old-space-size=600'],
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  running = child;
  return new Promise((done) => {
    const began = Date.now();
    let [by, part, from, seconds, over, lastMoved] = [null, 0, 0, 0, null, began];
    const parts = new Map();
    let [failure, words] = [null, ''];
    child.stderr.on('data', (some) => (words = (words + some).slice(-2000)));
    const watch = setInterval(() => {
      let used;
      try {
        used = usedBy(child.pid);
      } catch {
        return;
      }
      if (used.seconds > seconds) [seconds, lastMoved] = [used.seconds, Date.now()];
      if (by !== null && seconds - from > limitOf(by, part)) over ??= 'time';
      if (Date.now() - lastMoved > STILL_MS) over ??= 'time';
      if (used.bytes > MOST_MEMORY) over ??= 'memory';
      if (over !== null) child.kill('SIGKILL');
    }, LOOK_EVERY_MS);
    child.on('message', (message) => {
      if (message.failed) return void (failure = message);
      seconds = Math.max(seconds, message.seconds);
      if (message.begins) {
        [by, part] = [message.begins, 0];
        parts.set(by, []);
      } else {
        parts.get(by).push(message.seconds - from);
        part += 1;
      }
      from = message.seconds;
    });
    child.on('close', (code) => {
      clearInterval(watch);
      const end = (caught, name = '', said = '') =>
        done({ caught, by: caught === null ? null : by, name, said, parts, seconds });
      if (over !== null) return end(over);
      if (failure !== null) return end(failure.failed, failure.name, failure.said);
      if (code === 0 && parts.size === list.length) return end(null);
      // Without a word: the heap was full, or nothing was left to wait for, which would hang in the suite.
      if (/heap|out of memory/i.test(words)) return end('memory');
      return end(code === 13 ? 'time' : 'error', '', words || `ended with ${code}`);
    });
  });
}
