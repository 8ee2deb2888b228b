/**
 * Files: read whole, with errors that name the file and the remedy; written whole or not at all.
 */
import { randomBytes } from 'node:crypto';
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { MistakeError } from './mistakes.js';

/** Read a file of at most `mostBytes`, refused by size before it is read. */
export async function readWhole(path: string, mostBytes: number): Promise<Uint8Array> {
  const size = await sizeOf(path);
  if (size > mostBytes)
    throw new MistakeError(
      `${path}: ${(size / 1e6).toFixed(1)} MB is more than the ${(mostBytes / 1e6).toFixed(0)} MB that such a file may have; is it the right file?`,
    );
  return readFile(path);
}

/** Size in bytes of a plain file; throws a mistake for a directory, no such file or no permission. */
export async function sizeOf(path: string): Promise<number> {
  const about = await stat(path).catch((error: NodeJS.ErrnoException) => {
    throw new MistakeError(`${path}: ${reasonOf(error)}`);
  });
  if (about.isDirectory()) throw new MistakeError(`${path}: is a directory; name a file in it`);
  return about.size;
}

const temporary = new Set<string>();

/** Remove what an interrupted write left; for the exit of the process. */
export function removeTemporary(): void {
  for (const path of temporary) rmSync(path, { force: true });
}

/**
 * Write several files so that each appears whole: all under temporary names first, renamed only when
 * all are written. Makes missing folders.
 */
export async function writeAll(
  files: readonly { readonly path: string; readonly content: string | Uint8Array }[],
): Promise<void> {
  const pending: { from: string; to: string }[] = [];
  try {
    for (const { path, content } of files) {
      await mkdir(dirname(path), { recursive: true });
      const from = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.part`);
      temporary.add(from);
      await writeFile(from, content);
      pending.push({ from, to: path });
    }
    for (const { from, to } of pending) {
      await rename(from, to);
      temporary.delete(from);
    }
  } catch (error) {
    for (const path of temporary) await rm(path, { force: true });
    if (isSystemError(error))
      throw new MistakeError(
        `${files.map(({ path }) => path).join(', ')}: cannot be written: ${reasonOf(error)}`,
      );
    throw error;
  }
}

function isSystemError(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && 'code' in error && 'syscall' in error;
}

function reasonOf(error: NodeJS.ErrnoException): string {
  switch (error.code) {
    case 'ENOENT':
      return 'no such file or folder; check the name and the folder you are in';
    case 'EACCES':
    case 'EPERM':
      return 'permission denied';
    case 'EISDIR':
      return 'is a directory; name a file in it';
    case 'ENOTDIR':
      return 'a part of this path is a file, not a folder';
    case 'ENOSPC':
      return 'the disk is full';
    default:
      return error.message;
  }
}
