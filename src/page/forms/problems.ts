/** Which box a problem belongs to. */
import type { FormField, FormPart } from '../../scenario/input-forms.js';

export interface FormProblem {
  /** Dotted path of the scenario; '' for the whole file. */
  readonly path: string;
  readonly line: number;
  readonly message: string;
}

export const isBelow = (path: string, owner: string): boolean =>
  path === owner ||
  (path.startsWith(owner) && (path[owner.length] === '.' || path[owner.length] === '['));

/** The problems of a field: at its path or within its value. null: none. */
export function problemOf(
  field: Pick<FormField, 'path'>,
  problems: readonly FormProblem[],
): string | null {
  const own = problems.filter(({ path }) => path !== '' && isBelow(path, field.path));
  return own.length === 0 ? null : [...new Set(own.map(({ message }) => message))].join('. ');
}

/** Whether any field of the part has a problem. */
export const hasProblem = (part: FormPart, problems: readonly FormProblem[]): boolean =>
  part.fields.some((field) => problemOf(field, problems) !== null);
