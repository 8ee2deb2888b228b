/**
 * Coffee solids: what a dose gives to a shot, and what a vessel makes of it.
 *
 * Two ways of saying one thing: dose × extraction = yield × TDS = grams of coffee dissolved. Solids of
 * milk and sugar are never counted, so strength here is strength of coffee.
 */

/** A shot. Masses in grams, shares 0..1. */
export interface Brew {
  readonly doseG: number;
  readonly yieldG: number;
  /** Share of the dose that is dissolved. */
  readonly extraction: number;
  /** Dissolved solids as a share of the shot's mass. */
  readonly tds: number;
  readonly solidsG: number;
}

/** A shot from its dose, yield (g) and extraction (0..1). */
export function brewFromExtraction(doseG: number, yieldG: number, extraction: number): Brew {
  const solidsG = doseG * extraction;
  return { doseG, yieldG, extraction, tds: solidsG / yieldG, solidsG };
}

/** A shot from its dose, yield (g) and TDS as read on a refractometer (0..1). */
export function brewFromTds(doseG: number, yieldG: number, tds: number): Brew {
  const solidsG = yieldG * tds;
  return { doseG, yieldG, extraction: solidsG / doseG, tds, solidsG };
}

/** Grams of coffee solids in 100 ml of drink, from the share (0..1) of a shot and the millilitres served. */
export function solidsPer100Ml(brew: Brew, shotShare: number, servedMl: number): number {
  return (100 * brew.solidsG * shotShare) / servedMl;
}

/** Whether a strength ratio (takeaway over house) is level within a tolerance either way (0..1). */
export function isLevel(ratio: number, tolerance: number): boolean {
  // The allowance keeps a ratio set to the very edge from falling off it by rounding.
  return Math.abs(ratio - 1) <= tolerance + 1e-9;
}
