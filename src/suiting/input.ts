/** What suiting is asked with, as plain data. */
import type { SaucerFit } from '../racking/saucer-fit.js';
import type { Basis } from './facts.js';
import type { RackFit, Standing, SuitDrink, SuitWare } from './model.js';
import type { SuitSection } from './schema.js';

export interface SuitInput {
  readonly scenario: string;
  readonly currency: string;
  /** What a staff hour costs, in minor units: prices may be given in staff hours. */
  readonly staffHourMinor: number;
  readonly ware: readonly SuitWare[];
  readonly menu: readonly SuitDrink[];
  readonly suit: SuitSection;
  /** Drinks served a week by drink, from the rush or the till; without them remedies cost so much a drink. */
  readonly drinksAWeek?: Readonly<
    Record<string, { readonly house: number; readonly takeaway: number }>
  >;
  /** What a rack makes of each ware, by id. */
  readonly racks?: Readonly<Record<string, RackFit>>;
  /** Every cup and glass on every saucer; by their measures alone where not given. */
  readonly saucerFits?: readonly SaucerFit[];
  /** Where the pieces of each vessel stand, by id; a cup on the machine is warm unless the drink says otherwise. */
  readonly standing?: Readonly<Record<string, Standing>>;
  /** Mean stay of a guest, minutes. */
  readonly dwellMin?: number;
  /** Basis of inputs by dotted path ("ware.medium-cup.brim"), where the file states one. */
  readonly basis?: Readonly<Record<string, Basis>>;
}
