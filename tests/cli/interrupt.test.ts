import { spawn, spawnSync } from 'node:child_process';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { constants } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command, emptyFolder, root } from './run.js';

/** A hall with so many guests that a single day takes a while, and days enough for hours. */
function hall(folder: string): string {
  const demo = readFileSync(join(root, 'scenarios/1-commuter-bar.yaml'), 'utf8');
  const file = join(folder, 'hall.yaml');
  writeFileSync(
    file,
    demo
      .slice(0, demo.indexOf('\nalternatives:'))
      .replace(/guests: \{ value: 64 \/ h.*\n/, 'guests: 30000 / h\n')
      .replace('count: 26', 'count: 30000')
      .replace('makers: 2', 'makers: 900'),
  );
  return file;
}

/** Exit code, as a shell shows it, after a signal that was sent once the command was at its days. */
function ended(args: readonly string[], signal: NodeJS.Signals): Promise<number | null> {
  const child = spawn(process.execPath, [command, ...args], { stdio: 'ignore' });
  const timer = setTimeout(() => child.kill(signal), 1500);
  return new Promise((resolve) =>
    child.on('exit', (code, by) => {
      clearTimeout(timer);
      resolve(by === null ? code : 128 + constants.signals[by]);
    }),
  );
}

describe('a run of hours', () => {
  it.each([
    ['SIGINT', '1', 130],
    ['SIGTERM', '2', 143],
  ] as const)(
    '%s on %s threads ends it with its own exit code, and leaves nothing',
    async (signal, threads, code) => {
      const folder = emptyFolder();
      const out = join(folder, 'letters');
      const args = ['report', hall(folder), '--days', '100000', '--threads', threads, '--out', out];
      expect(await ended(args, signal)).toBe(code);
      expect(readdirSync(folder)).toEqual(['hall.yaml']);
    },
  );
});

/** Says at the end who listens for signals; nobody: the system ends the process at once, however busy its thread is. */
const LISTENERS = `data:text/javascript,${encodeURIComponent(
  `import { writeSync } from 'node:fs';
  process.on('exit', () => writeSync(2, 'listens: ' + ['SIGINT', 'SIGTERM'].map((name) => process.listenerCount(name))));`,
)}`;

describe('signals', () => {
  const demo = join(root, 'scenarios/4-bakery-corner.yaml');
  it.each([
    ['are the system’s while a file is read', ['check', demo], '0,0'],
    ['and again once days were run', ['size', demo, '--days', '20', '--threads', '1'], '0,0'],
    ['and after an output was tried', ['collections', demo, '--out', 'new/folder'], '0,0'],
    ['are heard to the end once a file is written', ['page', '--out', 'page.html'], '1,1'],
  ])('%s', (_, args, said) => {
    const { stderr } = spawnSync(process.execPath, ['--import', LISTENERS, command, ...args], {
      encoding: 'utf8',
      cwd: emptyFolder(),
    });
    expect(stderr).toContain(`listens: ${said}`);
  });
});
