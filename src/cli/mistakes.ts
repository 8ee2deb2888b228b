/** A mistake of the user's: shown as its message alone, never with a stack, exit code 2. */
export class MistakeError extends Error {
  override readonly name = 'MistakeError';
}

/** A disk or a network folder failed: nothing is wrong with what was given, and the same command may do better later. */
export class StorageError extends Error {
  override readonly name = 'StorageError';
}

/** Exit codes of every command; 128 and the number of the signal where one ended it. */
export const EXIT = {
  ok: 0,
  failed: 1,
  /** What was verified does not match. */
  differs: 1,
  mistake: 2,
  /** Parts of a study are missing: they are named. */
  missing: 3,
  /** Worth trying again (EX_TEMPFAIL of sysexits). */
  storage: 75,
  interrupted: 130,
  terminated: 143,
} as const;
