import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from './run.js';

const dist = join(root, 'dist');
const textOf = (part: string): string => readFileSync(join(dist, part), 'utf8');

/** The files that Node loads with one: it, and what it and they import before anything is run. */
function loadedWith(...parts: readonly string[]): Set<string> {
  const found = new Set<string>();
  const follow = (part: string): void => {
    if (found.has(part)) return;
    found.add(part);
    for (const [, path] of textOf(part).matchAll(
      /^(?:import|export)\s(?:[^'"]*\sfrom )?"\.\/([^"]+)";/gm,
    ))
      follow(join(dirname(part), path!));
  };
  parts.forEach(follow);
  return found;
}

/** The part that the command loads where its source says so. */
function onDemand(parts: ReadonlySet<string>, said: RegExp): string {
  const [found] = [...parts].flatMap((part) => said.exec(textOf(part))?.[1] ?? []);
  expect(found).toBeDefined();
  return found!;
}

const modulesIn = (parts: ReadonlySet<string>): string[] =>
  [...parts].flatMap((part) =>
    [...textOf(part).matchAll(/^\/\/ ((?:src|node_modules)\/\S+)$/gm)].map(([, path]) => path!),
  );

describe('what is built', () => {
  const start = loadedWith('cuptide.js');
  const asked = [
    onDemand(start, /runQuestion \} = await import\("\.\/([^"]+)"\)/),
    onDemand(start, /question\(size, \(\) => import\("\.\/([^"]+)"\)/),
  ];

  it('starts in a few parts, without schemas, and asks the main question in a few more', () => {
    expect(start.size).toBeLessThan(9);
    expect(modulesIn(start).filter((path) => /node_modules\/(zod|yaml)\//.test(path))).toEqual([]);
    const all = loadedWith('cuptide.js', ...asked);
    expect(all.size).toBeLessThan(24);
    // Imported by name they load much of Node; who needs them asks for them when it does.
    for (const part of all)
      expect(textOf(part)).not.toMatch(/^import .*"node:(crypto|worker_threads)"/m);
    // The parts are told from their imports: these would be missing if that were misread.
    expect(modulesIn(all)).toEqual(
      expect.arrayContaining([
        'src/cli/main.ts',
        'src/cafe/floor.ts',
        'src/sizing/size-stock.ts',
        'src/tell/write-text.ts',
      ]),
    );
  });

  it('gives the library and helpers nothing of the command', () => {
    for (const entry of ['index.js', 'worker.js'])
      expect(
        modulesIn(loadedWith(entry)).filter((path) =>
          /node_modules\/yargs|src\/cli\/(main|run-question|files|commands)/.test(path),
        ),
      ).toEqual([]);
  });
});
