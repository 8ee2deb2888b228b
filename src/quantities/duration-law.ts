/**
 * How long something takes, as a file writes it: a fixed duration, or a law it is drawn from.
 */
import * as z from 'zod';
import type { DurationLaw } from '../engine/durations.js';
import { quantities, type Quantity } from './quantity.js';
import { duration } from './units.js';

const meanAndSd = z.strictObject({ mean: duration, sd: duration });

const lawFields = {
  constant: duration.optional(),
  exponential: duration.optional(),
  lognormal: meanAndSd.optional(),
  gamma: meanAndSd.optional(),
  measured: z
    .array(duration)
    .min(1, { error: 'is an empty list; give at least one measured duration' })
    .optional(),
};

const remedy =
  'write a duration ("90 s"), or one of { exponential: 20 min }, { lognormal: { mean: 42 min, sd: 18 min } }, { gamma: { mean: 42 min, sd: 18 min } }, { measured: [31 min, 40 min] }';

type Spread = 'lognormal' | 'gamma';

const written = z.strictObject(lawFields).transform((given, ctx): DurationLaw => {
  const refuse = (rule: string, fix: string, path: string[] = []): never => {
    ctx.addIssue({
      code: 'custom',
      message: `${rule}; ${fix}`,
      path,
      params: { rule, remedy: fix },
    });
    return z.NEVER;
  };
  const spread = (law: Spread, { mean, sd }: { mean: number; sd: number }): DurationLaw => {
    if (sd === 0) return { law: 'constant', ms: Math.round(mean) };
    if (mean === 0)
      return refuse(
        'is zero: a spread needs a mean above zero',
        'give a mean above zero, or write "0 s" for the whole',
        [law, 'mean'],
      );
    return { law, meanMs: mean, sdMs: sd };
  };
  const names = Object.keys(given).filter(
    (name) => given[name as keyof typeof given] !== undefined,
  );
  if (names.length !== 1)
    return refuse(
      names.length === 0 ? 'names no law' : `names ${names.length} laws (${names.join(', ')})`,
      remedy,
    );
  if (given.constant !== undefined) return { law: 'constant', ms: Math.round(given.constant) };
  if (given.exponential !== undefined)
    return given.exponential === 0
      ? { law: 'constant', ms: 0 }
      : { law: 'exponential', meanMs: given.exponential };
  if (given.lognormal !== undefined) return spread('lognormal', given.lognormal);
  if (given.gamma !== undefined) return spread('gamma', given.gamma);
  return { law: 'measured', valuesMs: given.measured!.map(Math.round) };
});

/** A duration, or a law; milliseconds. */
export const durationLaw: Quantity<DurationLaw> = z.union(
  [duration.transform((ms): DurationLaw => ({ law: 'constant', ms: Math.round(ms) })), written],
  { error: `is not a duration; ${remedy}` },
);
quantities.add(durationLaw, { kind: 'durationLaw' });
