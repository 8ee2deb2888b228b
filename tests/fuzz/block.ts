/** A block of cases, run in a process that is watched from outside. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { commandsHold, fixedFiles, freshRun, warmRun, type Ran, type Run } from './command.js';
import { kinds } from './kinds.js';
import type { Outcome } from './oracles.js';

export interface Block {
  readonly seed: number;
  readonly kind: string;
  readonly cases: number;
  readonly outcomes: Partial<Record<Outcome, number>>;
  readonly slowestMs: number;
  readonly mostMb: number;
  /** Cases that went through the command too: in the warm process, and in one of their own. */
  readonly warm: number;
  readonly fresh: number;
  readonly slowestFreshMs: number;
  readonly mostFreshMb: number;
  readonly failure: { readonly text: string; readonly says: string } | null;
}

export interface Asked {
  readonly kind: string;
  readonly seed: number;
  readonly cases: number;
}

/** Of so many cases one goes through the command as well; of so many, one through a process of its own. */
const [ONE_WARM, ONE_FRESH] = [20, 100];
/** What the process that runs case after case may hold, MB. */
const MOST_MB = 300;

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

type Way = 'here' | 'warm' | 'fresh';
const wayOf = (at: number): Way =>
  at % ONE_FRESH === ONE_FRESH / 2 ? 'fresh' : at % ONE_WARM === 0 ? 'warm' : 'here';

/** @param began called before each case, with its number and text */
async function run(
  { kind, seed, cases }: Asked,
  runs: Readonly<Record<'warm' | 'fresh', Run>>,
  {
    folder,
    began,
  }: { readonly folder: string; readonly began: (at: number, text: string) => void },
): Promise<Block> {
  const { texts, holds, ...rest } = kinds[kind]!;
  const fixed = fixedFiles(folder);
  const outcomes: Partial<Record<Outcome, number>> = {};
  const counts = { warm: 0, fresh: 0 };
  let [ran, slowestMs, mostMb, slowestFreshMs, mostFreshMb] = [0, 0, 0, 0, 0];
  /** The way on which something did not hold: smaller texts are tried on the same one. */
  let failed: Way | null = null;
  const noted = (one: Ran): void => {
    slowestFreshMs = Math.max(slowestFreshMs, Math.round((one.took?.seconds ?? 0) * 1000));
    mostFreshMb = Math.max(mostFreshMb, Math.round(one.took?.mb ?? 0));
  };
  const details = await fc.check(
    fc.asyncProperty(texts, async (text) => {
      const way: Way = failed ?? wayOf(ran);
      began(ran, text);
      const start = cpuMs();
      try {
        if (failed === null) ran += 1;
        const outcome = await holds(text);
        slowestMs = Math.max(slowestMs, Math.round(cpuMs() - start));
        if (way !== 'here') {
          (await commandsHold(rest, { text, outcome }, { run: runs[way], folder, fixed })).forEach(
            noted,
          );
          counts[way] += 1;
        }
        const mb = process.memoryUsage().rss / 1e6;
        mostMb = Math.max(mostMb, Math.round(mb));
        if (mb > MOST_MB) throw new Error(`${Math.round(mb)} MB are held`);
        outcomes[outcome] = (outcomes[outcome] ?? 0) + 1;
      } catch (error) {
        failed = way;
        throw error;
      }
    }),
    { seed, numRuns: cases, interruptAfterTimeLimit: 600_000 },
  );
  const [text] = details.counterexample ?? [''];
  return {
    seed,
    kind,
    cases: ran,
    outcomes,
    slowestMs,
    mostMb,
    ...counts,
    slowestFreshMs,
    mostFreshMb,
    failure: details.failed
      ? { text: String(text), says: String(details.errorInstance).slice(0, 900) }
      : null,
  };
}

/** Serves the process that forked this one: a block is asked for, every case is announced, the block is sent back. */
export function serve(folder: string): void {
  const dist = join(folder, 'fuzz-dist');
  const runs = { warm: warmRun(dist), fresh: freshRun(dist) };
  const began = (at: number, text: string): void => {
    // In a file, as this process may be ended in the midst of it.
    writeFileSync(join(folder, 'fuzz-case.txt'), text);
    process.send!({ at });
  };
  process.on('message', (asked: Asked) => {
    void run(asked, runs, { folder, began }).then((block) => process.send!({ block }));
  });
  process.on('disconnect', () => process.exit(0));
}
