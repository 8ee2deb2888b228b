/**
 * A quantity: a value as people write it ("90 s", "86 mm", "4.20 EUR"), read into one unit.
 *
 * Every quantity is a zod schema made by `quantity()`. Its issues carry the rule that was broken and
 * the remedy, and it is registered with its JSON Schema, so that editors can complete and check it.
 */
import * as z from 'zod';
import { bad, good, kindOf, wrongKind, type Parsed } from './parsed.js';

export interface QuantityMeta {
  /** 'duration', 'length', ... */
  readonly kind: string;
  /** JSON Schema (draft 7) of what may be written in a file; absent: the one zod makes of the schema. */
  readonly json?: z.core.JSONSchema.BaseSchema;
}

/** All schemas that stand for one value with a basis of its own. */
export const quantities = z.registry<QuantityMeta>();

export type Quantity<T> = z.ZodType<T>;

/**
 * Marks a field that may be left out of a file because a default or a class fills it before the file
 * is checked: required for the program, optional for its user (and in the JSON Schema).
 */
export const filled = <S extends z.ZodType>(schema: S): S => schema.meta({ filled: true });

/** Makes a zod schema of a parser; a missing value is reported with the remedy of the parser's own answer. */
export function quantity<T>(
  kind: string,
  parse: (input: unknown) => Parsed<T>,
  json: z.core.JSONSchema.BaseSchema,
): Quantity<T> {
  const schema: Quantity<T> = z.unknown().transform((input, ctx): T => {
    const parsed = parse(input);
    if (parsed.ok) return parsed.value;
    const rule = input === undefined ? 'is missing' : parsed.rule;
    ctx.addIssue({
      code: 'custom',
      message: `${rule}; ${parsed.remedy}`,
      params: { rule, remedy: parsed.remedy, wrongKind: parsed.wrongKind ?? false },
    });
    return z.NEVER;
  });
  quantities.add(schema, { kind, json });
  return schema;
}

/** Regular expression text (for JSON Schema) of a number followed by one of the units. */
export const patternOf = (units: readonly string[]): string =>
  `^\\s*\\+?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?\\s*(${units.map((unit) => unit.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')).join('|')})\\s*$`;

/** Text that is a name or a note: never empty, never a number. */
export const text = (noun: string): Quantity<string> =>
  quantity(
    'text',
    (input) => {
      const remedy = `write ${noun} as text, in quotes if it looks like a number`;
      if (typeof input !== 'string')
        return wrongKind(`is ${kindOf(input)} where text is needed`, remedy);
      return input.trim() === '' ? bad('is empty', remedy) : good(input.trim());
    },
    { type: 'string', minLength: 1, description: noun },
  );
