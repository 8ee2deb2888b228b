/** What is read of a scenario for its vessels and drinks. */
import type { Fault } from '../quantities/flaw.js';
import type { PaperBrim } from './papers.js';
import type { Assumption } from './recipes.js';
import type { Paper, Side, Standing, SuitDrink, SuitWare, WareSheet } from './model.js';
import type { SuitSection } from './schema.js';

/** A drink with what it is drunk from, in the house and away. */
export interface DrinkPlan {
  readonly drink: SuitDrink;
  readonly vessel: SuitWare | null;
  readonly house: Side | null;
  readonly paper: Paper | null;
  readonly paperBrim: PaperBrim | null;
  readonly takeaway: Side | null;
  /** Temperature of the vessel before pouring, °C. */
  readonly vesselC: number;
  /** From pouring to the first sip, minutes. */
  readonly firstSipMin: number;
}

export interface Reads {
  readonly plans: readonly DrinkPlan[];
  /** Ware without a problem of its own. */
  readonly ware: readonly SuitWare[];
  readonly sheets: Readonly<Record<string, WareSheet>>;
  readonly papers: readonly Paper[];
  readonly roomC: number;
  readonly warmedC: number;
  readonly firstSipMin: number;
  readonly parity: number;
  readonly coffeePerKgMinor: number | null;
  readonly milkPerLitreMinor: number | null;
  readonly restIsUsed: boolean;
  readonly underSpoutMm: number | null;
  readonly easyHandle: number;
  readonly instead: Readonly<Record<string, string>>;
  readonly problems: readonly Fault[];
  readonly assumptions: readonly Assumption[];
}

export interface ReadInput {
  readonly currency: string;
  readonly staffHourMinor: number;
  readonly ware: readonly SuitWare[];
  readonly menu: readonly SuitDrink[];
  readonly suit: SuitSection;
  readonly standing?: Readonly<Record<string, Standing>>;
}
