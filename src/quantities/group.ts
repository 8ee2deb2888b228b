/**
 * Groups of fields and lists of them, as zod schemas whose messages read "rule; remedy".
 */
import * as z from 'zod';
import { kindOf } from './parsed.js';

// A scenario is read once or a few hundred times: writing a program for each group, as zod would, costs more
// than it saves, and a page without permission to make programs of text could not.
z.config({ jitless: true });

const says =
  (wanted: string, remedy: string) =>
  (issue: { readonly code?: string | undefined; readonly input?: unknown }): string | undefined => {
    if (issue.code !== 'invalid_type') return undefined;
    return issue.input === undefined
      ? `is missing; ${remedy}`
      : `is ${kindOf(issue.input)} where ${wanted} is needed; ${remedy}`;
  };

/** A group of named fields, no others; `remedy` says what it looks like. */
export const group = <S extends z.core.$ZodLooseShape>(shape: S, remedy: string) =>
  z.strictObject(shape, { error: says('a group of fields', remedy) });

/** What may name a ware, a drink, a family: one word, safe in paths and on a command line. */
const id = z
  .string()
  .max(60)
  .regex(/^[^\s.,=;:"'/\\]+$/);

/** A map from ids to things of one kind. */
export const named = <S extends z.ZodType>(value: S, remedy: string) =>
  z.record(id, value, { error: says('a map of names', remedy) });

/** A list of things of one kind. */
export const list = <S extends z.ZodType>(item: S, remedy: string) =>
  z.array(item, { error: says('a list', remedy) });
