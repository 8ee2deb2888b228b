/** The range of a value that has come to lie outside it. */
import type { Path } from './path.js';
import { valueAt, withValueAt } from './tree.js';
import { schemaOfField, valueSize } from './value-size.js';

/**
 * The range with the end that the value at `path` has passed moved to it; null where it lies within, or
 * where that is not known.
 * @param filled the scenario's tree without marks, defaults filled in, the value in its place
 */
export function widenedRange(
  filled: unknown,
  path: Path,
  [low, high]: readonly [unknown, unknown],
): readonly [unknown, unknown] | null {
  const [field] = path;
  const part = schemaOfField(field);
  if (field === undefined || part === null) return null;
  const sizeOf = (value: unknown): number | null => {
    const parsed = part.safeParse({ [field]: valueAt(withValueAt(filled, path, value), [field]) });
    return parsed.success ? valueSize(valueAt(parsed.data, path)) : null;
  };
  const value = valueAt(filled, path);
  const [own, least, most] = [sizeOf(value), sizeOf(low), sizeOf(high)];
  if (own === null || least === null || most === null || least > most) return null;
  return own < least ? [value, high] : own > most ? [low, value] : null;
}
