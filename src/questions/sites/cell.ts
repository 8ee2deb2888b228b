/** What is wrong with a cell of the table of sites: its place is the line of the table and the name of the column. */
import { problem, type Problem } from '../../scenario/problems.js';

/** Why a cell does not fit: a clause that follows the value, and what to write instead. */
export interface Misfit {
  readonly rule: string;
  readonly remedy: string;
}

export const misfit = (rule: string, remedy: string): Misfit => ({ rule, remedy });

/** @param line of the table, from 1 @param column its name; '' for the whole row */
export function cellProblem(
  file: string,
  line: number,
  column: string,
  value: unknown,
  { rule, remedy }: Misfit,
): Problem {
  return problem({ path: column === '' ? [] : [column], value, rule, remedy }, file, {
    line,
    column: 0,
  });
}
