/** Once before all tests of the page: the browser is unpacked, and the letters under test are written by the command. */
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { TestProject } from 'vitest/node';
import { command, root } from '../cli/run.js';
import { hostileScenario } from './hostile.js';
import { small as smallHouse } from './small-house.js';
import { unpackBrowser, type Unpacked } from './unpack-browser.js';

declare module 'vitest' {
  export interface ProvidedContext {
    readonly browser: Unpacked;
    /** Letters as the command writes them: blank; 1-commuter-bar (with .json) on 2,000 days, which take ten times as long as a first answer; on 200 days 2-brunch-room (with .json), hostile, and short, which is the first with fewer alternatives; on 20 days small (small-house.ts). */
    readonly letters: string;
  }
}

/** A purchase, racks, and a morning that goes wrong: one of each kind that the page speaks of. */
const KEPT = /^ {2}(?:second-machine|racks-apart|machine-down): /;

/** The text without the other alternatives, which are a line each. */
function withFewAlternatives(text: string): string {
  const [from, to] = [text.indexOf('\nalternatives:\n'), text.indexOf('\ncosts:')];
  const kept = text
    .slice(from, to)
    .split('\n')
    .filter((line) => !line.startsWith('  ') || KEPT.test(line));
  return `${text.slice(0, from)}${kept.join('\n')}${text.slice(to)}`;
}

export default async function setup(project: TestProject): Promise<() => void> {
  const letters = mkdtempSync(join(tmpdir(), 'cuptide-letters-'));
  const hostile = join(letters, 'hostile.yaml');
  const [short, small] = [join(letters, 'short.yaml'), join(letters, 'small.yaml')];
  writeFileSync(hostile, withFewAlternatives(hostileScenario()));
  writeFileSync(small, smallHouse);
  writeFileSync(
    short,
    withFewAlternatives(readFileSync(join(root, 'scenarios/1-commuter-bar.yaml'), 'utf8')),
  );
  const runs = [
    ['report', join(root, 'scenarios/1-commuter-bar.yaml'), '--out', letters, '--days', '2000'],
    ['report', join(root, 'scenarios/2-brunch-room.yaml'), '--out', letters, '--days', '200'],
    ['report', short, '--out', letters, '--days', '200'],
    ['report', hostile, '--out', letters, '--days', '200'],
    ['report', small, '--out', letters, '--days', '20'],
    ['page', '--out', join(letters, 'blank.html')],
  ];
  // Side by side: much of a report is worked out on one core. One that fails rejects, with what it said.
  const write = promisify(execFile);
  const [browser] = await Promise.all([
    unpackBrowser(),
    ...runs.map((run) => write(process.execPath, [command, ...run], { cwd: root })),
  ]);
  project.provide('browser', browser);
  project.provide('letters', letters);
  return () => {
    rmSync(letters, { recursive: true, force: true });
    rmSync(browser.folder, { recursive: true, force: true });
  };
}
