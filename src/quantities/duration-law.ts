/**
 * How long something takes, as a file writes it: a fixed duration, or a law it is drawn from.
 */
import * as z from 'zod';
import type { DurationLaw } from '../engine/durations.js';
import { group, list } from './group.js';
import { wrongKind, type Parsed } from './parsed.js';
import { quantities, quantity, type Quantity } from './quantity.js';
import { durationUnits, parseWithUnit } from './unit-tables.js';
import { duration } from './units.js';

/**
 * Standard deviation of "about 10 min" as a share of its mean. Assumed. Repeated tasks that nobody paces vary with a
 * longer tail to the right (Knott and Sury, abstract), and such lines of work were reported at a ratio of about
 * 0.27 (Slack 1982, from memory); nothing was found on rounds of clearing. 0.2 to 0.5 is plausible. A gamma
 * law is never below zero and has its tail on that side.
 */
export const ABOUT_SPREAD = 0.3;

const ABOUT = /^\s*about\s+/;

/** What people do, roughly: "about 10 min". */
const about: Quantity<DurationLaw> = quantity(
  'durationLaw',
  (input): Parsed<DurationLaw> => {
    if (typeof input !== 'string' || !ABOUT.test(input))
      return wrongKind('is not a rough duration', 'write "about 10 min"');
    const parsed = parseWithUnit(input.replace(ABOUT, ''), durationUnits);
    if (!parsed.ok) return parsed;
    const { value: mean } = parsed;
    return {
      ok: true,
      value:
        mean === 0
          ? { law: 'constant', ms: 0 }
          : { law: 'gamma', meanMs: mean, sdMs: ABOUT_SPREAD * mean },
    };
  },
  {
    type: 'string',
    pattern: '^\\s*about\\s+\\+?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?\\s*\\S+\\s*$',
    examples: ['about 10 min'],
    description: `What people do, roughly: the mean, with a spread of ${ABOUT_SPREAD * 100} %.`,
  },
);

const meanAndSd = group({ mean: duration, sd: duration }, 'write { mean: 42 min, sd: 18 min }');

const lawFields = {
  constant: duration.optional(),
  exponential: duration.optional(),
  lognormal: meanAndSd.optional(),
  gamma: meanAndSd.optional(),
  measured: list(duration, 'write [31 min, 40 min]')
    .min(1, { error: 'is an empty list; give at least one measured duration' })
    .optional(),
};

const remedy =
  'write a duration ("90 s"), "about 10 min" for what people do, or one of { exponential: 20 min }, { lognormal: { mean: 42 min, sd: 18 min } }, { gamma: { mean: 42 min, sd: 18 min } }, { measured: [31 min, 40 min] }';

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
        'is zero, but a spread needs a mean above zero',
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
      names.length === 0
        ? 'does not name a distribution'
        : `names ${names.length} distributions (${names.join(', ')})`,
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
  [
    duration.transform((ms): DurationLaw => ({ law: 'constant', ms: Math.round(ms) })),
    about,
    written,
  ],
  { error: `is not a duration; ${remedy}` },
);
quantities.add(durationLaw, { kind: 'durationLaw' });
