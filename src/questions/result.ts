import type { Outcome } from '../quantities/flaw.js';
import type { Problem } from '../scenario/problems.js';

/** Either what was asked for, or everything that stands in its way, each at its place in a file. */
export type Result<T> = Outcome<T, Problem>;
