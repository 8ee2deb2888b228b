/** The range of a value that has come to lie outside it. */
import type * as z from 'zod';
import { meanMs, type DurationLaw } from '../engine/durations.js';
import type { Path } from './path.js';
import { scenarioSchema, type Scenario } from './scenario.js';
import { isGroup, valueAt, withValueAt } from './tree.js';

/** A size to compare values by: a number, a mean, an amount; null for anything else. */
function size(value: unknown): number | null {
  if (typeof value === 'number') return value;
  if (!isGroup(value)) return null;
  if ('law' in value) return meanMs(value as DurationLaw);
  const amount = value['minor'] ?? value['staffHours'];
  return typeof amount === 'number' ? amount : null;
}

/**
 * The range with the end that the value at `path` has passed moved to it; null where it lies within, or
 * where that cannot be told.
 * @param filled the scenario's tree without marks, defaults filled in, the value in its place
 */
export function widenedRange(filled: unknown, path: Path, [low, high]: readonly [unknown, unknown]): readonly [unknown, unknown] | null {
  const [field] = path;
  if (field === undefined || !Object.hasOwn(scenarioSchema.shape, field)) return null;
  const part: z.ZodType = scenarioSchema.pick({ [field]: true } as Partial<Record<keyof Scenario, true>>);
  const sizeOf = (value: unknown): number | null => {
    const parsed = part.safeParse({ [field]: valueAt(withValueAt(filled, path, value), [field]) });
    return parsed.success ? size(valueAt(parsed.data, path)) : null;
  };
  const value = valueAt(filled, path);
  const [own, least, most] = [sizeOf(value), sizeOf(low), sizeOf(high)];
  if (own === null || least === null || most === null || least > most) return null;
  return own < least ? [value, high] : own > most ? [low, value] : null;
}
