/**
 * What is wrong with a map, an export or a base scenario, as data.
 */

import type { Flaw } from '../quantities/flaw.js';

export interface TillFlaw extends Flaw {
  /** Which of the three files; its path is empty for the whole, and for an export. */
  readonly about: 'map' | 'export' | 'base';
  /** Line of the export, from 1, where one is to blame. */
  readonly line?: number;
}

/** A value, or everything that stands in its way. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly flaws: readonly TillFlaw[] };

export const succeed = <T>(value: T): Outcome<T> => ({ ok: true, value });
export const fail = (...flaws: readonly TillFlaw[]): Outcome<never> => ({ ok: false, flaws });

/** Text of an export fit for a terminal: on one line, without control characters, not long. */
export function shownText(text: string): string {
  const printable = text.replace(/\s+/g, ' ').replace(/\p{Cc}/gu, '?');
  return printable.length > 40 ? `${printable.slice(0, 37)}...` : printable;
}

/** Thrown inside the reading of a stream to end it; never leaves this folder. */
export class ReadingEnds extends Error {
  constructor(readonly flaw: TillFlaw) {
    super(flaw.rule);
  }
}
