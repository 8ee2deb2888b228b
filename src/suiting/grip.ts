/**
 * Whether a guest can hold it: the opening of the handle, the mass to lift and its moment on the hand.
 *
 * Low mass, an opening for two fingers with support for the thumb and a low moment are what weak hands
 * need (Yoxall et al., Clin Nutr Open Sci 2023;50:27). The limits themselves are assumed; the user's own
 * measurements and guests go first.
 */
import { FACTS } from './facts.js';
import type { Basis } from './facts.js';

export interface GripInput {
  readonly massG: number;
  readonly drinkG: number;
  readonly rimMm: number;
  /** How far the handle stands out beyond the rim; 0: held round the body. */
  readonly handleMm: number;
  readonly opening: { readonly widthMm: number; readonly heightMm: number } | null;
}

export interface GripFlag {
  readonly code: 'heavy' | 'narrow-opening' | 'low-opening';
  readonly value: number;
  readonly limit: number;
  readonly unit: 'g' | 'mm';
  readonly basis: Basis;
  readonly source: string;
}

export interface Grip {
  readonly filledG: number;
  /** About the middle of the handle; null without a handle. */
  readonly momentNm: number | null;
  /** Fingers that go through the opening; null: no opening given. */
  readonly fingers: number | null;
  readonly flags: readonly GripFlag[];
  /** No flag and an opening known; null: cannot be said without the opening. */
  readonly easy: boolean | null;
}

const GRAVITY = 9.81;

/** Moment in N m of a filled vessel about its handle: mass (g), rim and handle projection (mm). */
export function handleMoment(filledG: number, rimMm: number, handleMm: number): number {
  return (filledG / 1000) * GRAVITY * ((rimMm / 2 + handleMm / 2) / 1000);
}

/** Holds a filled vessel against the limits. */
export function gripOf(input: GripInput): Grip {
  const filledG = input.massG + input.drinkG;
  const hasHandle = input.handleMm > 0;
  const flags: GripFlag[] = [];
  const flag = (
    code: GripFlag['code'],
    value: number,
    fact: 'heavyG' | 'openingWidthMm' | 'openingHeightMm',
  ): void => {
    const { value: limit, basis, source } = FACTS[fact];
    flags.push({ code, value, limit, unit: code === 'heavy' ? 'g' : 'mm', basis, source });
  };
  if (filledG > FACTS.heavyG.value) flag('heavy', filledG, 'heavyG');
  const opening = hasHandle ? input.opening : null;
  if (opening !== null && opening.widthMm < FACTS.openingWidthMm.value)
    flag('narrow-opening', opening.widthMm, 'openingWidthMm');
  if (opening !== null && opening.heightMm < FACTS.openingHeightMm.value)
    flag('low-opening', opening.heightMm, 'openingHeightMm');
  return {
    filledG,
    momentNm: hasHandle ? handleMoment(filledG, input.rimMm, input.handleMm) : null,
    fingers: opening === null ? null : Math.floor(opening.heightMm / FACTS.fingerMm.value),
    flags,
    // A flag is enough to say no; to say yes one must have measured the opening.
    easy: flags.length > 0 ? false : !hasHandle ? false : opening === null ? null : true,
  };
}
