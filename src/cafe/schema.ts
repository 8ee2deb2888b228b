/**
 * The café's part of the scenario file: what the rush reads.
 *
 * Field maps are exported rather than whole schemas where other folders add fields of their own to
 * the same thing (a ware's supplier, a drink's recipe); `scenario/scenario.ts` puts them together.
 * After parsing, durations are milliseconds, lengths mm, volumes ml, masses g, rates a millisecond,
 * shares 0..1; `null` is "unlimited".
 */
import * as z from 'zod';
import { durationLaw } from '../quantities/duration-law.js';
import { group, list, named } from '../quantities/group.js';
import { price } from '../quantities/price.js';
import { clock, count, countOrUnlimited, plainNumber, share } from '../quantities/numbers.js';
import { filled, quantities, text } from '../quantities/quantity.js';
import { duration, length, mass, rate, volume } from '../quantities/units.js';

const yesOrNo = z.boolean({ error: 'is neither true nor false; write true or false' });

const hours = z.union(
  [
    group({ from: clock, to: clock }, 'write { from: "07:00", to: "10:00" }'),
    group({ for: duration }, 'write { for: 180 min }'),
  ],
  {
    error:
      'does not say when the rush begins and ends; write { from: "07:00", to: "10:00" } or { for: 180 min }',
  },
);

/** A list of plain numbers, which is one value to vouch for. */
function numbers(noun: string, remedy: string) {
  const schema = list(plainNumber(noun), remedy);
  quantities.add(schema, { kind: 'numbers' });
  return schema;
}

const arrivals = group(
  {
    slots: group(
      {
        every: duration,
        parties: numbers(
          'parties in a slot',
          'write the parties expected in each slot, such as [3, 5, 7.5]',
        ),
      },
      'write { every: 15 min, parties: [3, 5, 7.5] }',
    ).optional(),
    steps: list(
      group({ for: duration, parties: rate }, 'write { for: 30 min, parties: 24 / h }'),
      'write a list of { for: 30 min, parties: 24 / h }',
    ).optional(),
    peak: group(
      {
        guests: rate,
        shape: numbers(
          'how busy a part of the rush is',
          'write how busy each equal part of the rush is, as relative numbers, such as [3, 5, 9, 7]',
        ),
      },
      'write { guests: 60 / h, shape: [3, 5, 9, 7] }',
    ).optional(),
    dayFactor: filled(plainNumber('the day factor')),
  },
  'write one of slots, steps or peak, such as { peak: { guests: 60 / h, shape: [3, 5, 9, 7] } }',
);

const LARGEST_PARTY = 99;

/** { 1: 50 %, 2: 50 % }; an array of shares by size, from 1. */
const partySizeShares = z
  .record(z.string().regex(/^[1-9]\d?$/), share, {
    error: 'is not a map from party size to share; write { 1: 50 %, 2: 50 % }',
  })
  .transform((shares) => {
    const largest = Math.max(0, ...Object.keys(shares).map(Number));
    return Array.from({ length: largest }, (_, i) => shares[String(i + 1)] ?? 0);
  });

const partySize = z.union(
  [
    count('guests', 1, LARGEST_PARTY).transform((size) =>
      Array.from({ length: size }, (_, i) => (i + 1 === size ? 1 : 0)),
    ),
    partySizeShares,
  ],
  {
    error:
      'is not a party size; write { 1: 50 %, 2: 50 % }, or one whole number if all parties are the same size',
  },
);
quantities.add(partySize, { kind: 'partySize' });

const dwellBySize = group(
  { bySize: z.record(z.string().regex(/^[1-9]\d?$/), durationLaw) },
  'write { bySize: { 1: 22 min, 2: 42 min } }',
).transform(({ bySize }, ctx) => {
  const sizes = Object.keys(bySize)
    .map(Number)
    .toSorted((a, b) => a - b);
  if (sizes.length === 0 || sizes.some((size, i) => size !== i + 1)) {
    const rule = 'does not give the sizes 1, 2, 3 ... without a gap';
    const remedy = 'begin at 1; parties larger than the last size count as that size';
    ctx.addIssue({
      code: 'custom',
      message: `${rule}; ${remedy}`,
      path: ['bySize'],
      params: { rule, remedy },
    });
    return z.NEVER;
  }
  return sizes.map((size) => bySize[String(size)]!);
});

const dwell = z.union([durationLaw.transform((law) => [law]), dwellBySize], {
  error:
    'is not a duration; write "42 min", { lognormal: { mean: 42 min, sd: 18 min } }, or { bySize: { 1: 22 min, 2: 42 min } }',
});
quantities.add(dwell, { kind: 'durationLaw' });

const staysIn = z.union(
  [
    share,
    list(
      group({ for: duration, staysIn: share }, 'write { for: 60 min, staysIn: 30 % }'),
      'write a list of { for: 60 min, staysIn: 30 % }',
    ),
  ],
  { error: 'is not a share; write "35 %", or a list of { for: 60 min, staysIn: 30 % }' },
);

const guests = group(
  {
    partySize: filled(partySize),
    staysIn: filled(staysIn),
    drinksEach: filled(plainNumber('drinks per guest', true)),
    secondDrink: filled(share),
    dwell: filled(dwell),
  },
  'write { staysIn: 35 %, dwell: 40 min }, or leave it out',
);

const setting = z.union(
  [
    z.literal('takeaway').transform((): string[] => []),
    list(z.string(), 'write the pieces, such as [cup, saucer, teaspoon]'),
  ],
  {
    error:
      'is not a setting; write the pieces in the order in which they are taken, such as [cup, saucer, teaspoon], or takeaway',
  },
);

const drinkShare = z.union(
  [
    share,
    list(
      group({ for: duration, share }, 'write { for: 60 min, share: 30 % }'),
      'write a list of { for: 60 min, share: 30 % }',
    ),
  ],
  { error: 'is not a share; write "30 %", or a list of { for: 60 min, share: 30 % }' },
);

export const drinkFields = {
  name: text('the name of the drink').optional(),
  share: drinkShare,
  setting,
  fallBacks: list(
    setting,
    'write a list of settings, such as [[large-cup, saucer], takeaway]',
  ).optional(),
  making: durationLaw.optional(),
};

export const wareFields = {
  like: text('a class of ware').optional(),
  name: text('the name of the ware').optional(),
  price: filled(price),
  family: text('the family that shares racks').optional(),
  perRack: count('pieces in a rack', 1).optional(),
  drying: filled(durationLaw),
  lowWater: count('pieces').optional(),
  polishing: durationLaw.optional(),
  shape: z.enum(['cup', 'glass', 'saucer', 'spoon', 'plate']).optional(),
  rim: length.optional(),
  foot: length.optional(),
  height: length.optional(),
  handle: length.optional(),
  handleWidth: length.optional(),
  handleTip: z
    .enum(['flat', 'round'], { error: 'is not a shape of handle; write flat or round' })
    .optional(),
  footprint: z
    .enum(['round', 'square', 'oval'], { error: 'is not a footprint; write round, square or oval' })
    .optional(),
  /** Square, oval and cutlery: length across, where it differs from the rim. */
  rimAcross: length.optional(),
  depth: length.optional(),
  well: length.optional(),
  mass: mass.optional(),
  brim: volume.optional(),
  colour: text('the colour').optional(),
};

/** Measures of racks at hand, where they differ from the usual ones of their kind. */
const rackMeasures = group(
  {
    usable: length.optional(),
    usableAcross: length.optional(),
    /** Gap kept round every piece. */
    clearance: length.optional(),
    /** Compartments: their clear opening, the height inside, extenders on top and what each adds. */
    opening: length.optional(),
    innerHeight: length.optional(),
    extenders: count('extenders').optional(),
    extenderHeight: length.optional(),
    /** Pegs: pitch, slots in a row, gap for the water, or the spacing of two saucers tried in the rack. */
    pitch: length.optional(),
    slots: count('slots', 1).optional(),
    waterGap: length.optional(),
    tried: length.optional(),
    emptyMass: mass.optional(),
    /** Largest mass it may have when loaded. */
    maxMass: mass.optional(),
  },
  'write { opening: 90 mm } or { usable: 465 mm, clearance: 4 mm }',
);

const racks = group(
  {
    /** Which way handles point. */
    loading: z
      .enum(['best', 'straight', 'at45'], {
        error: 'is not a way to load; write best, straight or at45',
      })
      .optional(),
    /** For families that name no rack: the usual one of their class, or the one with fewest loads. */
    plan: z
      .enum(['usual', 'fewestLoads'], { error: 'is not a plan; write usual or fewestLoads' })
      .optional(),
    measures: named(rackMeasures, 'write { grid-25: { opening: 90 mm } }').optional(),
    families: named(
      z.string({ error: 'is not a kind of rack; write its name, such as open or grid-25' }),
      'write { china: open, glasses: grid-25 }',
    ).optional(),
    owned: named(countOrUnlimited('racks', 1), 'write { open: 6, grid-25: unlimited }').optional(),
  },
  'write { families: { glasses: grid-25 }, owned: { open: 6 } }, or leave it out',
);

const seats = group(
  {
    count: countOrUnlimited('seats', 1),
    whenFull: filled(z.enum(['leave', 'takeaway', 'wait'])),
    waitLimit: filled(duration),
    heldUntilCleared: filled(yesOrNo),
  },
  'write { count: 40 }',
);

const counter = group(
  { makers: filled(countOrUnlimited('makers', 1)), making: filled(durationLaw) },
  'write { makers: 2, making: 60 s }',
);

const clearing = z.union(
  [
    z.literal('atOnce'),
    group(
      {
        every: filled(durationLaw),
        clearers: filled(countOrUnlimited('clearers', 1)),
        tripPieces: filled(countOrUnlimited('pieces', 1)),
        trip: filled(durationLaw),
        /** Pieces dirty on tables that call for an extra round. */
        whenDirty: count('pieces', 1).optional(),
        /** An extra round while a party waits and dirty tables hold seats. */
        forSeats: yesOrNo.optional(),
      },
      'write { every: about 10 min, clearers: 1 }',
    ),
  ],
  {
    error:
      'does not say how tables are cleared; write atOnce, or { every: about 10 min, clearers: 1, tripPieces: 10, trip: about 60 s }',
  },
);

/** The café's top-level fields, but for menu, ware and washing, to which others add. */
export const cafeFields = {
  hours,
  arrivals,
  guests: filled(guests),
  racks: racks.optional(),
  seats,
  counter: filled(counter),
  clearing: filled(clearing),
};
