/**
 * zod's issues as flaws: rule and remedy in our words, unions reduced to the form that was meant.
 */
import type * as z from 'zod';
import { didYouMean } from '../quantities/nearest.js';
import { kindOf } from '../quantities/parsed.js';
import type { Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';
import { knownKeys } from './schema-walk.js';
import { valueAt } from './tree.js';

type Issue = z.core.$ZodIssue;

/** What stands behind a comma in a number becomes the name of a field: `{ every: 1,5 min }`. */
const COMMA = /^\d[\d.]*(\s|$)/;
const withoutComma = 'write a number without a comma, such as 1.5 or 1500';

/** What zod expected, and what to write for it. */
const EXPECTED: Readonly<Record<string, readonly [string, string]>> = {
  string: ['text', 'write a name, in quotes if it looks like a number'],
  boolean: ['yes or no', 'write true or false'],
  number: ['a number', 'write a plain number, without a unit'],
  array: ['a list', 'write a list in square brackets'],
  object: ['a group of fields', 'write names and values in braces'],
  record: ['a map of names', 'write names and values in braces'],
};

const sentence = (message: string, elseRemedy: string): { rule: string; remedy: string } => {
  const cut = message.indexOf('; ');
  return cut < 0
    ? { rule: message, remedy: elseRemedy }
    : { rule: message.slice(0, cut), remedy: message.slice(cut + 2) };
};

const paramsOf = (issue: Issue): { rule?: string; remedy?: string; wrongKind?: boolean } =>
  issue.code === 'custom'
    ? ((issue.params ?? {}) as { rule?: string; remedy?: string; wrongKind?: boolean })
    : {};

/** How far a branch of a union is from what was written: another kind of thing, then names unknown or missing. */
function distance(issues: readonly Issue[]): number {
  return issues.reduce((sum, issue) => {
    if (
      issue.path.length === 0 &&
      (issue.code === 'invalid_type' ||
        issue.code === 'invalid_value' ||
        paramsOf(issue).wrongKind === true)
    )
      return Infinity;
    if (issue.code === 'invalid_union' && issue.path.length === 0)
      return sum + Math.min(...issue.errors.map(distance));
    if (issue.code === 'unrecognized_keys' && issue.path.length === 0)
      return sum + issue.keys.length;
    return sum + (issue.path.length === 1 && paramsOf(issue).rule === 'is missing' ? 1 : 0);
  }, 0);
}

/** The branch that comes nearest, if one does alone. */
function meant(branches: readonly (readonly Issue[])[]): readonly Issue[] | null {
  const distances = branches.map(distance);
  const least = Math.min(...distances);
  const near = branches.filter((_, i) => distances[i] === least);
  return least < Infinity && near.length === 1 ? near[0]! : null;
}

/** zod's issues on `tree`, each as one flaw or more. */
export function flawsOf(issues: readonly Issue[], schema: z.core.$ZodType, tree: unknown): Flaw[] {
  const one = (issue: Issue, above: Path): Flaw[] => {
    const path: Path = [...above, ...(issue.path as (string | number)[])];
    const value = valueAt(tree, path);
    switch (issue.code) {
      case 'invalid_union': {
        const branch = value === undefined ? null : meant(issue.errors);
        if (branch) return branch.flatMap((inner) => one(inner, path));
        const { rule, remedy } = sentence(
          issue.message,
          'see the README for what this field may be',
        );
        return [problemAt(path, value, value === undefined ? 'is missing' : rule, remedy)];
      }
      case 'unrecognized_keys': {
        const known = knownKeys(schema, path);
        return issue.keys.map((key) => ({
          ...problemAt(
            [...path, key],
            undefined,
            'is not a field here',
            COMMA.test(key) ? withoutComma : didYouMean(key, known),
          ),
          onKey: true,
        }));
      }
      case 'invalid_key':
        return path.at(-2) === 'partySize' || path.at(-2) === 'bySize'
          ? [
              {
                ...problemAt(
                  path,
                  undefined,
                  'is not a party size',
                  'write whole numbers from 1 to 99',
                ),
                onKey: true,
              },
            ]
          : [
              {
                ...problemAt(
                  path,
                  undefined,
                  'cannot be a name',
                  'use letters, digits and hyphens, at most 60, such as flat-white',
                ),
                onKey: true,
              },
            ];
      case 'invalid_value':
        if (value === undefined)
          return [problemAt(path, value, 'is missing', `write one of ${issue.values.join(', ')}`)];
        return [
          problemAt(
            path,
            value,
            `${typeof value === 'string' ? 'is' : `is ${kindOf(value)},`} none of ${issue.values.join(', ')}`,
            typeof value === 'string'
              ? didYouMean(value, issue.values.map(String))
              : 'write one of these words',
          ),
        ];
      case 'custom': {
        const { rule, remedy } = paramsOf(issue);
        if (rule !== undefined && remedy !== undefined)
          return [problemAt(path, value, rule, remedy)];
        break;
      }
      case 'too_small':
      case 'too_big':
        if (!issue.message.includes('; '))
          return [
            problemAt(
              path,
              value,
              issue.code === 'too_big' ? 'is too long' : 'is empty',
              issue.code === 'too_big' ? 'shorten it' : 'give at least one',
            ),
          ];
        break;
      case 'invalid_type':
        if (!issue.message.includes('; '))
          return [
            problemAt(
              path,
              value,
              value === undefined
                ? 'is missing'
                : `is ${kindOf(value)} where ${EXPECTED[issue.expected]?.[0] ?? issue.expected} is needed`,
              EXPECTED[issue.expected]?.[1] ?? 'write it in the form that this field needs',
            ),
          ];
        break;
    }
    const { rule, remedy } = sentence(issue.message, 'correct the value');
    return [problemAt(path, value, rule, remedy)];
  };
  return issues.flatMap((issue) => one(issue, []));
}
