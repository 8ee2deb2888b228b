/** Making folders. */
import { mkdirSync, rmdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { isSystemError } from './system-errors.js';

/**
 * Make a folder and those above it; where one cannot be made, fail at once (the built-in recursion tries for ever on
 * file systems that have no folders of ours, such as /proc). Then none is left.
 * @returns the folders that were not there before, the highest first
 */
export function makeFolders(path: string): string[] {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory() === true) return [];
  const above = dirname(path);
  const made = above === path ? [] : makeFolders(above);
  try {
    mkdirSync(path);
    return [...made, path];
  } catch (error) {
    // Another command may have made it just now.
    if (isSystemError(error) && error.code === 'EEXIST' && statSync(path).isDirectory())
      return made;
    for (const folder of made.toReversed()) rmdirSync(folder);
    throw isSystemError(error) && error.code === 'EEXIST'
      ? Object.assign(new Error(), { code: 'ENOTDIR', syscall: 'mkdir' })
      : error;
  }
}
