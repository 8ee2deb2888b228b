/**
 * The `suit` section of a scenario: how each drink is made, in the house and to take away.
 *
 * ```yaml
 * suit:
 *   shot: { dose: 20 g, yield: 40 g, extraction: 20 % }      # every drink's, unless it gives its own; tds: 10 % does as well
 *   room: 21 °C
 *   parity: 10 %                                             # house against takeaway, either way
 *   coffee: 24 EUR                                           # a kilogram of roasted coffee
 *   restOfShot: used                                         # or thrown
 *   guests: { easyHandle: 8 %, instead: { medium-cup: easy-cup } }
 *   machine: { underSpout: 95 mm }
 *   papers:
 *     small: { nominal: 8 fl oz, brim: 280 ml }
 *   ware:
 *     medium-cup: { material: ceramic, wall: 4 mm, opening: { width: 27 mm, height: 47 mm }, inside: bowl, tests: [EN 12875-1] }
 *   drinks:
 *     flat-white: { vessel: medium-cup, paper: small, share: 100 %, foam: 5 mm, fill: 95 %, takeaway: { fill: 88 %, share: 100 % } }
 * ```
 */
import * as z from 'zod';
import { group, list, named } from '../quantities/group.js';
import { money } from '../quantities/money.js';
import { parseShare, plainNumber, share } from '../quantities/numbers.js';
import { bad, good } from '../quantities/parsed.js';
import { quantity, text } from '../quantities/quantity.js';
import {
  duration,
  length,
  mass,
  parseTemperature,
  temperature,
  volume,
} from '../quantities/units.js';
import type { Foam } from './model.js';

/** Foam as a depth ("10 mm") or as a share of the filling ("15 %"). */
const foam = quantity<NonNullable<Foam>>(
  'foam',
  (input) => {
    const depth = length.safeParse(input);
    if (depth.success) return good({ depthMm: depth.data });
    const part = parseShare(input);
    if (part.ok) return good({ share: part.value });
    return bad('is neither a depth nor a share of the filling', 'write foam as "10 mm" or "15 %"');
  },
  {
    anyOf: [
      { type: 'number', minimum: 0, maximum: 1 },
      { type: 'string', examples: ['10 mm', '15 %'] },
    ],
    description: 'Foam on top: its depth, or its share of the filling.',
  },
);

/** A vessel before pouring: cold (as the room), warmed (as `suit.warmed`), or at a temperature (°C). */
const vesselState = quantity<'cold' | 'warmed' | number>(
  'vesselState',
  (input) => {
    if (input === 'cold' || input === 'warmed') return good(input);
    const parsed = parseTemperature(input);
    return parsed.ok
      ? parsed
      : bad('is not the state of a cup', 'write cold, warmed or a temperature such as "45 °C"');
  },
  {
    anyOf: [{ enum: ['cold', 'warmed'] }, { type: 'string', examples: ['45 °C'] }],
    description: 'The vessel before pouring.',
  },
);

const yesOrNo = z.boolean({ error: 'is neither true nor false; write true or false' });
const oneOf = <const W extends readonly [string, ...string[]]>(words: W) =>
  z.enum(words, { error: `is not one of the words allowed here; write ${words.join(' or ')}` });

/** A shot: its dose, and how much of it ends in the cup. Either `yield` or `ratio`, either `extraction` or `tds`. */
const shotSchema = group(
  {
    dose: mass.optional(),
    yield: mass.optional(),
    ratio: plainNumber('grams in the cup for each gram of coffee', true).optional(),
    extraction: share.optional(),
    tds: share.optional(),
  },
  'write { dose: 20 g, yield: 40 g, extraction: 20 % }',
);

const making = {
  shot: shotSchema.optional(),
  /** Share of the shot that goes in. */
  share: share.optional(),
  /** What fills the vessel above the shot. */
  top: oneOf(['milk', 'water', 'nothing']).optional(),
  /** Up to where it is filled, foam and all, as a share of the brim; or `pours`: so much liquid. */
  fill: share.optional(),
  pours: volume.optional(),
  /** Depth of the foam, or its share of the filling. */
  foam: foam.optional(),
  /** Temperature as it is poured. */
  served: temperature.optional(),
};

const drinkSuitSchema = group(
  {
    /** The ware it is drunk from; by default the first cup or glass of its setting. */
    vessel: text('the ware it is served in').optional(),
    /** The paper cup of `papers` it is taken away in. */
    paper: text('the paper cup').optional(),
    ...making,
    cup: vesselState.optional(),
    /** From pouring to the first sip, where it is not that of all drinks. */
    firstSip: duration.optional(),
    /** What differs when it is taken away. */
    takeaway: group(making, 'write what differs, such as { fill: 88 % }').optional(),
  },
  'write { vessel: medium-cup, paper: small, foam: 5 mm }, or {} for a milk drink of one whole shot',
);

const wareSuitSchema = group(
  {
    material: oneOf(['ceramic', 'glass', 'steel', 'paper']).optional(),
    wall: length.optional(),
    doubleWall: yesOrNo.optional(),
    opening: group(
      { width: length, height: length },
      'write { width: 27 mm, height: 47 mm }',
    ).optional(),
    inside: oneOf(['bowl', 'straight']).optional(),
    stacks: yesOrNo.optional(),
    safetyGlass: oneOf(['toughened', 'heat-resistant', 'plain']).optional(),
    stains: text('how it stains').optional(),
    chips: text('how it chips').optional(),
    /** Standard tests for which the supplier has shown a report, by name. */
    tests: list(
      text('a test'),
      'write the tests by name, such as [EN 12875-1, EN 1183]',
    ).optional(),
  },
  'write { material: ceramic, wall: 4 mm }',
);

export const suitSchema = group(
  {
    shot: shotSchema.optional(),
    room: temperature.optional(),
    parity: share.optional(),
    /** Price of a kilogram of roasted coffee. */
    coffee: money.optional(),
    /** Price of a litre of milk. */
    milk: money.optional(),
    restOfShot: oneOf(['used', 'thrown']).optional(),
    airInFoam: share.optional(),
    milkFrom: temperature.optional(),
    warmed: temperature.optional(),
    firstSip: duration.optional(),
    guests: group(
      {
        easyHandle: share,
        instead: named(text('the vessel with the easy handle'), 'write { medium-cup: easy-cup }'),
      },
      'write { easyHandle: 8 %, instead: { medium-cup: easy-cup } }',
    ).optional(),
    machine: group({ underSpout: length }, 'write { underSpout: 95 mm }').optional(),
    papers: named(
      group(
        {
          nominal: volume.optional(),
          brim: volume.optional(),
          rim: length.optional(),
          mass: mass.optional(),
        },
        'write { nominal: 8 fl oz, brim: 280 ml }',
      ),
      'write one paper cup per line, such as small: { nominal: 8 fl oz, brim: 280 ml }',
    ).optional(),
    ware: named(
      wareSuitSchema,
      'write one ware per line, such as medium-cup: { wall: 4 mm }',
    ).optional(),
    drinks: named(
      drinkSuitSchema,
      'write one drink per line, such as flat-white: { paper: small }',
    ).optional(),
  },
  'write drinks: { flat-white: { paper: small } } under it',
);

/** The section as zod gives it: g, ml, mm, °C, ms, shares 0..1. */
export type SuitSection = z.output<typeof suitSchema>;
export type DrinkSection = z.output<typeof drinkSuitSchema>;
export type ShotSection = z.output<typeof shotSchema>;
