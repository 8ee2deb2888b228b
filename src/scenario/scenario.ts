/**
 * The whole scenario file: one schema, put together from the parts of the folders that read them.
 */
import * as z from 'zod';
import { cafeFields, drinkFields, wareFields } from '../cafe/schema.js';
import { machineCount, machineFields, washingSchema } from '../cafe/washing/schema.js';
import { bases } from '../catalogue/catalogue.js';
import { group, named } from '../quantities/group.js';
import { amount, currency } from '../quantities/money.js';
import { share } from '../quantities/numbers.js';
import { filled, quantities, text } from '../quantities/quantity.js';
import { alternativesSchema, costsSchema, tuneSchema } from '../comparing/schema.js';
import { collectionsSchema } from '../ordering/collections-schema.js';
import { supplySchema } from '../ordering/schema.js';
import { storageSchema } from '../ordering/storage-schema.js';
import { calendarSchema } from './calendar.js';
import { haveSchema } from './have.js';
import type { Input } from './inputs.js';
import { suitSchema } from '../suiting/schema.js';

/** Fields of one ware, drink or machine: a line for each folder that adds its own. */
const ware = group(
  { ...wareFields },
  'write { like: medium-cup } or { price: 4 EUR, perRack: 16 }',
);
const drink = group({ ...drinkFields }, 'write { share: 30 %, setting: [cup, saucer] }');
const oneMachine = group({ ...machineFields }, 'write { class: undercounter }');
const listedMachine = group({ ...machineFields, ...machineCount }, 'write { class: undercounter }');

/** Top-level parts: a line for each folder that adds its own; those of other folders are optional. */
const slices = {
  ...cafeFields,
  menu: named(
    drink,
    'write one drink per line, such as flat-white: { share: 100 %, setting: [cup, saucer] }',
  ),
  ware: named(ware, 'write one ware per line, such as cup: { like: medium-cup }'),
  washing: washingSchema(oneMachine, listedMachine),
  alternatives: alternativesSchema.optional(),
  calendar: calendarSchema.optional(),
  collections: collectionsSchema.optional(),
  costs: filled(costsSchema),
  have: haveSchema.optional(),
  storage: storageSchema.optional(),
  suit: suitSchema.optional(),
  supply: supplySchema.optional(),
  tune: tuneSchema.optional(),
};

const locale = z.string().refine((tag) => isLocale(tag), {
  error: 'is not a language tag; write one such as en-IE or de (BCP 47)',
});

function isLocale(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
}

export const scenarioSchema = group(
  {
    name: text('the name of the café'),
    currency,
    locale: locale.optional(),
    staffHour: amount,
    level: filled(share),
    seed: z
      .union([z.string(), z.int().transform(String)], {
        error: 'is not a seed; write a word or a whole number',
      })
      .default('1'),
    ...slices,
  },
  'write the café as name: ..., currency: ..., and so on',
);

/** A scenario as the program reads it: units gone, defaults filled in. */
export type Scenario = z.output<typeof scenarioSchema> & {
  /** Where the file lists them: the kinds of day, the file itself among them. */
  readonly kinds?: readonly KindOfDay[];
};

/** A kind of day as a scenario of its own, which lists no kinds. */
export interface KindOfDay {
  readonly id: string;
  readonly name: string;
  readonly daysAYear: number;
  readonly scenario: Scenario;
  readonly inputs: readonly Input[];
  /** Its whole tree, marks and all. */
  readonly raw: unknown;
}

type Json = z.core.JSONSchema.BaseSchema;

/** Forms of a value, each written once and referred to by name. */
class Definitions {
  readonly all: Record<string, Json> = {};
  private readonly names = new Map<unknown, string>();

  /**
   * A reference to the form, which may also be marked with what the value rests on. `sameAs`: what
   * equal forms have in common, since the parts of a form may not be written out yet.
   */
  markedOr(plain: Json, kind: string, sameAs: unknown): Json {
    const name = this.names.get(sameAs) ?? this.add(plain, kind);
    this.names.set(sameAs, name);
    return { $ref: `#/definitions/${name}` };
  }

  private add(plain: Json, kind: string): string {
    let name = kind;
    for (let n = 2; Object.hasOwn(this.all, name); n++) name = `${kind}-${n}`;
    const itself = { $ref: `#/definitions/plain-${name}` };
    this.all[`plain-${name}`] = plain;
    this.all[name] = {
      anyOf: [
        itself,
        {
          type: 'object',
          description: 'The value, with what it is based on.',
          properties: {
            value: itself,
            basis: {
              enum: [...bases],
              description: 'measured here; published; common practice; assumed.',
            },
            range: {
              type: 'array',
              items: itself,
              minItems: 2,
              maxItems: 2,
              description: 'The lowest and the highest plausible value.',
            },
            source: { type: 'string' },
          },
          required: ['value'],
          additionalProperties: false,
        },
      ],
    };
    return name;
  }
}

function replace(target: Json, by: Json): void {
  for (const key of Object.keys(target)) delete target[key as keyof Json];
  Object.assign(target, by);
}

/** Whether a default or a class fills the field before the check. */
const isFilled = (schema: z.core.$ZodType): boolean =>
  z.globalRegistry.get(schema)?.['filled'] === true;

/**
 * JSON Schema (draft 7) of a scenario file, for editors. Every value may be written plainly or
 * marked with its basis.
 */
export function scenarioJsonSchema(): Json {
  const definitions = new Definitions();
  const json = z.toJSONSchema(scenarioSchema, {
    io: 'input',
    target: 'draft-7',
    override: ({ zodSchema, jsonSchema }) => {
      delete jsonSchema['filled'];
      const own = quantities.get(zodSchema);
      if (own)
        replace(
          jsonSchema,
          definitions.markedOr(
            own.json ? { ...own.json } : { ...jsonSchema },
            own.kind,
            own.json ? JSON.stringify(own.json) : zodSchema,
          ),
        );
      else if (zodSchema._zod.def.type === 'enum' || zodSchema._zod.def.type === 'boolean')
        replace(
          jsonSchema,
          definitions.markedOr({ ...jsonSchema }, 'choice', JSON.stringify(jsonSchema)),
        );
      if (zodSchema._zod.def.type === 'object' && jsonSchema.required) {
        const { shape } = zodSchema._zod.def as z.core.$ZodObjectDef;
        const required = jsonSchema.required.filter((key) => !isFilled(shape[key]!));
        if (required.length > 0) jsonSchema.required = required;
        else delete jsonSchema.required;
      }
    },
  });
  return { title: 'A café and its rush', ...json, definitions: definitions.all };
}
