/** A value by itself: how large it is beside others of its place, and the part of the schema that judges it. */
import type * as z from 'zod';
import { meanMs, type DurationLaw } from '../engine/durations.js';
import { scenarioSchema } from './scenario.js';
import { isGroup } from './tree.js';

/** A size to compare values of one place by: a number, a mean, an amount; null for anything else. */
export function valueSize(value: unknown): number | null {
  if (typeof value === 'number') return value;
  if (Array.isArray(value))
    return value.reduce<number | null>(
      (sum, item) => (sum === null || valueSize(item) === null ? null : sum + valueSize(item)!),
      0,
    );
  if (!isGroup(value)) return null;
  if ('law' in value) return meanMs(value as DurationLaw);
  const amount = value['minor'] ?? value['staffHours'];
  const { per = 1 } = value;
  return typeof amount === 'number' ? amount / (typeof per === 'number' ? per : 1) : null;
}

const parts = new Map<string | number, z.ZodType>();

/** The schema of one top-level field alone: a value is tried there, as no schema looks across fields; null where there is no such field. */
export function schemaOfField(field: string | number | undefined): z.ZodType | null {
  if (field === undefined || !Object.hasOwn(scenarioSchema.shape, field)) return null;
  const known = parts.get(field);
  if (known) return known;
  const part = scenarioSchema.pick({ [field]: true } as Partial<
    Record<keyof typeof scenarioSchema.shape, true>
  >);
  parts.set(field, part);
  return part;
}
