/** Runs the built command as a user would. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const command = join(root, 'dist/cuptide.js');

const TIME_LIMIT_MS = 110_000;

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  /** Each message in one line, however it was folded; without how long work takes, which a slow machine alone says. */
  readonly err: string;
}

const unfolded = ({ status, out, err }: Ran): Ran => ({
  status,
  out,
  err: err.replace(/\n {2}(?=\S)/g, ' ').replace(/^[a-z ]+: [\d,]+ of .* left\n/gm, ''),
});

/** Run `cuptide` with arguments in a process of its own, from a folder (the project's unless said). */
export function cuptideAlone(args: readonly string[], cwd: string = root): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], {
    cwd,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    timeout: TIME_LIMIT_MS,
  });
  return unfolded({ status, out: stdout, err: stderr });
}

/**
 * The same in a process that is kept: nine tenths of a short run are spent on reading and warming up the
 * program. What is about the process itself (threads, signals, streams) or must not profit from an earlier
 * run takes `cuptideAlone`.
 */
export function cuptide(args: readonly string[], cwd: string = root): Ran {
  const { port, signal } = (warm ??= started());
  Atomics.store(signal, 0, 0);
  port.postMessage({ args, cwd });
  Atomics.wait(signal, 0, 0, TIME_LIMIT_MS);
  const answer = receiveMessageOnPort(port) as { readonly message: Ran } | undefined;
  if (answer === undefined) {
    warm = null;
    return { status: null, out: '', err: 'no answer within the time limit' };
  }
  return unfolded(answer.message);
}

interface Warm {
  readonly port: MessageChannel['port1'];
  readonly signal: Int32Array;
}

let warm: Warm | null = null;

function started(): Warm {
  const { port1, port2 } = new MessageChannel();
  const signal = new Int32Array(new SharedArrayBuffer(4));
  const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
  new Worker(here('./warm-relay.mjs'), {
    workerData: { port: port2, signal, child: here('./warm-child.mjs'), command },
    transferList: [port2],
  }).unref();
  port1.unref();
  return { port: port1, signal };
}

/** An empty folder of its own. */
export const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'cuptide-test-'));
