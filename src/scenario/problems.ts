/**
 * What is wrong with a file: the place, the value, the rule and the remedy, as data.
 */
import type { Flaw as PlainFlaw } from '../quantities/flaw.js';
import { dotted, type Path } from './path.js';

/** A place in a text file, counted from 1. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** A mistake in the tree of a scenario. */
export interface Flaw extends PlainFlaw {
  /** Where the value stands in the file if that is not where `path` says (inside a marked value). */
  readonly file?: Path;
  /** The key itself is wrong, not what stands there. */
  readonly onKey?: boolean;
}

export interface Problem extends Position {
  readonly file: string;
  /** Dotted: "menu.flat-white.share"; '' for the whole file. */
  readonly path: string;
  readonly at: Path;
  readonly value: unknown;
  readonly rule: string;
  readonly remedy: string;
  /** Value, rule and remedy in one sentence. */
  readonly message: string;
}

export const problemAt = (path: Path, value: unknown, rule: string, remedy: string): Flaw => ({
  path,
  value,
  rule,
  remedy,
});

/** A value as messages quote it: short, on one line, '' for nothing or a whole group. */
export function shown(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'number' && !Number.isFinite(value))
    return Number.isNaN(value) ? '".nan"' : value > 0 ? 'so large a number' : 'so low a number';
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (typeof value === 'object') return '';
  const oneLine = String(value).replace(/\s+/g, ' ');
  const printable = harmless(oneLine);
  return `"${printable.length > 48 ? `${printable.slice(0, 45)}...` : printable}"`;
}

/** Names of a file may stand in rules and remedies; none moves the cursor or turns the writing round. */
const harmless = (text: string): string =>
  text.replace(/[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/gu, '?');

/** A flaw with its place. */
export function problem(flaw: Flaw, file: string, position: Position): Problem {
  const quoted = flaw.onKey === true ? shown(flaw.path.at(-1)) : shown(flaw.value);
  const [rule, remedy] = [harmless(flaw.rule), harmless(flaw.remedy)];
  return {
    file,
    ...position,
    path: dotted(flaw.path),
    at: flaw.path,
    value: flaw.onKey === true ? flaw.path.at(-1) : flaw.value,
    rule,
    remedy,
    message: `${quoted === '' ? '' : `${quoted} `}${rule}; ${remedy}`,
  };
}

/** `cafe.yaml:12:5: guests.dwell: 40 is a number without a unit where a duration is needed; write "40 s" or "40 min"`. */
export function formatProblem({ file, line, column, path, message }: Problem): string {
  // A table has rows only, and what was typed has neither.
  const place = [file, line, column].filter((part) => part !== '' && part !== 0).join(':');
  return harmless([place, path, message].filter((part) => part !== '').join(': '));
}

/** In the order of the file, each said once. */
export function inOrder(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  return problems
    .filter((one) => {
      const key = formatProblem(one);
      return !seen.has(key) && seen.add(key);
    })
    .toSorted(
      (a, b) =>
        a.line - b.line || a.column - b.column || (a.path < b.path ? -1 : a.path > b.path ? 1 : 0),
    );
}
