/** Watches the process that runs cases: one that works too long or grows too big is ended, and the case named. */
import { fork, type ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Asked, Block } from './block.js';

/** Processor time of one case, s, with the smaller ones of its own; memory, MB; and where neither can be seen, time, s. */
const [MOST_S, MOST_MB, LONGEST_S] = [20, 700, 300];
/** Heap of the process that runs cases, MB: what it holds besides brings it near 300. */
const HEAP_MB = 160;
/**
 * Blocks after which the process is begun anew: each run of the command in it leaves a copy of the command's modules,
 * 0.7 MB that Node never lets go, 14 MB a block of scenarios.
 */
const BLOCKS = 2;

/** First word to the process that runs cases. */
export const SERVE = 'serve';

/** Processor time, s, and memory, MB, of another process; null where the system does not show them. */
function looked(pid: number): { readonly seconds: number; readonly mb: number } | null {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ');
    const pages = Number(readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ')[1]);
    return { seconds: (Number(fields[11]) + Number(fields[12])) / 100, mb: pages * 4.096e-3 };
  } catch {
    return null;
  }
}

export class Watched {
  #child: ChildProcess | null = null;
  #blocks = 0;
  readonly #folder: string;

  /** @param folder where the bundle, the copy of the command and the case that is run lie */
  constructor(folder: string) {
    this.#folder = folder;
  }

  async run(asked: Asked): Promise<Block> {
    if (this.#blocks % BLOCKS === 0) this.close();
    this.#blocks += 1;
    const child = (this.#child ??= fork(join(this.#folder, 'fuzz.mjs'), [SERVE, this.#folder], {
      execArgv: [`--max-old-space-size=${HEAP_MB}`],
      // A group of its own, so that what it started ends with it.
      detached: true,
    }));
    let [at, seen, since, first] = [-1, -1, 0, 0];
    return new Promise((resolve) => {
      const done = (block: Block): void => {
        clearInterval(timer);
        child.removeAllListeners();
        resolve(block);
      };
      const failed = (says: string): void => {
        this.close();
        const text = readFileSync(join(this.#folder, 'fuzz-case.txt'), 'utf8');
        done({
          seed: asked.seed,
          kind: asked.kind,
          cases: at + 1,
          outcomes: {},
          slowestMs: 0,
          mostMb: 0,
          warm: 0,
          fresh: 0,
          slowestFreshMs: 0,
          mostFreshMb: 0,
          failure: { text, says: `case ${at}: ${says}` },
        });
      };
      const timer = setInterval(() => {
        const now = looked(child.pid!);
        since = at === seen ? since + 1 : 0;
        if (since === 0) [seen, first] = [at, now?.seconds ?? 0];
        if (now !== null && now.mb > MOST_MB) failed(`holds ${Math.round(now.mb)} MB`);
        else if (now !== null && now.seconds - first > MOST_S) failed(`works over ${MOST_S} s`);
        else if (now === null && since > LONGEST_S) failed(`takes over ${LONGEST_S} s`);
      }, 1000);
      child.on('message', (sent: { readonly at?: number; readonly block?: Block }) => {
        if (sent.at !== undefined) at = sent.at;
        if (sent.block !== undefined) done(sent.block);
      });
      child.on('exit', (code, signal) => failed(`the process ended with ${signal ?? code}`));
      child.send(asked);
    });
  }

  /** Ends the process, and what it started. */
  close(): void {
    const child = this.#child;
    this.#child = null;
    if (child === null || child.exitCode !== null || child.signalCode !== null) return;
    child.removeAllListeners();
    process.kill(-child.pid!, 'SIGKILL');
  }
}
