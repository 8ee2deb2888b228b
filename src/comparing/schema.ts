/**
 * The `alternatives`, `tune` and `costs` slices of a scenario: named changes over it, habits to try, and what they are priced with.
 */
import * as z from 'zod';
import { group, list, named } from '../quantities/group.js';
import { money } from '../quantities/money.js';
import { price } from '../quantities/price.js';
import { count, plainNumber, share } from '../quantities/numbers.js';
import { bad, good, kindOf, wrongKind, type Parsed } from '../quantities/parsed.js';
import { filled, quantity, text, type Quantity } from '../quantities/quantity.js';
import { splitNumber } from '../quantities/unit-sizes.js';
import { duration } from '../quantities/units.js';

/** A factor above 0: "120 %" or 1.2. */
const factor: Quantity<number> = quantity(
  'factor',
  (input): Parsed<number> => {
    const remedy = 'write "120 %" for a fifth more, or 1.2';
    const split = typeof input === 'string' ? splitNumber(input) : null;
    if (typeof input === 'string' && split?.rest !== '%')
      return wrongKind('is not a factor', remedy);
    if (typeof input !== 'string' && typeof input !== 'number')
      return wrongKind(`is ${kindOf(input)} where a factor is needed`, remedy);
    const value = typeof input === 'number' ? input : split!.number / 100;
    if (!Number.isFinite(value) || value <= 0) return bad('is not a factor above 0', remedy);
    return value > 1000 ? bad('is more than a thousandfold', remedy) : good(value);
  },
  {
    anyOf: [
      { type: 'number', exclusiveMinimum: 0 },
      { type: 'string', pattern: '^\\s*\\+?(\\d+\\.?\\d*|\\.\\d+)\\s*%\\s*$' },
    ],
    examples: ['120 %'],
    description: 'A factor: "120 %" or 1.2.',
  },
);

/** Changes over a scenario, as alternatives and kinds of day have them. */
export const patchFields = {
  /** Value by dotted path: "washing.machines[1]": { class: undercounter }. */
  change: z
    .record(z.string(), z.unknown(), {
      error: 'is not a map of paths; write change: { clearing.every: 5 min }',
    })
    .optional(),
  /** Multiplies every figure at or below a path: { arrivals: 120 % }. */
  scale: z
    .record(z.string(), factor, {
      error: 'is not a map of paths; write scale: { arrivals: 120 % }',
    })
    .optional(),
  /** Paths taken out, such as a ware that no drink uses any more. */
  without: list(text('a path'), 'write a list of paths, such as [ware.large-cup]').optional(),
};

const alternative = group(
  {
    name: text('the name of the alternative').optional(),
    note: text('the note').optional(),
    ...patchFields,
    /** Money the changes cost beside what is worked out, once and a year. */
    once: money.optional(),
    aYear: money.optional(),
  },
  'write { change: { clearing.every: 5 min } }',
);

export const alternativesSchema = named(
  alternative,
  'write one alternative per line, such as second-machine: { change: { ... } }',
);

/** Habits tried for every house of a comparison, in place of the usual grid. */
export const tuneSchema = group(
  {
    /** Mean waits of a part load. */
    partLoadWait: list(duration, 'write a list such as [4 min, 8 min, 16 min]').min(1).optional(),
    /** Least filled shares at which a part rack may go. */
    partLoadFrom: list(share, 'write a list such as [50 %, 75 %]').min(1).optional(),
  },
  'write { partLoadWait: [4 min, 8 min, 16 min], partLoadFrom: [50 %, 75 %] }',
);

export const costsSchema = group(
  {
    /** Days a year that are like the scenario's. */
    daysAYear: plainNumber('days per year', true).optional(),
    /** Share of a day's uses within the scenario's hours. */
    rushShare: share.optional(),
    horizonYears: filled(plainNumber('years', true)),
    /** Rate at which later money counts for less, a year. */
    discount: filled(share),
    /** A cubic metre, with its drain. */
    waterPerM3: filled(money),
    energyPer100kWh: filled(money),
    detergentPerKg: filled(money),
    rinseAidPerL: filled(money),
    /** What service and repairs of a machine cost a year, as a share of its price. */
    service: filled(share),
    /** Share of staff time that is counted as money; none, as those on shift are paid anyway. */
    staffCounted: share.optional(),
    /** A rack of any kind, where that of its kind in the reference data is not meant. */
    rack: money.optional(),
    /** Differences in the total below this are none. */
    indifference: money.optional(),
    /** What a drink costs for which the wanted ware is missing. */
    shortDrink: filled(
      group(
        {
          paperCup: filled(price),
          delay: filled(duration),
          guestLost: filled(share),
          guestWorth: filled(money),
        },
        'write { paperCup: 0.15 EUR, delay: 1 min, guestLost: 2 %, guestWorth: 60 EUR }',
      ),
    ),
    /** The grid of the trade-off map. */
    map: group(
      {
        machines: list(count('machines', 1), 'write a list such as [1, 2, 3]').min(1).optional(),
        classes: list(text('a class of dishwasher'), 'write a list such as [undercounter, hood]')
          .min(1)
          .optional(),
        clearing: list(duration, 'write a list such as [5 min, 10 min, 15 min]').min(1).optional(),
        racks: list(count('racks', 1), 'write a list such as [4, 6, 8]').min(1).optional(),
      },
      'write { machines: [1, 2], clearing: [5 min, 10 min] }',
    ).optional(),
  },
  'write { daysAYear: 300, horizonYears: 8, discount: 5 % }',
);
