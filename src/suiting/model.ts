/**
 * What the suitability checks read: plain data, unit in the name, `null` where nobody has said.
 *
 * `read.ts` makes these from the scenario's own sections; the checks themselves never see the file.
 */
import type { Brew } from './strength.js';
import type { Material } from './facts.js';

export type Shape = 'cup' | 'glass' | 'saucer' | 'spoon' | 'plate';

/** A ware as the scenario's `ware` section and the vessel classes give it. */
export interface SuitWare {
  readonly id: string;
  readonly name: string;
  readonly shape: Shape | null;
  readonly brimMl: number | null;
  readonly rimMm: number | null;
  readonly footMm: number | null;
  readonly heightMm: number | null;
  /** How far the handle stands out beyond the rim; 0: no handle. */
  readonly handleMm: number | null;
  readonly massG: number | null;
  /** Saucers: diameter of the well. */
  readonly wellMm: number | null;
  readonly colour: string | null;
}

/** A drink as the menu gives it; an empty setting is a takeaway cup. */
export interface SuitDrink {
  readonly id: string;
  readonly name: string;
  readonly share: number;
  readonly setting: readonly string[];
  readonly fallBacks: readonly (readonly string[])[];
}

/** What the sheet says of a vessel beyond its measures. */
export interface WareSheet {
  readonly material: Material;
  readonly wallMm: number;
  readonly doubleWall: boolean;
  readonly opening: { readonly widthMm: number; readonly heightMm: number } | null;
  readonly inside: 'bowl' | 'straight' | null;
  readonly stacks: boolean | null;
  readonly safetyGlass: 'toughened' | 'heat-resistant' | 'plain' | null;
  readonly stains: string | null;
  readonly chips: string | null;
  /** Tests for which the supplier has shown a report. */
  readonly tests: readonly string[];
}

export type Foam = { readonly share: number } | { readonly depthMm: number } | null;
export type TopUp = 'milk' | 'water' | 'nothing';

/** How one drink is made on one side of the counter. */
export interface Recipe {
  readonly brew: Brew;
  /** Share of the shot that goes into this drink, 0..1. */
  readonly shotShare: number;
  readonly topUp: TopUp;
  /** Share of the brim to which it is filled; null when `pouredMl` says how much liquid goes in. */
  readonly fill: number | null;
  readonly pouredMl: number | null;
  readonly foam: Foam;
  readonly airInFoam: number;
  readonly milkFromC: number;
  /** Temperature of the drink as it leaves the jug. */
  readonly servedC: number;
}

/** The room in a vessel. */
export interface Space {
  readonly brimMl: number;
  /** Inside diameter at the rim; only foam given as a depth needs it. */
  readonly rimInnerMm: number | null;
}

/** A recipe in a vessel. */
export interface Side {
  readonly recipe: Recipe;
  readonly space: Space;
}

/** Where the pieces of a vessel wait to be used. */
export interface Standing {
  readonly onTop: number;
  readonly inReserve: number;
  /** Stands on the machine to be warm; from the reserve it is cold. */
  readonly warmed: boolean;
  /** Share of its uses that take a cold one, from the rush; null: not simulated. */
  readonly coldShare: number | null;
}

/** A takeaway cup: what it is sold as, and its brim measured with water if anybody has. */
export interface Paper {
  readonly id: string;
  readonly nominalMl: number | null;
  readonly brimMl: number | null;
  readonly rimMm: number | null;
  readonly massG: number | null;
}

/** What a rack makes of a ware: from the rack layout of the same file. */
export interface RackFit {
  readonly kind: string;
  readonly pieces: number;
  /** Millimetres the rim may still grow before a piece is lost; null: not known. */
  readonly slackMm: number | null;
  /** The nearest gain: so much less rim, so many pieces; null: none near. */
  readonly narrower: { readonly byMm: number; readonly pieces: number } | null;
  /** Whether the rim is that of a typical piece, not measured on yours. */
  readonly typicalRim?: boolean;
}
