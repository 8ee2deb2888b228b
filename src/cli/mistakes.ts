/** A mistake of the user's: shown as its message alone, never with a stack, exit code 2. */
export class MistakeError extends Error {
  override readonly name = 'MistakeError';
}

/** Exit codes of every command; 128 and the number of the signal where one ended it. */
export const EXIT = { ok: 0, failed: 1, mistake: 2, interrupted: 130, terminated: 143 } as const;
