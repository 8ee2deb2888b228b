/**
 * npm run fuzz [cases] [seed]: spoilt files in blocks, each with a seed of its own, so that any failure can be had again.
 * Every block is a line of fuzz.jsonl; a run that was stopped goes on after the last. Figures go to reports/fuzz.json.
 */
import { appendFileSync, cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { serve, type Block } from './block.js';
import { kinds } from './kinds.js';
import type { Outcome } from './oracles.js';
import { SERVE, Watched } from './watch.js';

const CASES_A_BLOCK = 200;

const casesOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, { cases }) => sum + cases, 0);

/** The figures so far: written after every block, so that a run that is stopped has lost nothing. */
function write(blocks: readonly Block[]): { readonly failures: readonly unknown[] } {
  const sum = (of: readonly Block[], each: (block: Block) => number): number =>
    of.reduce((all, block) => all + each(block), 0);
  const most = (of: readonly Block[], each: (block: Block) => number): number =>
    Math.max(0, ...of.map(each));
  const ended = (of: readonly Block[], outcome: Outcome): number =>
    sum(of, ({ outcomes }) => outcomes[outcome] ?? 0);
  const figures = {
    cases: casesOf(blocks),
    throughTheCommand: {
      warm: sum(blocks, ({ warm }) => warm),
      alone: sum(blocks, ({ fresh }) => fresh),
    },
    node: process.version,
    kinds: Object.fromEntries(
      Object.keys(kinds).map((kind) => {
        const of = blocks.filter((block) => block.kind === kind);
        return [
          kind,
          {
            cases: casesOf(of),
            answered: ended(of, 'answered'),
            refused: ended(of, 'refused'),
            tooMuch: ended(of, 'too much'),
            slowestMs: most(of, ({ slowestMs }) => slowestMs),
            slowestAloneMs: most(of, ({ slowestFreshMs }) => slowestFreshMs),
            mostAloneMb: most(of, ({ mostFreshMb }) => mostFreshMb),
          },
        ];
      }),
    ),
    failures: blocks.flatMap(({ failure, kind, seed }) =>
      failure === null ? [] : [{ kind, seed, says: failure.says }],
    ),
  };
  writeFileSync('reports/fuzz.json', `${JSON.stringify(figures, null, 1)}\n`);
  return figures;
}

export async function main(
  folder: string,
  [wanted = '100000', first = '1']: string[],
): Promise<void> {
  const log = join(folder, 'fuzz.jsonl');
  const blocks: Block[] = existsSync(log)
    ? readFileSync(log, 'utf8')
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line) as Block)
    : [];
  // A copy, so that the project can be built anew meanwhile.
  const dist = join(folder, 'fuzz-dist');
  rmSync(dist, { recursive: true, force: true });
  cpSync('dist', dist, { recursive: true });
  const watched = new Watched(folder);
  process.on('exit', () => watched.close());
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => process.exit(130));
  const schedule = Object.entries(kinds).flatMap(([kind, { share }]) =>
    Array.from({ length: Math.max(1, Math.round(share / 2)) }, () => kind),
  );
  for (let seed = Number(first) + blocks.length; casesOf(blocks) < Number(wanted); seed += 1) {
    // A stride that has no factor in common with the schedule, so that every kind comes early.
    const kind = schedule[(seed * 17) % schedule.length]!;
    const block = await watched.run({ kind, seed, cases: CASES_A_BLOCK });
    blocks.push(block);
    appendFileSync(log, `${JSON.stringify(block)}\n`);
    write(blocks);
    if (block.failure !== null)
      console.log(
        `${kind}, seed ${seed}: ${block.failure.says}\n${block.failure.text.slice(0, 3000)}\n`,
      );
  }
  watched.close();
  const figures = write(blocks);
  console.log(JSON.stringify(figures, null, 1));
  if (figures.failures.length > 0) process.exitCode = 1;
}

// Begun by the process that watches.
if (process.argv[2] === SERVE) serve(process.argv[3]!);
