/** What is wrong, as data: the place, the value, the rule and the remedy. */

/** Keys and indices from the top of what was read. */
export type Path = readonly (string | number)[];

/** A mistake at a path of what was read, before its place in a file is known. */
export interface Flaw {
  readonly path: Path;
  readonly value: unknown;
  /** A clause that follows the value: "is negative, which a duration cannot be". */
  readonly rule: string;
  readonly remedy: string;
}

/** A flaw with its sentence. */
export interface Fault extends Flaw {
  /** Place, value, rule and remedy in one sentence. */
  readonly message: string;
}

/** What is legal but seldom wise. */
export interface Warning {
  readonly code: string;
  readonly message: string;
  /** Path in the scenario file, dotted; '' for the whole. */
  readonly path: string;
}

/** Either what was asked for, or everything that stands in its way. */
export type Outcome<T, P = Fault> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly P[] };
