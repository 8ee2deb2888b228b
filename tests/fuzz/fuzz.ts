/**
 * npm run fuzz [cases] [seed]: spoilt files in blocks, each with a seed of its own, so that any failure can be had again.
 * Every block is a line of fuzz.jsonl; a run that was stopped goes on after the last. Figures go to reports/fuzz.json.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { kinds } from './kinds.js';
import type { Outcome } from './oracles.js';

interface Block {
  readonly seed: number;
  readonly kind: string;
  readonly cases: number;
  readonly outcomes: Partial<Record<Outcome, number>>;
  readonly slowestMs: number;
  readonly mostMb: number;
  readonly failure: { readonly text: string; readonly says: string } | null;
}

const CASES_A_BLOCK = 100;

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

async function run(kind: string, seed: number, cases: number): Promise<Block> {
  const { texts, holds } = kinds[kind]!;
  const outcomes: Partial<Record<Outcome, number>> = {};
  let [ran, slowestMs, mostMb] = [0, 0, 0];
  const details = await fc.check(
    fc.asyncProperty(texts, async (text) => {
      const began = cpuMs();
      const outcome = await holds(text);
      outcomes[outcome] = (outcomes[outcome] ?? 0) + 1;
      ran += 1;
      slowestMs = Math.max(slowestMs, Math.round(cpuMs() - began));
      mostMb = Math.max(mostMb, Math.round(process.memoryUsage().rss / 1e6));
    }),
    { seed, numRuns: cases, interruptAfterTimeLimit: 600_000 },
  );
  const [text] = details.counterexample ?? [''];
  const failure = details.failed
    ? { text: String(text), says: String(details.errorInstance).slice(0, 600) }
    : null;
  return { seed, kind, cases: ran, outcomes, slowestMs, mostMb, failure };
}

/** The figures so far: written after every block, so that a run that is stopped has lost nothing. */
function write(blocks: readonly Block[]): { readonly failures: readonly unknown[] } {
  const sum = (of: readonly Block[], outcome: Outcome): number =>
    of.reduce((all, { outcomes }) => all + (outcomes[outcome] ?? 0), 0);
  const figures = {
    cases: casesOf(blocks),
    node: process.version,
    kinds: Object.fromEntries(
      Object.keys(kinds).map((kind) => {
        const of = blocks.filter((block) => block.kind === kind);
        return [
          kind,
          {
            cases: casesOf(of),
            answered: sum(of, 'answered'),
            refused: sum(of, 'refused'),
            tooMuch: sum(of, 'too much'),
            slowestMs: Math.max(0, ...of.map(({ slowestMs }) => slowestMs)),
            mostMb: Math.max(0, ...of.map(({ mostMb }) => mostMb)),
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

const casesOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, { cases }) => sum + cases, 0);

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
  const schedule = Object.entries(kinds).flatMap(([kind, { share }]) =>
    Array.from({ length: Math.max(1, Math.round(share / 2)) }, () => kind),
  );
  for (let seed = Number(first) + blocks.length; casesOf(blocks) < Number(wanted); seed += 1) {
    // A stride that has no factor in common with the schedule, so that every kind comes early.
    const kind = schedule[(seed * 17) % schedule.length]!;
    const block = await run(kind, seed, CASES_A_BLOCK);
    blocks.push(block);
    appendFileSync(log, `${JSON.stringify(block)}\n`);
    write(blocks);
    if (block.failure !== null)
      console.log(
        `${kind}, seed ${seed}: ${block.failure.says}\n${block.failure.text.slice(0, 3000)}\n`,
      );
  }
  const figures = write(blocks);
  console.log(JSON.stringify(figures, null, 1));
  if (figures.failures.length > 0) process.exitCode = 1;
}
