/**
 * What a report needs to know of the scenario beside the answer: names, units of money, clock, and
 * the inputs with what they rest on. Plain data, made by whoever holds the scenario.
 */
import type { Units } from './measures.js';

export const wareKinds = ['cup', 'glass', 'saucer', 'spoon', 'plate', 'other'] as const;
export type WareKind = (typeof wareKinds)[number];

export interface ReportWare {
  readonly id: string;
  readonly name: string;
  readonly kind: WareKind;
}

/** One input of the study and what it is based on. */
export interface ReportInput {
  /** Dotted path in the scenario file. */
  readonly path: string;
  /** As written, with its unit. */
  readonly value: string;
  readonly basis: 'measured' | 'published' | 'practice' | 'assumed';
  /** Lowest and highest plausible value, as written; null: none given. */
  readonly range: readonly [string, string] | null;
  /** '' where none was given. */
  readonly source: string;
  /** Written in the scenario file, or filled in where it is silent. */
  readonly origin: 'file' | 'default';
}

export interface ReportMachine {
  /** Name of its class for people, such as "Undercounter machine". */
  readonly name: string;
  /** How it makes ware safe: by hot rinse, by a chemical, or not said. */
  readonly sanitises: 'hot' | 'chemical' | 'unknown';
}

/** How many there are of each; null: as many as are needed. */
export interface Capacity {
  readonly machines: number | null;
  readonly makers: number | null;
  readonly hands: number | null;
  readonly clearers: number | null;
}

export interface ReportContext {
  /** What was asked, of which file, in a sentence; for what is printed. */
  readonly made?: string;
  /** BCP 47 tag: how numbers, money and clock times are written. */
  readonly locale: string;
  /** ISO 4217. */
  readonly currency: string;
  /** Units that lengths, volumes, masses and temperatures are written in; metric where nothing is given. */
  readonly units?: Units;
  /** Opening time in minutes after midnight; null where the scenario gives only a length of time. */
  readonly openingMinute: number | null;
  /** Length of the opening hours. */
  readonly openMinutes: number;
  /** Seats of the house; null: unlimited. */
  readonly seats: number | null;
  readonly ware: readonly ReportWare[];
  readonly machines: readonly ReportMachine[];
  readonly capacity: Capacity;
  /** Whether the menu has hot drinks; take true where nothing is known. */
  readonly hotDrinks: boolean;
  readonly inputs: readonly ReportInput[];
  /** Version of the program. */
  readonly version: string;
}
