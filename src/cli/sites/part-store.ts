/** Parts in a folder that several machines may share: written whole or not at all, with no locks and no state beside them. */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { trackTemporary } from '../files.js';
import { makeFolders } from '../folders.js';
import { MistakeError, StorageError } from '../mistakes.js';
import { isSystemError, reasonOf } from '../system-errors.js';
import { isPartName, readPart, type ReadPart } from './part-file.js';

/** What the person who gave the folder must mend; anything else may pass. */
const MISTAKES = new Set([
  'ENOENT',
  'ENOTDIR',
  'EISDIR',
  'EACCES',
  'EPERM',
  'ENAMETOOLONG',
  'ELOOP',
]);

/** @throws MistakeError where the folder cannot be used, StorageError where it failed */
function inFolder<T>(folder: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!isSystemError(error)) throw error;
    const text = `${error.path ?? folder}: ${reasonOf(error)}`;
    throw MISTAKES.has(error.code ?? '') ? new MistakeError(text) : new StorageError(text);
  }
}

export const makeStore = (folder: string): void => inFolder(folder, () => void makeFolders(folder));

/** Writes a file that others may read at any moment: under a name of its own, to the disk, then under its name. */
export function storePart(folder: string, name: string, text: string): void {
  inFolder(folder, () => {
    const target = join(folder, name);
    const from = join(
      folder,
      `.${name}.${hostname()}-${process.pid}-${randomBytes(4).toString('hex')}.tmp`,
    );
    const whole = trackTemporary(from);
    try {
      const bytes = new TextEncoder().encode(text);
      const file = openSync(from, 'wx');
      try {
        for (let done = 0; done < bytes.length;) done += writeSync(file, bytes, done);
        // A full disk may show only here, or on closing.
        fsyncSync(file);
      } finally {
        closeSync(file);
      }
      rename(from, target, text);
    } catch (error) {
      rmSync(from, { force: true });
      throw error;
    } finally {
      whole();
    }
  });
}

/** A network folder that repeats a request may say that the file is gone after it was renamed: then the target is there. */
function rename(from: string, target: string, text: string): void {
  try {
    renameSync(from, target);
  } catch (error) {
    if (isSystemError(error) && error.code === 'ENOENT' && readText(target) === text) return;
    throw error;
  }
}

function readText(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if (isSystemError(error) && error.code === 'ENOENT') return null;
    throw error;
  }
}

/** A part by its name; null: not there. */
export const partIn = (folder: string, name: string): ReadPart | null =>
  inFolder(folder, () => {
    const text = readText(join(folder, name));
    return text === null ? null : readPart(text);
  });

/** Names of all parts in a folder, in order; other files are not looked at. */
export const partNames = (folder: string): string[] =>
  inFolder(folder, () => readdirSync(folder).filter(isPartName).sort());
