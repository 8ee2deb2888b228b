/** Runs the built command as a user would. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const command = join(root, 'dist/cuptide.js');

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  /** Each message in one line, however it was folded. */
  readonly err: string;
}

/** Run `cuptide` with arguments, from a folder (the project's unless said). */
export function cuptide(args: readonly string[], cwd: string = root): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], {
    cwd,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    timeout: 110_000,
  });
  return { status, out: stdout, err: stderr.replace(/\n {2}(?=\S)/g, ' ') };
}

/** An empty folder of its own. */
export const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'cuptide-test-'));
