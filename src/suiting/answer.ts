/**
 * The answer of the suitability checks: plain JSON, shares 0..1, units in the names.
 */
import type { Fault } from '../quantities/flaw.js';
import type { Basis } from './facts.js';
import type { SaucerFit } from '../racking/saucer-fit.js';
import type { SpoutFit } from './fit.js';
import type { Grip } from './grip.js';
import type { MergeCandidate, PoolingGain } from './merging.js';
import type { PaperBrim } from './papers.js';
import type { Pour } from './pour.js';
import type { Assumption } from './recipes.js';
import type { Remedy } from './remedies.js';
import type { ChecklistLine } from './sheet.js';
import type { Warmth } from './warmth.js';
import type { RackFit, Standing } from './model.js';

export interface Served extends Pour {
  /** The ware or paper cup. */
  readonly vessel: string;
  readonly brimMl: number;
  readonly doseG: number;
  readonly yieldG: number;
  readonly extraction: number;
  readonly tds: number;
  readonly shotShare: number;
}

export interface DrinkAnswer {
  readonly drink: string;
  readonly name: string;
  readonly house: Served | null;
  readonly takeaway: Served | null;
  /** Brim of the paper cup, measured or guessed from what it is sold as. */
  readonly paperBrim: PaperBrim | null;
  /** Takeaway strength over house strength, and what it may be while the paper's brim is only guessed. */
  readonly ratio: number | null;
  readonly ratioLow: number | null;
  readonly ratioHigh: number | null;
  readonly level: boolean | null;
  readonly remedies: readonly Remedy[];
  readonly warmth: Warmth | null;
  /** From pouring to the first sip, minutes. */
  readonly firstSipMin: number;
  /** Where its vessel stands; null where the file does not say. */
  readonly standing: Standing | null;
  readonly paperFirstC: number | null;
  readonly scaldInPaper: string | null;
  readonly grip: Grip | null;
}

export interface WareAnswer {
  readonly ware: string;
  readonly name: string;
  readonly shape: string | null;
  readonly brimMl: number | null;
  readonly brimUsFlOz: number | null;
  readonly massG: number | null;
  readonly drinks: readonly string[];
  /** With the heaviest of its drinks. */
  readonly grip: Grip | null;
  readonly saucers: readonly SaucerFit[];
  readonly spout: SpoutFit | null;
  readonly rack: RackFit | null;
  readonly rackCliff: string | null;
  readonly outerWallC: number | null;
  readonly colour: string | null;
  readonly notes: readonly string[];
  readonly checklist: readonly ChecklistLine[];
}

/** In order of consequence: what can hurt, what cannot be used, what tastes different, what costs, what nobody has said, what to mind. */
export const CONSEQUENCES = ['harm', 'unusable', 'taste', 'cost', 'unknown', 'note'] as const;
export type Consequence = (typeof CONSEQUENCES)[number];

export interface Finding {
  readonly consequence: Consequence;
  readonly code: string;
  /** Id of the drink, ware or paper; '' for the whole. */
  readonly about: string;
  readonly message: string;
  readonly basis: Basis;
  /** Dotted path in the scenario. */
  readonly path: string;
  /** Orders findings of one consequence, largest first: a share of guests, or how far off. */
  readonly weight: number;
}

export interface SuitAnswer {
  readonly scenario: string;
  readonly currency: string;
  readonly parity: number;
  readonly roomC: number;
  readonly firstSipMin: number;
  /** Where there are several kinds of day: the name of the one whose menu this is. */
  readonly kindOfDay?: string;
  readonly drinks: readonly DrinkAnswer[];
  readonly ware: readonly WareAnswer[];
  readonly findings: readonly Finding[];
  readonly merges: readonly MergeCandidate[];
  /** Filled by whoever can simulate: `withPooling`. */
  readonly pooling: readonly PoolingGain[];
  readonly cautions: readonly string[];
  readonly assumptions: readonly Assumption[];
  readonly problems: readonly Fault[];
}

/** The answer with the pieces that merging saves, once they have been simulated. */
export const withPooling = (answer: SuitAnswer, pooling: readonly PoolingGain[]): SuitAnswer => ({
  ...answer,
  pooling,
});
