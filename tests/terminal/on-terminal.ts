/** Runs the built command on a pseudo-terminal, with util-linux's `script`. */
import { spawn } from 'node:child_process';
import { columnsOf } from '../../src/tell/clean-text.js';
import { command, root } from '../cli/run.js';

export interface OnTerminal {
  readonly status: number | null;
  /** Everything that reached the terminal, as sent. */
  readonly raw: string;
  /** Columns of the widest line that was shown. */
  readonly widest: number;
  /** The widest line itself. */
  readonly line: string;
  /** ms from what was typed to the end. */
  readonly endedAfterMs: number;
}

const quoted = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`;

const ESC = String.fromCharCode(27);
/** Escape sequences of a terminal: none of them takes a column. */
const SEQUENCES = new RegExp(String.raw`${ESC}(\[[0-9;?]*[A-Za-z]|[78])`, 'g');

export interface Typing {
  /** When to type: this text has been shown. */
  readonly once: RegExp;
  readonly keys: string;
}

/**
 * @param typing keys that are typed, each once what it waits for was shown
 * @param environment variables set for the command
 */
export function onTerminal(
  args: readonly string[],
  columns: number,
  {
    typing = [],
    environment = {},
    cwd = root,
    without,
  }: {
    readonly typing?: readonly Typing[];
    readonly environment?: Readonly<Record<string, string>>;
    readonly cwd?: string;
    /** Lines that name this folder are not measured: names of files are never cut, so that they can be copied. */
    readonly without?: string;
  } = {},
): Promise<OnTerminal> {
  const line = `stty cols ${columns} rows 50; exec ${[process.execPath, command, ...args].map(quoted).join(' ')}`;
  return new Promise((resolve, reject) => {
    const child = spawn('script', ['-qec', line, '/dev/null'], {
      cwd,
      env: { ...process.env, TERM: 'xterm', ...environment },
    });
    let raw = '';
    let typed = performance.now();
    const left = [...typing];
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      raw += text;
      if (left[0]?.once.test(raw) === true) {
        typed = performance.now();
        child.stdin.write(left.shift()!.keys);
      }
    });
    child.on('error', reject);
    child.on('close', (status) => {
      const widest = raw
        .replaceAll(`${ESC}[1G`, '\r')
        .replace(SEQUENCES, '')
        .split(/\r?\n|\r/)
        .filter((one) => without === undefined || !one.includes(without))
        .reduce((most, one) => (columnsOf(one) > columnsOf(most) ? one : most), '');
      resolve({
        status,
        raw,
        widest: columnsOf(widest),
        line: widest,
        endedAfterMs: performance.now() - typed,
      });
    });
  });
}

/** The cursor is shown and lines wrap, as the last word on each says. */
export const leftAsFound = (raw: string): boolean =>
  [
    ['[?25h', '[?25l'],
    ['[?7h', '[?7l'],
  ].every(
    ([on, off]) =>
      raw.lastIndexOf(`${ESC}${off}`) < 0 ||
      raw.lastIndexOf(`${ESC}${on}`) > raw.lastIndexOf(`${ESC}${off}`),
  );
