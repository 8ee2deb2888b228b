/** Names what these tests need and this machine lacks, rather than leave tests out. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import build from '../global-setup.js';

const NEEDED = [
  ['script (from util-linux)', () => spawnSync('script', ['--version']).status === 0],
  ['stty (from coreutils)', () => spawnSync('stty', ['--version']).status === 0],
  ['/dev/full (of Linux)', () => existsSync('/dev/full')],
] as const;

export default function setup(): void {
  const missing = NEEDED.filter(([, there]) => !there()).map(([name]) => name);
  if (missing.length > 0)
    throw new Error(`these tests need what is missing here: ${missing.join(', ')}`);
  build();
}
