/** Warnings as people read them. */
import type { Warning } from './flaw.js';

/** Each sentence once, with all the places that it is said of. */
export const together = (
  warnings: readonly Warning[],
): readonly Pick<Warning, 'message' | 'path'>[] =>
  [...new Set(warnings.map(({ message }) => message))].map((message) => ({
    message,
    path: warnings
      .flatMap((one) => (one.message === message && one.path !== '' ? [one.path] : []))
      .join(', '),
  }));
