/**
 * The `supply` and `storage` slices of a scenario: what is lost, who sells what at which price, how it
 * is shipped, and where it is kept.
 */
import * as z from 'zod';
import { durationLaw } from '../quantities/duration-law.js';
import { group, list, named } from '../quantities/group.js';
import { money } from '../quantities/money.js';
import { priceInCartons, priceInSleeves } from '../quantities/price.js';
import { count, plainNumber, share } from '../quantities/numbers.js';
import { bad, good, kindOf, wrongKind, type Parsed } from '../quantities/parsed.js';
import { quantities, quantity, text, type Quantity } from '../quantities/quantity.js';
import { duration, length, mass } from '../quantities/units.js';
import { isDate } from './dates.js';

/** A date that exists, `YYYY-MM-DD`. */
const date: Quantity<string> = quantity(
  'date',
  (input) => {
    const remedy = 'write a date as year-month-day, such as "2026-03-02"';
    if (typeof input !== 'string')
      return wrongKind(`is ${kindOf(input)} where a date is needed`, remedy);
    return isDate(input) ? good(input) : bad('is not a date', remedy);
  },
  {
    type: 'string',
    pattern: '^\\d{4}-\\d{2}-\\d{2}$',
    examples: ['2026-03-02'],
    description: 'A date, year-month-day.',
  },
);

/** A quantity with a bound of its own, which keeps the rule and the remedy apart. */
function bounded<T>(
  base: Quantity<T>,
  fits: (value: T) => boolean,
  rule: string,
  remedy: string,
): Quantity<T> {
  const { kind, json } = quantities.get(base)!;
  const parse = (input: unknown): Parsed<T> => {
    const parsed = base.safeParse(input);
    if (parsed.success) return fits(parsed.data) ? good(parsed.data) : bad(rule, remedy);
    const issue = parsed.error.issues[0]!;
    const given = issue.code === 'custom' ? issue.params : undefined;
    return {
      ok: false,
      rule: String(given?.['rule'] ?? issue.message),
      remedy: String(given?.['remedy'] ?? remedy),
      wrongKind: given?.['wrongKind'] === true,
    };
  };
  return quantity(kind, parse, json ?? {});
}

/** A share of the pieces held that goes within a year: less than all of them. */
const yearlyShare = bounded(
  share,
  (value) => value < 1,
  'is all of the pieces',
  'write a share below 100 %',
);
/** A chance that is neither nothing nor certainty. */
const chance = bounded(
  share,
  (value) => value > 0 && value < 1,
  'is not a chance that can be planned for',
  'write a share above 0 % and below 100 %, such as "95 %"',
);
const sharePart = bounded(share, (value) => value > 0, 'is zero', 'write a share above 0 %');
/** Days, at least one. */
const spell = bounded(
  duration,
  (ms) => ms >= 86_400_000,
  'is shorter than a day',
  'write a number of days, such as "28 days"',
);

const repeat = z.union(
  [z.enum(['assured', 'none']), group({ until: date }, 'write { until: "2027-06-30" }')],
  {
    error:
      'does not say whether it can be bought again; write assured, none, or { until: "2027-06-30" }',
  },
);

const losses = group(
  {
    /** Pieces broken or chipped per 1000 uses. */
    perThousandUses: plainNumber('pieces broken per 1000 uses').optional(),
    /** Share of the pieces held that walks off within a year. */
    walkOff: yearlyShare.optional(),
    /** Share of the pieces held that is retired, stained or worn, within a year. */
    retirement: yearlyShare.optional(),
    /** Variance over mean of breakages in a period; 1 is Poisson. */
    dispersion: bounded(
      plainNumber('variance over mean', true),
      (value) => value >= 1,
      'is below 1',
      'write 1 (breakages independent of each other) or more',
    ).optional(),
  },
  'write { perThousandUses: 0.3, walkOff: 0 % }',
);

/** One price for the whole quantity from so many pieces on. */
const priceBreak = group(
  { from: count('pieces', 1), price: priceInCartons },
  'write { from: 72, price: 3.90 EUR }',
);

const quote = group(
  {
    /** Price below the first break: of a piece, a hundred, a thousand or a carton. */
    price: priceInCartons,
    carton: count('pieces per carton', 1),
    minimumCartons: count('cartons', 1).optional(),
    cartonMass: mass.optional(),
    breaks: list(priceBreak, 'write a list of { from: 72, price: 3.90 EUR }').optional(),
    /** Where it differs from the supplier's. */
    repeat: repeat.optional(),
  },
  'write { price: 4.20 EUR, carton: 12 }',
);

const freightRate = {
  fixed: money.optional(),
  perCarton: money.optional(),
  perKg: money.optional(),
};

export const freight = group(
  {
    ...freightRate,
    /** Rates that replace each other as a consignment grows: from so many cartons. */
    steps: list(
      group(
        {
          from: count('cartons', 1),
          name: text('the name of the step').optional(),
          ...freightRate,
        },
        'write { from: 1, fixed: 12 EUR, perCarton: 4 EUR }',
      ),
      'write a list of { from: 1, fixed: 12 EUR, perCarton: 4 EUR }',
    )
      .min(1, { error: 'is an empty list; give at least one step or leave it out' })
      .optional(),
    /** Value of goods from which the supplier pays the freight. */
    freeFrom: money.optional(),
  },
  'write { fixed: 12 EUR, perCarton: 4 EUR, freeFrom: 400 EUR }',
);

const supplier = group(
  {
    name: text('the name of the supplier').optional(),
    repeat: repeat.default('assured'),
    leadTime: durationLaw,
    /** Smallest value of goods the supplier will send. */
    minimumOrder: money.optional(),
    freight: freight.default({}),
    /** Where it differs from that of `supply`. */
    tax: share.optional(),
    quotes: named(quote, 'write one ware per line, such as cup: { price: 4.20 EUR, carton: 12 }'),
  },
  'write { leadTime: 7 days, quotes: { cup: { price: 4.20 EUR, carton: 12 } } }',
);

const takeawayCup = group(
  {
    name: text('the name of the cup').optional(),
    /** Drinks that are sold in this size. */
    drinks: list(z.string(), 'write the drinks, such as [flat-white, latte]').min(1, {
      error: 'is an empty list; name at least one drink',
    }),
    /** Cups in a sleeve. */
    sleeve: count('cups per sleeve', 1),
    price: priceInSleeves.optional(),
    lid: z.string().optional(),
    /** Share of these cups that get a lid. */
    lidded: share.optional(),
  },
  'write { drinks: [flat-white], sleeve: 50 }',
);

const takeawayLid = group(
  {
    name: text('the name of the lid').optional(),
    sleeve: count('lids per sleeve', 1),
    price: priceInSleeves.optional(),
  },
  'write { sleeve: 100 }',
);

export const supplySchema = group(
  {
    /** Day on which the order is placed. */
    date: date.optional(),
    /** How long the range is to be kept, and costs are counted over. */
    horizon: spell.optional(),
    /** Orders over the horizon, where that is not to be worked out. */
    orders: count('orders', 1).optional(),
    /** Time between counts. */
    review: spell.optional(),
    /** Chance that the pieces stay at or above the par until a delivery. */
    confidence: chance.optional(),
    /** Whether that chance is for each ware by itself, or for all of them at once. */
    promise: z
      .enum(['each', 'together'], {
        error: 'does not say what the confidence applies to; write each or together',
      })
      .optional(),
    openDaysAWeek: bounded(
      plainNumber('days a week', true),
      (value) => value <= 7,
      'is more days than a week has',
      'write 7 or fewer',
    ).optional(),
    /** Share of a day's uses that falls within the hours of the scenario. */
    rushShare: sharePart.optional(),
    onHand: named(count('pieces'), 'write the pieces of each ware, such as { cup: 20 }').optional(),
    losses: named(
      losses,
      'write one ware per line, such as cup: { perThousandUses: 0.3 }',
    ).optional(),
    suppliers: named(
      supplier,
      'write one supplier per line, such as harbour: { leadTime: 7 days, quotes: ... }',
    ).optional(),
    /** Staff's cost of placing an order, checking it in and putting it away. */
    handling: money.optional(),
    /** Cost of holding spares, a share of their price a year. */
    holding: share.optional(),
    tax: share.optional(),
    /** How freight is shared out among the lines of a consignment. */
    shareFreightBy: z
      .enum(['value', 'mass'], { error: 'is not a way to share out freight; write value or mass' })
      .optional(),
    saucers: group(
      {
        /** Well less foot, in diameter. */
        clearance: group(
          { least: length, most: length },
          'write { least: 1 mm, most: 8 mm }',
        ).optional(),
        /** Cups known to sit well on a saucer, whatever the measures say. */
        fits: named(
          list(z.string(), 'write the cups, such as [small-cup, medium-cup]'),
          'write one saucer per line, such as saucer: [small-cup]',
        ).optional(),
      },
      'write { fits: { saucer: [small-cup, medium-cup] } }',
    ).optional(),
    takeaway: group(
      {
        cups: named(
          takeawayCup,
          'write one size per line, such as small: { drinks: [flat-white], sleeve: 50 }',
        ),
        lids: named(takeawayLid, 'write one lid per line, such as lid: { sleeve: 100 }').optional(),
      },
      'write { cups: { small: { drinks: [flat-white], sleeve: 50 } } }',
    ).optional(),
  },
  'write { suppliers: ... }, or leave it out',
);

export type SupplySlice = z.output<typeof supplySchema>;
export type RepeatSupply = z.output<typeof repeat>;
