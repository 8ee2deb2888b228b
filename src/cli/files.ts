/**
 * Files: read whole, with errors that name the file and the remedy; written together or not at all.
 */
import { stat, writeFile } from 'node:fs/promises';
import {
  accessSync,
  constants,
  copyFileSync,
  createReadStream,
  linkSync,
  lstatSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
  type Stats,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { makeFolders } from './folders.js';
import { MistakeError } from './mistakes.js';
import { holdSignals, keepSignals, releaseSignals } from './signals.js';
import { isSystemError, reasonOf } from './system-errors.js';

/**
 * Read a file of at most `mostBytes`, refused by size before it is read; a pipe, which has no size beforehand, as soon as it passes that.
 * @param asked what a complaint begins with, such as the option that named the file
 */
export async function readWhole(path: string, mostBytes: number, asked = ''): Promise<Uint8Array> {
  const size = await sizeOf(path).catch((error: unknown) => {
    throw error instanceof MistakeError ? new MistakeError(`${asked}${error.message}`) : error;
  });
  if (size > mostBytes) throw tooLarge(path, size, mostBytes);
  const chunks: Uint8Array[] = [];
  let read = 0;
  try {
    for await (const chunk of createReadStream(path) as AsyncIterable<Uint8Array>) {
      read += chunk.length;
      if (read > mostBytes) throw tooLarge(path, read, mostBytes);
      chunks.push(chunk);
    }
  } catch (error) {
    throw isSystemError(error) ? new MistakeError(`${path}: ${reasonOf(error)}`) : error;
  }
  return Buffer.concat(chunks);
}

const tooLarge = (path: string, size: number, most: number): MistakeError =>
  new MistakeError(
    `${path}: ${(size / 1e6).toFixed(1)} MB is more than the ${(most / 1e6).toFixed(0)} MB that such a file may have; is it the right file?`,
  );

/** Size in bytes of a plain file; throws a mistake for a folder, a device, no such file or no permission. */
export async function sizeOf(path: string): Promise<number> {
  if (path.trim() === '') throw new MistakeError('the name of a file is empty; name a file');
  const about = await stat(path).catch((error: NodeJS.ErrnoException) => {
    throw new MistakeError(`${path}: ${reasonOf(error)}`);
  });
  if (about.isDirectory()) throw new MistakeError(`${path}: is a directory; name a file in it`);
  // A device such as /dev/zero never ends.
  if (about.isCharacterDevice() || about.isBlockDevice())
    throw new MistakeError(`${path}: is a device; name a file`);
  return about.size;
}

const temporary = new Set<string>();
const foldersMade: string[] = [];

/** Remove what an interrupted or failed command left: temporary files, and folders made in vain. For the exit of the process. */
export function removeTemporary(): void {
  for (const path of temporary) rmSync(path, { force: true });
  temporary.clear();
  for (const folder of foldersMade.splice(0).toReversed()) {
    try {
      rmdirSync(folder);
    } catch {
      // Something is in it: then it was not made in vain.
    }
  }
}

/** A file that must not outlive the command if it ends before the file is whole. @returns to be called once it is whole or gone */
export function trackTemporary(path: string): () => void {
  holdSignals(removeTemporary);
  temporary.add(path);
  return () => {
    temporary.delete(path);
    void releaseSignals();
  };
}

/** Names of temporary files of a target: whose process is gone was left by a crash. */
const partOf = (path: string): string =>
  join(dirname(path), `.${basename(path)}.${process.pid}-${eightDigits()}.part`);
/** By chance, as machines that share a folder may number their processes alike. The global `crypto` is loaded at the first file, not at the start. */
const eightDigits = (): string =>
  crypto.getRandomValues(new Uint32Array(1))[0]!.toString(16).padStart(8, '0');
const PART = /^\.(.+)\.(\d+)-[0-9a-f]{8}\.part$/;

function sweepStale(path: string): void {
  const folder = dirname(path);
  for (const name of readdirSync(folder)) {
    const [, target, pid] = PART.exec(name) ?? [];
    if (target === basename(path) && !isRunning(Number(pid)))
      rmSync(join(folder, name), { force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return isSystemError(error) && error.code === 'EPERM';
  }
}

/**
 * Make sure that files can be written before the work for them is done: makes the folder, and tries to write in it. What
 * was made for that is gone afterwards, so that nothing is to undo when the work is interrupted.
 * @param target a file, or a folder that files go to
 * @throws MistakeError where it cannot be written
 */
export async function tryOutput(
  target: string,
  kind: 'file' | 'folder',
  option = '--out',
): Promise<void> {
  if (target.trim() === '')
    throw new MistakeError(
      `${option}: the name is empty; name a ${kind}, such as ${kind === 'file' ? 'new.yaml' : 'reports'}`,
    );
  if (target === '-')
    throw new MistakeError(`${option}: files are written, not a stream; name a ${kind}`);
  holdSignals(removeTemporary);
  try {
    const folder = kind === 'folder' ? target : dirname(followed(target));
    foldersMade.push(...makeFolders(folder));
    const trial = partOf(join(folder, 'trial'));
    sweepStale(join(folder, 'trial'));
    temporary.add(trial);
    writeFileSync(trial, 'a trial of whether files can be written here\n');
    if (kind === 'file') checkTarget(target);
  } catch (error) {
    throw cannotWrite([target], error);
  } finally {
    removeTemporary();
    await releaseSignals();
  }
}

/**
 * Where a file that is written ends up: a symbolic link stays, and what it points to is written, as by most tools.
 * @throws MistakeError where the link points to nothing
 */
function followed(path: string): string {
  if (lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() !== true) return path;
  if (statSync(path, { throwIfNoEntry: false }) === undefined)
    throw new MistakeError(
      `${path}: is a link to a file that is not there; remove the link or give another name`,
    );
  return realpathSync(path);
}

/** A target that is there must be a plain file that may be replaced: a device or a pipe would be gone afterwards. */
function checkTarget(path: string): void {
  const about = statSync(path, { throwIfNoEntry: false });
  if (about === undefined) return;
  if (about.isDirectory()) throw Object.assign(new Error(), { code: 'EISDIR', syscall: 'open' });
  if (!about.isFile())
    throw new MistakeError(`${path}: is a device or a pipe; name a file to write`);
  accessSync(path, constants.W_OK);
}

/**
 * Nothing is written over what it was made from.
 * @throws MistakeError where a target is the same file as an input, by whatever name
 */
export function keepInputs(
  targets: readonly string[],
  inputs: readonly (string | undefined)[],
): void {
  const about = (path: string): Stats | undefined => statSync(path, { throwIfNoEntry: false });
  const kept = inputs.flatMap((path) => (path === undefined ? [] : [about(path)]));
  const over = targets.filter((path) => {
    const there = about(path);
    return kept.some((one) => one !== undefined && one.ino === there?.ino && one.dev === there.dev);
  });
  if (over.length > 0)
    throw new MistakeError(
      over
        .map((path) => `${path}: is what was given to read; give --out another name or folder`)
        .join('\n'),
    );
}

function cannotWrite(paths: readonly string[], error: unknown): unknown {
  return isSystemError(error)
    ? new MistakeError(`${paths.join(', ')}: cannot be written: ${reasonOf(error)}`)
    : error;
}

/**
 * Write several files so that they appear together or not at all: all under temporary names first, renamed in one go when
 * all are written, and taken back if one cannot be renamed. Makes missing folders.
 */
export async function writeAll(
  files: readonly { readonly path: string; readonly content: string | Uint8Array }[],
): Promise<void> {
  const pending: { from: string; to: string }[] = [];
  const paths = files.map(({ path }) => path);
  if (files.length > 0) keepSignals(removeTemporary);
  try {
    for (const { path, content } of files) {
      foldersMade.push(...makeFolders(dirname(path)));
      const to = followed(path);
      checkTarget(to);
      sweepStale(to);
      const from = partOf(to);
      temporary.add(from);
      await written(from, content);
      pending.push({ from, to });
    }
    renameTogether(pending);
  } catch (error) {
    for (const path of temporary) rmSync(path, { force: true });
    throw cannotWrite(paths, error);
  }
}

/** Another command that tries the same folder may take it away at this very moment: then it is made once more. */
async function written(path: string, content: string | Uint8Array): Promise<void> {
  try {
    await writeFile(path, content, { flush: true });
  } catch (error) {
    if (!isSystemError(error) || error.code !== 'ENOENT') throw error;
    foldersMade.push(...makeFolders(dirname(path)));
    await writeFile(path, content, { flush: true });
  }
}

/** A second name for what a path holds; where names cannot be doubled, a copy. */
function keep(path: string): string {
  const kept = partOf(path);
  temporary.add(kept);
  try {
    linkSync(path, kept);
  } catch {
    copyFileSync(path, kept);
  }
  return kept;
}

/**
 * Without a pause, so that no interrupt comes between; on failure what was replaced is put back. A target that is there
 * is never missing, however the process ends.
 */
function renameTogether(pending: readonly { from: string; to: string }[]): void {
  const replaced: { kept: string | null; to: string }[] = [];
  try {
    for (const { from, to } of pending) {
      const kept = statSync(to, { throwIfNoEntry: false }) === undefined ? null : keep(to);
      renameSync(from, to);
      temporary.delete(from);
      replaced.push({ kept, to });
    }
  } catch (error) {
    for (const { kept, to } of replaced.toReversed()) {
      if (kept === null) rmSync(to, { force: true });
      else renameSync(kept, to);
    }
    throw error;
  }
  for (const { kept } of replaced) {
    if (kept === null) continue;
    rmSync(kept, { force: true });
    temporary.delete(kept);
  }
}
