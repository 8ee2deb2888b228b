import { isGroup } from './tree.js';

/** A value of a file in one line of plain text: "lognormal mean 42 min, sd 18 min", "[medium-cup, saucer]". */
export function written(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(written).join(', ')}]`;
  if (isGroup(value))
    return Object.entries(value)
      .map(([key, one]) => `${key} ${written(one)}`)
      .join(', ');
  return String(value);
}
