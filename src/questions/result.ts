import type { Problem } from '../scenario/problems.js';

/** Either what was asked for, or everything that stands in its way. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };
