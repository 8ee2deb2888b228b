/** The `collections` slice: named sets of vessels that could stand in for the ware of the menu, each with its own table. */
import * as z from 'zod';
import { group, named } from '../quantities/group.js';
import { money } from '../quantities/money.js';
import { share } from '../quantities/numbers.js';
import { text } from '../quantities/quantity.js';
import { freight } from './schema.js';

const beside = z.string().regex(/^(?!\.)[^/\\]{1,120}$/, {
  error:
    'is not the name of a file beside this one; write a name such as white.csv, without folders',
});

export const collectionsSchema = named(
  group(
    {
      name: text('the name of the collection').optional(),
      /** CSV of its vessels, in the folder of the scenario. */
      file: beside,
      /** By cup or glass of the menu, the vessel of the table that stands in for it. */
      standsFor: named(
        text('a vessel of the table'),
        'write one cup a line, such as medium-cup: white-200',
      ),
      supplier: text('the name of the supplier').optional(),
      freight: freight.default({}),
      tax: share.optional(),
      minimumOrder: money.optional(),
    },
    'write { file: white.csv, standsFor: { medium-cup: white-200 } }',
  ),
  'write one collection a line, such as white: { file: white.csv, standsFor: { medium-cup: white-200 } }',
);

export type CollectionsSlice = z.output<typeof collectionsSchema>;
