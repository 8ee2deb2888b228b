/** What the system says of files, in words. */

export function isSystemError(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && 'code' in error && 'syscall' in error;
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder; check the name and the folder you are in',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EISDIR: 'is a directory; name a file in it',
  ENOTDIR: 'a part of this path is a file, not a folder',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EFBIG: 'it grows larger than this system allows',
  EROFS: 'the disk is read-only',
  EBUSY: 'it is in use by another program',
  ETXTBSY: 'it is in use by another program',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'its links lead in a circle',
  EMFILE: 'too many files are open; close some programs',
  ENFILE: 'too many files are open; close some programs',
  EIO: 'the disk does not answer',
  EINVAL: 'it is not a name for a file here',
};

/** A clause that follows the name of the file. */
export const reasonOf = (error: NodeJS.ErrnoException): string =>
  REASONS[error.code ?? ''] ?? `the system refuses it (${error.code ?? 'no reason given'})`;
