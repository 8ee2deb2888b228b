/** When racks that are not full may go: what a scenario says of it, and what the rules read. A rule with a value of its own adds it here. */
import * as z from 'zod';
import { durationLaw } from '../../quantities/duration-law.js';
import { share } from '../../quantities/numbers.js';
import { filled, quantities } from '../../quantities/quantity.js';

const neverOr = z.union([z.literal('never').transform(() => null), durationLaw], {
  error: 'is neither a duration nor never; write "about 6 min", "6 min" or never',
});
quantities.add(neverOr, { kind: 'durationLaw' });

export const partLoadFields = {
  /** How long the first piece of a part rack waits on the bench before the rack may go; never: for ever. */
  partLoadWait: filled(neverOr),
  /** Between times at which all part racks may go. */
  partLoadsEvery: neverOr.optional(),
  /** Filled share, 0..1, below which no part rack goes by waiting or by time, until the closing sweep. */
  partLoadFrom: share.optional(),
};

type Fields = typeof partLoadFields;

/** null: no such rule. */
export type PartLoads = {
  readonly [Key in keyof Fields]: NonNullable<z.output<Fields[Key]>> | null;
};

/** What rules read of a scenario's washing. */
export const partLoadsOf = (washing: {
  readonly [Key in keyof Fields]?: z.output<Fields[Key]>;
}): PartLoads =>
  Object.fromEntries(
    Object.keys(partLoadFields).map((key) => [key, washing[key as keyof Fields] ?? null]),
  ) as PartLoads;
