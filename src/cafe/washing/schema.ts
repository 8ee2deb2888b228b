/**
 * The scenario's part about washing: machines, who works them, and when racks go. See `../schema.ts`.
 */
import * as z from 'zod';
import { durationLaw } from '../../quantities/duration-law.js';
import { group, list } from '../../quantities/group.js';
import { money } from '../../quantities/money.js';
import { count, countOrUnlimited, moment, plainNumber } from '../../quantities/numbers.js';
import { filled, quantities, text } from '../../quantities/quantity.js';
import { duration, energy, mass, power, rate, volume } from '../../quantities/units.js';
import { partLoadFields } from './part-loads.js';

const spell = group({ from: moment, for: duration }, 'write { from: "08:10", for: 60 min }');

export const machineFields = {
  class: text('a class of dishwasher').optional(),
  name: text('the name of the dishwasher').optional(),
  racks: filled(count('racks', 1)),
  loading: filled(durationLaw),
  cycle: filled(durationLaw),
  unloading: filled(durationLaw),
  warmUp: duration.optional(),
  down: list(spell, 'write a list of { from: "08:10", for: 60 min }').optional(),
  breakdown: group(
    { until: durationLaw, repair: durationLaw },
    'write { until: { exponential: 90 h }, repair: { exponential: 1 h } }',
  ).optional(),
  water: volume.optional(),
  energy: energy.optional(),
  idlePower: power.optional(),
  detergent: mass.optional(),
  rinseAid: volume.optional(),
  price: money.optional(),
  installation: money.optional(),
  lifeYears: plainNumber('years of life', true).optional(),
};

const otherLoads = group(
  {
    racks: z.union(
      [
        rate,
        list(
          group({ for: duration, racks: rate }, 'write { for: 60 min, racks: 10 / h }'),
          'write a list of { for: 60 min, racks: 10 / h }',
        ),
      ],
      {
        error: 'is not a rate; write "10 / h", or a list of { for: 60 min, racks: 10 / h }',
      },
    ),
    arrivals: filled(z.enum(['regular', 'poisson'])),
    goes: filled(z.enum(['first', 'inTurn', 'last'])),
  },
  'write { racks: 10 / h }, or leave it out',
);

const hands = z.union([z.enum(['clearers', 'makers']), countOrUnlimited('hands', 1)], {
  error:
    'does not say who loads and unloads the dishwasher; write a number, unlimited, clearers or makers',
});
quantities.add(hands, { kind: 'count' });

/** Washing, with the machine's fields as `study/` composes them. */
export const washingSchema = <M extends z.ZodType, L extends z.ZodType>(
  oneMachine: M,
  listedMachine: L,
) =>
  group(
    {
      machines: z.union(
        [
          z.array(listedMachine),
          group({ unlimited: oneMachine }, 'write { unlimited: { class: undercounter } }'),
        ],
        {
          error:
            'does not say which dishwashers there are; write a list such as [{ class: undercounter }], or { unlimited: { class: undercounter } }',
        },
      ),
      hands: filled(hands),
      ...partLoadFields,
      otherLoads: otherLoads.optional(),
    },
    'write { machines: [{ class: undercounter }] }',
  );

/** How often an entry of the list of machines is there. */
export const machineCount = { count: count('machines', 0, 99).optional() };
