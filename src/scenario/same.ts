/** Trees compared by what they hold. */
import { isGroup } from './tree.js';

/** Whether two trees hold the same; the order of names does not count. */
export function same(one: unknown, other: unknown): boolean {
  if (Array.isArray(one) && Array.isArray(other))
    return one.length === other.length && one.every((item: unknown, i) => same(item, other[i]));
  if (isGroup(one) && isGroup(other)) {
    const keys = Object.keys(one);
    return (
      keys.length === Object.keys(other).length &&
      keys.every((key) => Object.hasOwn(other, key) && same(one[key], other[key]))
    );
  }
  return one === other || (Number.isNaN(one) && Number.isNaN(other));
}
