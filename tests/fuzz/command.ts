/** The command as it is shipped, run on a spoilt file: in this process, whose parts are warm, or in one of its own. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { plain, type Outcome } from './oracles.js';
import { smallTexts } from './houses.js';
import { smallHouse } from '../measuring/brute-force.js';
import type { Kind } from './kinds.js';

/** What a run of its own may take: memory, MB; processor time, s. Nobody waits longer than this, ms. */
const [MOST_MB, MOST_S, LONGEST_MS] = [300, 5, 120_000];

interface Took {
  readonly mb: number;
  readonly seconds: number;
}

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
  /** Of a process of its own. */
  readonly took?: Took;
}
export type Run = (args: readonly string[]) => Promise<Ran>;

/** Runs in this process: the entry anew each time, what it imports shared. @param dist the built command's folder */
export function warmRun(dist: string): Run {
  const command = pathToFileURL(join(dist, 'cuptide.js')).href;
  const streams = [process.stdout, process.stderr] as const;
  for (const one of [process, ...streams]) one.setMaxListeners(0);
  let run = 0;
  return async (args) => {
    const said: [string[], string[]] = [[], []];
    const writes = streams.map((stream) => stream.write);
    const argv = process.argv;
    streams.forEach((stream, at) => {
      stream.write = ((text: string | Uint8Array, ...rest: unknown[]) => {
        said[at]!.push(Buffer.from(text as string).toString('utf8'));
        (rest.find((one) => typeof one === 'function') as (() => void) | undefined)?.();
        return true;
      }) as typeof stream.write;
    });
    process.argv = [argv[0]!, command, ...args];
    process.exitCode = undefined;
    try {
      await import(`${command}?run=${(run += 1)}`);
      return {
        status: Number(process.exitCode ?? 0),
        out: said[0].join(''),
        err: said[1].join(''),
      };
    } finally {
      process.exitCode = 0;
      process.argv = argv;
      streams.forEach((stream, at) => (stream.write = writes[at]!));
    }
  };
}

/** Says on a fourth stream what the process took. */
const SAY = `data:text/javascript,${encodeURIComponent(
  `import { writeSync } from 'node:fs';
  process.on('exit', () => {
    const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
    writeSync(3, JSON.stringify({ mb: maxRSS / 1000, seconds: (userCPUTime + systemCPUTime) / 1e6 }));
  });`,
)}`;

/** Runs in a process of its own. */
export const freshRun =
  (dist: string): Run =>
  async (args) => {
    const { status, output } = spawnSync(
      process.execPath,
      ['--import', SAY, join(dist, 'cuptide.js'), ...args],
      { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe', 'pipe'], timeout: LONGEST_MS },
    );
    const [, out = '', err = '', took] = output as (string | undefined)[];
    return { status, out, err, ...(took ? { took: JSON.parse(took) as Took } : {}) };
  };

/** Files that stay the same, by what stands for them among the words of a command. */
export function fixedFiles(folder: string): Readonly<Record<string, string>> {
  const made = (name: string, text: string): string => {
    const path = join(folder, name);
    writeFileSync(path, text);
    return path;
  };
  return {
    '@house': made('house.json', smallHouse),
    '@kiosk': made('kiosk.yaml', smallTexts[0]!),
  };
}

/** Runs all commands of a kind on a text. @throws Error that says what does not hold */
export async function commandsHold(
  { commands, ending }: Pick<Kind, 'commands' | 'ending'>,
  { text, outcome }: { readonly text: string; readonly outcome: Outcome },
  { run, folder, fixed }: { run: Run; folder: string; fixed: Readonly<Record<string, string>> },
): Promise<readonly Ran[]> {
  const file = join(folder, `case.${ending}`);
  writeFileSync(file, text);
  const rans: Ran[] = [];
  for (const { words, agrees } of commands) {
    const args = words(file).map((word) => fixed[word] ?? word);
    const ran = await run(args);
    rans.push(ran);
    const must = (holds: boolean, what: string): void => {
      if (!holds)
        throw new Error(`${what}: ${args.join(' ')}\n${JSON.stringify(ran).slice(0, 2000)}`);
    };
    must(ran.status === 0 || ran.status === 2, 'ends with neither 0 nor 2');
    must(
      ran.status === 0 ? ran.out !== '' : ran.out === '',
      'prints an answer just where it ends with 0',
    );
    must(ran.status === 0 || ran.err !== '', 'refuses with reasons');
    must(!/^ {4}at /m.test(ran.err), 'prints no stack');
    plain(ran.out, `the answer of ${args[0]}`);
    plain(ran.err, `the complaint of ${args[0]}`);
    must(!agrees || (ran.status === 0) === (outcome === 'answered'), `the case was ${outcome}`);
    if (ran.took !== undefined) {
      must(ran.took.mb < MOST_MB, `takes under ${MOST_MB} MB`);
      must(ran.took.seconds < MOST_S, `takes under ${MOST_S} s`);
    }
  }
  return rans;
}
