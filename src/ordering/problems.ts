/** What is wrong with an order's input, as data: all of it at once, each with a remedy. */

export interface Problem {
  /** Where: keys and indices from the top of the scenario, or row and column of a table. */
  readonly path: readonly (string | number)[];
  readonly value: unknown;
  /** A clause that follows the value: "is a second currency". */
  readonly rule: string;
  readonly remedy: string;
  /** Place, value, rule and remedy in one sentence. */
  readonly message: string;
}

/** What is legal and unwise. */
export interface Warning {
  readonly code: string;
  readonly message: string;
  /** Dotted path in the scenario, '' for the whole. */
  readonly path: string;
}

/** Either what was asked for, or everything that stands in its way. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function problem(
  path: readonly (string | number)[],
  value: unknown,
  rule: string,
  remedy: string,
): Problem {
  const shown = typeof value === 'string' ? `"${value}"` : String(value);
  return { path, value, rule, remedy, message: `${path.join('.')}: ${shown} ${rule}; ${remedy}` };
}
